package matcher

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
)

// Unit, Basis, Hold, Faces, Tool, Condition, Dimension and Verdict are the words of
// types.ts. They are plain strings: the core judges the words, not Go.
type (
	Unit      = string // in, mm
	Basis     = string // published, measured, common-practice, memory
	Hold      = string
	Faces     = string
	Tool      = string
	Condition = string
	Dimension = string // cap, across, clip; "query" in a complaint about the query itself
	Verdict   = string
)

// The verdicts.
const (
	Identified   Verdict = "identified"
	Possible     Verdict = "possible"
	Between      Verdict = "between"
	NotInChart   Verdict = "not-in-chart"
	MeasureAgain Verdict = "measure-again"
)

// Holds, Tools and Conditions list the words a query may use, in the order of types.ts.
var (
	Holds      = []Hold{"outside-clip", "inside-clip", "plate", "strap", "wing", "injected", "staked", "unknown"}
	Tools      = []Tool{"digital-caliper", "dial-caliper", "vernier-caliper", "vernier-caliper-coarse", "micrometer", "steel-rule", "tape"}
	Conditions = []Condition{"new", "used", "worn", "rusted"}
)

// Query is what somebody measured: one end, or two when the ends differ.
type Query struct {
	Ends      []QueryEnd `json:"ends"`
	Unit      Unit       `json:"unit,omitempty"`      // of a bare number; empty: a bare number is a complaint
	Tool      Tool       `json:"tool,omitempty"`      // empty: digital-caliper
	Condition Condition  `json:"condition,omitempty"` // empty: used
}

// QueryEnd is one measured pair of caps.
type QueryEnd struct {
	Hold   Hold     `json:"hold"`
	Faces  Faces    `json:"faces,omitempty"` // empty: the faces that go with the hold
	Taken  string   `json:"taken,omitempty"` // joint or yoke; empty: joint
	Cap    []string `json:"cap,omitempty"`   // "1.187 in", "27,00 mm", "1 1/16"; of a yoke the bore
	Across []string `json:"across,omitempty"`
	Clip   []string `json:"clip,omitempty"` // thickness of one clip; of a yoke only
}

// MaxQuery is the most bytes of JSON a query may take.
const MaxQuery = 64 << 10

// DecodeQuery reads one query from JSON: unknown fields, more than one value and more
// than [MaxQuery] bytes are refused. What the words in it mean is for the core to judge.
func DecodeQuery(text []byte) (Query, error) {
	var q Query
	if len(text) > MaxQuery {
		return q, fmt.Errorf("the query has %d bytes, at most %d are read", len(text), MaxQuery)
	}
	if len(bytes.TrimSpace(text)) == 0 {
		return q, errors.New(`the query is empty, want JSON such as {"ends": [{"hold": "outside-clip", "cap": ["1.062 in"], "across": ["3.219 in"]}]}`)
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&q); err != nil {
		return Query{}, queryError(text, d.InputOffset(), err)
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		line, col := place(text, d.InputOffset())
		return Query{}, fmt.Errorf("query:%d:%d: something follows the query, want one JSON object", line, col)
	}
	return q, nil
}

// queryError says where and what, in words of the query rather than of Go.
func queryError(text []byte, offset int64, err error) error {
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	switch {
	case errors.As(err, &syntax):
		offset = syntax.Offset
	case errors.As(err, &kind):
		line, col := place(text, kind.Offset)
		field := kind.Field
		if field == "" {
			field = "the query"
		}
		return fmt.Errorf("query:%d:%d: %s is a %s, want %s", line, col, field, kind.Value, want(kind))
	case errors.Is(err, io.ErrUnexpectedEOF):
		line, col := place(text, int64(len(text)))
		return fmt.Errorf("query:%d:%d: the JSON ends too early", line, col)
	}
	line, col := place(text, offset)
	return fmt.Errorf("query:%d:%d: %w", line, col, err)
}

func want(e *json.UnmarshalTypeError) string {
	switch e.Type.Kind().String() {
	case "slice":
		return "a list"
	case "struct":
		return "an object"
	}
	return `text in quotes, such as "27.00 mm"`
}

// place turns a byte offset into a 1-based line and column in bytes.
func place(text []byte, offset int64) (line, col int) {
	before := text[:min(max(int(offset), 0), len(text))]
	line = 1 + bytes.Count(before, []byte("\n"))
	return line, len(before) - bytes.LastIndexByte(before, '\n')
}
