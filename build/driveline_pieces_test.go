package build

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"capspan/static"
	"capspan/static/driveline"
	"capspan/tables"
)

// twoEnds are questions of joining two ends: both plain sizes, one held by another clip, one
// that no row has, a yoke, and nothing.
var twoEnds = []string{
	"hold1=outside-clip&cap1=27.00%20mm&across1=81.80%20mm&hold2=outside-clip&cap2=34.90%20mm&across2=106.50%20mm",
	"hold1=inside-clip&cap1=30.2&across1=88.1&hold2=outside-clip&cap2=34.90%20mm&across2=106.50%20mm",
	"hold1=outside-clip&cap1=99&across1=250&hold2=outside-clip&cap2=27&across2=81.8",
	"hold1=outside-clip&taken1=yoke&cap1=27.0&across1=85&hold2=outside-clip&cap2=27.0&across2=81.8",
	"",
}

// justLarge is a chart of few more rows than a small one, and its sources.
func justLarge(t *testing.T) (Sources, *tables.Set) {
	t.Helper()
	src, err := makeMany(largeRows + 100)
	if err != nil {
		t.Fatal(err)
	}
	set, problems := src.spoken()
	if problems.Blocked() {
		t.Fatal(problems)
	}
	return src, set
}

// Two ends in a chart in pieces, each brought when it is missed, give what they give in the
// whole chart.
func TestTwoEndsInPieces(t *testing.T) {
	src, set := justLarge(t)
	pieced, problems := Driveline(src)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	core, more := static.Core(src.Static)
	problems.Add(more...)
	scripts, more := static.Driveline(src.Static)
	problems.Add(more...)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	whole, err := calculations(core, scripts, set, nil)
	if err != nil {
		t.Fatal(err)
	}
	named := 0
	for _, fragment := range twoEnds {
		want, err := whole.Reckon(joiningEnds, fragment)
		if err != nil {
			t.Fatal(err)
		}
		got, err := pieced.Reckon(joiningEnds, fragment)
		if err != nil {
			t.Fatal(err)
		}
		for _, line := range got.Lines {
			named += len(line.Rows)
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s: whole and in pieces (-whole +pieces):\n%s", fragment, diff)
		}
	}
	if named == 0 {
		t.Error("no answer names a row")
	}
}

// A piece that cannot be had is told with its place and its reason.
func TestPieceThatCannotBeHad(t *testing.T) {
	src, set := justLarge(t)
	core, problems := static.Pieced(src.Static)
	scripts, more := static.DrivelinePieced(src.Static)
	problems.Add(more...)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	m, err := driveline.New(core, scripts)
	if err != nil {
		t.Fatal(err)
	}
	pieces, err := cutOnce(set)()
	if err != nil {
		t.Fatal(err)
	}
	lost := errors.New("the file is gone")
	fetch := func(string) ([]byte, error) { return nil, lost }
	if err := m.ProvidePieces(drivelineRows(set), pieces.in(set), fetch); err != nil {
		t.Fatal(err)
	}
	_, err = m.Reckon(joiningEnds, twoEnds[0])
	if !errors.Is(err, lost) || !strings.Contains(err.Error(), "fetch piece ") {
		t.Errorf("got %v", err)
	}
}
