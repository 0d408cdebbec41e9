package matcher

import (
	"encoding/json"
	"fmt"

	"github.com/dop251/goja"
)

// MeasuredName is the global that the script of measurements, measured.js, leaves.
const MeasuredName = "CapspanMeasured"

// Measuring works out what measurements come to, by the script the page of corrections
// loads. Use it from one goroutine at a time.
type Measuring struct{ m Matcher }

// NewMeasuring loads measured.js.
func NewMeasuring(script []byte) (*Measuring, error) {
	vm := goja.New()
	if _, err := vm.RunScript("measured.js", string(script)); err != nil {
		return nil, fmt.Errorf("load measured.js: %w", err)
	}
	exports := vm.Get(MeasuredName)
	if exports == nil || goja.IsUndefined(exports) {
		return nil, fmt.Errorf("load measured.js: the bundle does not define %s", MeasuredName)
	}
	return &Measuring{Matcher{vm: vm, core: exports.ToObject(vm)}}, nil
}

// MeasuredQuestion is what was measured of one value; it mirrors Question in measured.ts.
type MeasuredQuestion struct {
	Column       string            `json:"column"` // cap, across or length
	Faces        Faces             `json:"faces,omitempty"`
	Printed      *PrintedValue     `json:"printed,omitempty"` // nil: nothing is printed, or the value rests on these readings
	Measurements []MeasurementTold `json:"measurements"`
}

// PrintedValue is the chart's own figure: both ends of a range, in mm, and half its last digit.
type PrintedValue struct {
	Text     string  `json:"text"`
	Least    float64 `json:"least"`
	Greatest float64 `json:"greatest"`
	Half     float64 `json:"half"`
}

// MeasurementTold is one measurement.
type MeasurementTold struct {
	Readings  []string  `json:"readings"` // each with its unit
	Tool      Tool      `json:"tool"`
	Condition Condition `json:"condition,omitempty"`
	Faces     Faces     `json:"faces,omitempty"`
}

// MeasuredAnswer is what they come to; lengths are in mm, uncertainties expanded, about 95 %.
type MeasuredAnswer struct {
	Each []struct {
		MM          float64 `json:"mm"`
		Uncertainty float64 `json:"uncertainty"`
		Readings    int     `json:"readings"`
		Says        string  `json:"says"`
		Trouble     bool    `json:"trouble"`
		Elsewhere   bool    `json:"elsewhere"`
	} `json:"each"`
	Combined *struct {
		MM          float64 `json:"mm"`
		Uncertainty float64 `json:"uncertainty"`
		Count       int     `json:"count"`
		Readings    int     `json:"readings"`
		Ratio       float64 `json:"ratio"`
		Limit       float64 `json:"limit"`
		Chance      float64 `json:"chance"`
		Consistent  bool    `json:"consistent"`
		Agrees      string  `json:"agrees"`
	} `json:"combined"`
	Says []string `json:"says"`
}

// ComesTo puts the measurements of one value to the core.
func (m *Measuring) ComesTo(q MeasuredQuestion) (MeasuredAnswer, error) {
	text, err := json.Marshal(q)
	if err != nil {
		return MeasuredAnswer{}, fmt.Errorf("write the measurements for the core: %w", err)
	}
	question, err := m.m.parse(text)
	if err != nil {
		return MeasuredAnswer{}, err
	}
	var a MeasuredAnswer
	err = m.m.into(&a, "comesTo", question)
	return a, err
}
