package build

import (
	"capspan/build/preview"
	"capspan/tables"
	"capspan/templates"
)

// previewFolder holds the pictures of previews. No page shows them: whoever lists what
// a reader needs leaves them out.
const previewFolder = "assets/preview/"

// basisLines go with the figures wherever the picture is seen.
func (s *site) basisLines(row *tables.Row) []string {
	lines := []string{s.word("preview.basis", "basis", s.basisWord(row.Basis))}
	if row.Basis == tables.Memory {
		lines = append(lines, s.word("preview.confirm"))
	}
	return lines
}

// addPreviews draws a picture for each row, on all cores, and one for every other page.
// They are only for previews on other sites, which want a full address; without one
// there is nobody to draw them for.
func (s *site) addPreviews() {
	if s.keeper.Web == "" {
		return
	}
	type job struct {
		name, file, svg, alt string
		words                preview.Words
		png                  []byte
	}
	general := s.drawn().Faces("preview", string(tables.OutsideClip), string(tables.OverCaps))
	jobs := []*job{{file: "capspan", svg: string(general), alt: s.word("preview.alt"),
		words: preview.Words{Name: "Capspan", Lines: []string{s.word("preview.which"), s.word("preview.measure")}}}}
	for _, t := range s.set.Tables {
		for _, row := range t.Rows {
			if len(row.Ends) == 0 || s.large() { // a picture for each size of a large chart would be most of the site
				continue
			}
			jobs = append(jobs, &job{name: row.ID, file: row.ID, svg: string(s.drawn().Joint("preview", s.drawing(row))),
				alt: s.word("preview.row-alt", "id", row.ID, "figures", s.figuresOf(row)),
				words: preview.Words{Name: row.ID, Lines: append([]string{capital(s.figuresOf(row))}, s.basisLines(row)...),
					Foot: "Capspan, " + t.ID + " " + t.Version.Number}}) // its own table's: the others' changes are not its
		}
	}
	onAllCores(len(jobs), func(n int) {
		png, err := preview.Draw(jobs[n].svg, jobs[n].words)
		if err != nil {
			panic("internal error: " + err.Error()) // package figure's own drawing
		}
		jobs[n].png = png
	})

	s.previews = map[string]*templates.Picture{}
	for _, j := range jobs {
		path := s.addAsset(previewFolder+j.file, ".png", j.png)
		s.previews[j.name] = &templates.Picture{Address: s.fullRoot(path), Alt: j.alt, Width: preview.Width, Height: preview.Height}
	}
}
