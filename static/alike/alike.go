// Package alike holds what a script says in two languages against each other, for the tests
// of the core and of the calculations: the figures must be the same, the sentences must not.
package alike

import (
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"slices"
	"strings"
)

// Left is the first English word of a text, if there is one.
func (r Rules) Left(text string) string {
	text = quotes.ReplaceAllString(text, "")
	if r.Quoted != nil {
		text = r.Quoted.ReplaceAllString(text, "")
	}
	return leftOver.FindString(text)
}

// Missing lists the speech files a language lacks.
func Missing(static, lang fs.FS) ([]string, error) {
	var missing []string
	for _, pattern := range []string{"matcher/speech.ts", "matcher/speech-*.ts", "driveline/speech-*.ts", "driveline/page-*.ts"} {
		names, err := fs.Glob(static, pattern)
		if err != nil {
			return nil, err
		}
		for _, name := range names {
			if _, err := fs.Stat(lang, name); err != nil {
				missing = append(missing, name)
			}
		}
	}
	return missing, nil
}

// Rules say what may be the same in two languages.
type Rules struct {
	Kept   []string       // names of fields that are ids, addresses, units or text of a reader's own: equal everywhere
	Quoted *regexp.Regexp // what of a sentence may stay English: titles, names of files; may be nil
}

// Differences compares what JSON made of the same answer in English and in another
// language. Numbers and kept fields must be equal; in every other text the figures must be
// the same ones, and no sentence of more than three words may be left as it is, nor an
// English word in one.
func (r Rules) Differences(english, other any) []string {
	var found []string
	r.compare("", "", english, other, func(at, format string, args ...any) {
		found = append(found, strings.TrimPrefix(at, ".")+": "+fmt.Sprintf(format, args...))
	})
	return found
}

func (r Rules) compare(at, field string, english, other any, report func(at, format string, args ...any)) {
	switch e := english.(type) {
	case map[string]any:
		o, ok := other.(map[string]any)
		if !ok || len(o) != len(e) {
			report(at, "%v beside %v", english, other)
			return
		}
		for key, value := range e {
			r.compare(path.Join(at, key), key, value, o[key], report)
		}
	case []any:
		o, ok := other.([]any)
		if !ok || len(o) != len(e) {
			report(at, "%d beside %d of the other: %v beside %v", len(e), len(o), english, other)
			return
		}
		for i := range e {
			r.compare(fmt.Sprintf("%s[%d]", at, i), field, e[i], o[i], report)
		}
	case string:
		o, ok := other.(string)
		switch {
		case !ok:
			report(at, "%q beside %v", e, other)
		case slices.Contains(r.Kept, field):
			if e != o {
				report(at, "%q became %q", e, o)
			}
		default:
			for _, wrong := range r.text(e, o) {
				report(at, "%s: %q beside %q", wrong, e, o)
			}
		}
	default:
		if english != other {
			report(at, "%v beside %v", english, other)
		}
	}
}

var (
	word     = regexp.MustCompile(`[\pL’']{2,}`)
	quotes   = regexp.MustCompile(`“[^”]*”|«[^»]*»`)
	leftOver = regexp.MustCompile(`(?i)\b(the|of|and|or|is|are|was|with|not|this|that|these|which|from|than|both|reading|readings|measure|across|yoke|joint|shaft|chart|published|recalled)\b`)
)

// text tells what is wrong with a sentence beside the English one.
func (r Rules) text(english, other string) []string {
	var wrong []string
	if (english == "") != (other == "") {
		wrong = append(wrong, "one of them is empty")
	}
	if english == other && len(word.FindAllString(quotes.ReplaceAllString(english, ""), -1)) > 3 {
		wrong = append(wrong, "not translated")
	}
	id := english == other && !strings.Contains(english, " ") // a value of a choice, such as yoke
	if left := r.Left(other); left != "" && !id {
		wrong = append(wrong, fmt.Sprintf("the English word %q is left", left))
	}
	if e, o := figures(quotes.ReplaceAllString(english, ""), true), figures(quotes.ReplaceAllString(other, ""), false); !slices.Equal(e, o) {
		wrong = append(wrong, fmt.Sprintf("the figures are %v and %v", e, o))
	}
	return wrong
}

var (
	figure  = regexp.MustCompile(`\d+(?:\.\d+)?`)
	grouped = regexp.MustCompile(`\b([1-9]\d{0,2}),(\d{3})\b`)
	spaced  = regexp.MustCompile(`\b([1-9]\d{0,2})[ \x{00a0}\x{202f}](\d{3})\b`)
	comma   = regexp.MustCompile(`(\d),(\d)`)
)

// figures are the numbers of a sentence, sorted. English writes 20,000 and 1.5, the others
// 20 000 and 1,5.
func figures(text string, english bool) []string {
	if english {
		text = grouped.ReplaceAllString(text, "$1$2")
	} else {
		text = comma.ReplaceAllString(spaced.ReplaceAllString(text, "$1$2"), "$1.$2")
	}
	list := figure.FindAllString(text, -1)
	slices.Sort(list)
	return list
}
