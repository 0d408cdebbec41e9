package build

import (
	"fmt"
	"io/fs"

	"capspan/build/diag"
	"capspan/tables"
)

// What the page of corrections is told: of each table its file as it stands in the
// repository, what its columns allow, and what each cell says and where. The page judges a
// new cell by these facts with the rules of static/parts/correct/check.ts; a test of this
// package holds those to the loader, case by case and by chance.

// correctFolder holds the facts; nobody needs them before a value is to be corrected.
const correctFolder = "assets/correct/"

// factsFile is a file of the chart as the repository has it.
type factsFile struct {
	File string `json:"file"` // from the root of the repository
	Text string `json:"text"`
}

// tableFacts mirrors TableFacts in static/parts/correct/facts.ts.
type tableFacts struct {
	factsFile
	Table   string        `json:"table"`
	Title   string        `json:"title"`
	Columns []columnFacts `json:"columns"`
	Rows    []rowFacts    `json:"rows"`
}

type columnFacts struct {
	ID        string        `json:"id"`
	Label     string        `json:"label"`
	Kind      tables.Kind   `json:"kind"`
	Unit      tables.Unit   `json:"unit,omitempty"`
	Units     []tables.Unit `json:"units,omitempty"`
	Range     bool          `json:"range,omitempty"`
	Least     string        `json:"least,omitempty"` // in the column's unit
	Greatest  string        `json:"greatest,omitempty"`
	Faces     bool          `json:"faces,omitempty"`     // a distance across: it says between which
	Condition bool          `json:"condition,omitempty"` // a measurement says the condition of the part
}

// rowFacts are a row's own cells; what a conversion joint has from other rows is corrected there.
type rowFacts struct {
	ID    string               `json:"id"`
	Cells map[string]cellFacts `json:"cells"`
}

// lines are the first and the last line that has a cell; ok is false where none has.
func (r rowFacts) lines() (first, last int, ok bool) {
	for _, cell := range r.Cells {
		if first == 0 || cell.Line < first {
			first = cell.Line
		}
		last = max(last, cell.Line)
	}
	return first, last, first > 0
}

// cellFacts is a cell as its line has it, key by key, and where.
type cellFacts struct {
	Line int `json:"line"`
	From int `json:"from"`
	To   int `json:"to"`
	cellTold
	Others   []cellTold        `json:"others,omitempty"`
	Measured []measurementTold `json:"measured,omitempty"`
}

type cellTold struct {
	Is         string       `json:"is"`
	Unit       tables.Unit  `json:"unit,omitempty"` // where it is not the column's
	Faces      tables.Faces `json:"faces,omitempty"`
	FacesBasis tables.Basis `json:"facesBasis,omitempty"`
	Basis      tables.Basis `json:"basis,omitempty"`
	Source     []string     `json:"source,omitempty"`
	At         string       `json:"at,omitempty"`
}

type measurementTold struct {
	Readings  []string     `json:"readings"`
	Tool      string       `json:"tool"`
	Condition string       `json:"condition,omitempty"`
	Faces     tables.Faces `json:"faces,omitempty"`
	On        string       `json:"on,omitempty"`
	By        string       `json:"by,omitempty"`
}

// sourceFacts mirrors SourceFacts: the registry, for naming a source or adding one, and
// the words of the tables.
type sourceFacts struct {
	factsFile
	Known  knownFacts        `json:"known"`
	Titles map[string]string `json:"titles"`
}

type knownFacts struct {
	Sources []string `json:"sources"`
	tables.Vocabulary
}

const sourcesFile = "sources.yaml"

// addFacts writes the facts of every table and of the registry, and returns the path of
// each by the table's id, the registry's under "". Those of a large chart are named by a
// directory, whose path is returned alone (correct_rows.go).
func (s *site) addFacts() (map[string]string, diag.List) {
	var problems diag.List
	paths := map[string]string{}
	if s.english.Whole() != s.english {
		return paths, nil // a check asks for no facts
	}
	add := func(id, stem string, facts any) { paths[id] = s.addAsset(correctFolder+stem, ".json", mustJSON(facts)) }
	for n, t := range s.english.Tables {
		facts, err := headFactsOf(s.tables, t)
		spoken := s.set.Tables[n]
		facts.Title = spoken.Title
		for i := range facts.Columns {
			facts.Columns[i].Label = spoken.Columns[i].Label
		}
		if err != nil {
			problems.Add(diag.Problem{Pos: t.Pos, Rule: "unreadable", Fact: err.Error()})
			continue
		}
		if s.large() {
			add(t.ID, t.ID, s.inDrawers(facts, t))
		} else {
			facts.addRows(t)
			add(t.ID, t.ID, facts)
		}
	}
	facts, err := sourceFactsOf(s.tables, s.set)
	if err != nil {
		problems.Add(diag.Problem{Pos: diag.Pos{File: "tables/" + sourcesFile}, Rule: "unreadable", Fact: err.Error()})
	}
	add("", "_sources", facts) // no table's id begins so
	if s.large() {
		paths = s.addFactsDirectory(paths)
	}
	return paths, problems
}

