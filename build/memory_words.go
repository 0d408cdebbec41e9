package build

import (
	"capspan/build/diag"
	"capspan/templates"
	catalogue "capspan/templates/words"
)

// voice is the words of a language, and the templates that say them.
type voice struct {
	of       sum // the files they are made of
	words    *catalogue.Catalogue
	frames   *templates.Set
	problems diag.List
}

// spokenIn reads them, or has them from before when no file of them has changed. Templates of
// other languages than English are told what of the chart stands in English, so they are made
// anew each time.
func (m *Memory) spokenIn(src Sources, language string) voice {
	if m == nil || language != catalogue.English {
		return readSpoken(src, language)
	}
	of := m.sumOf(src.Templates)
	if src.Own != nil {
		of = m.sumOf(src.Templates, src.part("words"))
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.english == nil || m.english.of != of {
		made := readSpoken(src, language)
		made.of = of
		m.english = &made
	}
	return *m.english
}

func readSpoken(src Sources, language string) voice {
	var made voice
	made.words, made.problems = catalogue.Load(src.Templates, src.Content, language)
	if src.Own != nil {
		made.problems.Add(made.words.Replace(src.part("words"))...)
	}
	frames, err := templates.New(src.Templates, made.words)
	if err != nil {
		made.problems.Add(diag.Problem{Pos: diag.Pos{File: "templates"}, Fact: err.Error(), Rule: "bad-template"})
	}
	made.frames = frames
	if frames != nil {
		made.problems.Add(made.words.Check(append(frames.Uses(), said()...))...)
	}
	return made
}
