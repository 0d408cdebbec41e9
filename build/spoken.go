package build

// speakTables makes the chart speak the language of the site, for pages, scripts and the
// core alike. What say gives back as it was has no words in it: it is shown in English, and
// marked as such. The open data and what corrections are written into stay English.
func (in *inputs) speakTables(say func(english string) string) {
	foreign := map[string]bool{}
	in.set = in.english.Spoken(func(english string) string {
		is := say(english)
		if is == english {
			foreign[english], foreign[capital(english)], foreign[sentence(english)] = true, true, true
		}
		return is
	})
	in.frames.MarkEnglish(foreign)
}

// lang is the attribute of what shows a text of the chart, where it stands in English on a
// page of another language.
func (in *inputs) lang(text string) string { return string(in.frames.Lang(text)) }