// headFactsOf are the facts of one table without its rows; fsys is the folder it was loaded from.
func headFactsOf(fsys fs.FS, t *tables.Table) (tableFacts, error) {
	facts := tableFacts{Table: t.ID, Title: t.Title, Rows: []rowFacts{}}
	text, err := fs.ReadFile(fsys, t.ID+".yaml")
	if err != nil {
		return facts, fmt.Errorf("read the table again: %w", err)
	}
	facts.File, facts.Text = t.Pos.File, string(text)
	for _, c := range t.Columns {
		facts.Columns = append(facts.Columns, columnFacts{ID: c.ID, Label: c.Label, Kind: c.Kind, Unit: c.Unit, Units: tables.UnitsOf(c.Kind),
			Range: c.Range, Least: c.Least.Text, Greatest: c.Greatest.Text, Faces: t.Joint() && c.ID == "across",
			Condition: t.Joint() && (c.ID == "cap" || c.ID == "across")})
	}
	return facts, nil
}

func (f *tableFacts) addRows(t *tables.Table) {
	lines := tables.Lines(f.Text)
	for _, row := range t.Rows {
		f.Rows = append(f.Rows, rowFactsOf(lines, t, row))
	}
}

// rowFactsOf are the facts of a row in the lines of its table's file.
func rowFactsOf(lines []string, t *tables.Table, row *tables.Row) rowFacts {
	told := rowFacts{ID: row.ID, Cells: map[string]cellFacts{}}
	for id, v := range row.Values {
		column, _ := t.Column(id)
		place, ok := tables.PlaceOf(lines, v)
		if !ok {
			continue // not in braces on its line: the loader reported it
		}
		cell := cellFacts{Line: place.Line, From: place.From, To: place.To, cellTold: toldOf(v, column)}
		for _, other := range v.Others {
			told := toldOf(other, column)
			if told.Faces == v.Faces {
				told.Faces = "" // as it may be left out
			}
			cell.Others = append(cell.Others, told)
		}
		if v.Measured != nil {
			for _, m := range v.Measured.List {
				cell.Measured = append(cell.Measured, measurementTold{readingsOf(m), m.Tool, m.Condition, m.Faces, m.On, m.By})
			}
		}
		told.Cells[id] = cell
	}
	return told
}

func toldOf(v tables.Value, c tables.Column) cellTold {
	told := cellTold{Is: v.Word(), Faces: v.Faces, FacesBasis: v.FacesBasis, Basis: v.Basis, At: v.At}
	if v.Faces == tables.UnknownFaces && v.State != tables.Given {
		told.Faces = "" // what is not there has faces nobody wrote
	}
	if v.Quantity.Unit != c.Unit {
		told.Unit = v.Quantity.Unit
	}
	for _, source := range v.Sources {
		told.Source = append(told.Source, source.ID)
	}
	return told
}

func readingsOf(m tables.Measurement) []string {
	readings := make([]string, len(m.Readings))
	for i, q := range m.Readings {
		readings[i] = q.String()
	}
	return readings
}

func sourceFactsOf(fsys fs.FS, set *tables.Set) (sourceFacts, error) {
	facts := sourceFacts{factsFile: factsFile{File: "tables/" + sourcesFile}, Titles: map[string]string{},
		Known: knownFacts{Sources: []string{}, Vocabulary: tables.Words()}}
	text, err := fs.ReadFile(fsys, sourcesFile)
	if err != nil && len(set.Sources) > 0 {
		return facts, fmt.Errorf("read the registry again: %w", err)
	}
	facts.Text = string(text) // empty where there is no such file yet
	for _, source := range set.Sources {
		facts.Known.Sources = append(facts.Known.Sources, source.ID)
		facts.Titles[source.ID] = source.Title
	}
	return facts, nil
}
