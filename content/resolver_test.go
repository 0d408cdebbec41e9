package content

import (
	"html/template"
	"os"
	"slices"

	"capspan/content/figure"
	catalogue "capspan/templates/words"
)

// english is what drawings say.
var english = func() figure.Words {
	words, problems := catalogue.Load(os.DirFS("../templates"), nil, catalogue.English)
	if problems.Blocked() {
		panic(problems)
	}
	return figure.Words{Say: words.Say}
}()

// invented is a chart of two rows for the cases: pages are checked against the shipped
// chart where they are built.
var invented = Resolver{
	Row: func(id string) (Row, error) {
		if !slices.Contains(inventedRows, id) {
			return Row{}, noRow(id)
		}
		return Row{Name: id, Href: "/sub/joint/" + id + "/", Figures: "1 in × 3 in, clip <outside>"}, nil
	},
	Table: func(id string, rows []string) (template.HTML, error) {
		if id != "joints-a" {
			return "", &Refusal{Rule: "unknown-table", Fact: `no table is called "` + id + `"`, Name: id, Known: []string{"joints-a"}}
		}
		return template.HTML("<table><caption>" + id + "</caption></table>"), nil
	},
	Figure: func(row string) (figure.JointDrawing, error) {
		if !slices.Contains(inventedRows, row) {
			return figure.JointDrawing{}, noRow(row)
		}
		return figure.JointDrawing{Name: row}, nil
	},
	Answer: func(address string) (Answer, error) {
		if address == "hold=glue" {
			return Answer{}, &Refusal{Rule: "bad-query", Fact: "the query cannot be read"}
		}
		return Answer{Verdict: "identified", Rows: []string{"a1"}, HTML: "<p>answer</p>"}, nil
	},
	Reading: func(text string) (Reading, error) {
		if text != "1 in" {
			return Reading{}, &Refusal{Rule: "bad-reading", Fact: `"` + text + `" has no unit`}
		}
		return Reading{Given: text, Converted: "25.4 mm"}, nil
	},
	Apart: func(tool string) (template.HTML, error) {
		if tool != "steel-rule" {
			return "", &Refusal{Rule: "unknown-tool", Fact: `no instrument "` + tool + `"`, Name: tool, Known: []string{"steel-rule"}}
		}
		return "<p>apart</p>", nil
	},
	Contributing: func(part string) (string, error) {
		if part != "rules" {
			return "", &Refusal{Rule: "unknown-part", Fact: `no part is called "` + part + `"`, Name: part, Known: []string{"rules"}}
		}
		return "- `a-rule`: <b>no</b> markup\n\n```yaml\nid: a # {is} not a directive\n```\n", nil
	},
}

var inventedRows = []string{"a1", "bigger-b"}

func noRow(id string) error {
	return &Refusal{Rule: "unknown-row", Fact: `no joint is called "` + id + `"`, Name: id, Known: inventedRows}
}
