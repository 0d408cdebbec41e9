package build

import "strings"

// figures writes the numbers of a text with the decimal sign of the language: 30.2 mm is
// 30,2 mm in Spanish. It is for what a reader is shown. Data, ids, addresses and what a
// script reads keep the point, and so do names: a row called 23.8x61.3 is called so in
// every language.
func (in *inputs) figures(text string) string {
	sign := in.word("site.decimal")
	if sign == "." || !strings.Contains(text, ".") {
		return text
	}
	var b strings.Builder
	for i := range len(text) {
		if text[i] == '.' && i+1 < len(text) && isDigit(text[i+1]) && (i == 0 || isDigit(text[i-1]) || text[i-1] == ' ') {
			b.WriteString(sign)
			continue
		}
		b.WriteByte(text[i])
	}
	return b.String()
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// typed are the forms in which a reader may type a figure to find it: with a point, and
// with the sign of the language.
func (in *inputs) typed(figure string) []string {
	if local := in.figures(figure); local != figure {
		return []string{figure, local}
	}
	return []string{figure}
}
