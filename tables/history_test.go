package tables

import (
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"capspan/build/diag"
)

var awkward = Release{Chart: "2026-12-01-0123abc", Date: "2026-12-01", Why: `a "reader" measured it: {really} # 1`,
	Tables: []string{"joints-inch 1.1.0"},
	Changes: []Recorded{
		{Of: "joints-inch/1310", Column: "cap", What: "value", Old: "1.062 in", New: "1 1/16 in"},
		{Of: "joints-inch/old", What: "retired", New: "joints-inch/1310", Why: `back\slash, <b>, 012, yes`},
	}}

// What is recorded is read back, whatever stands in it; the newest comes first, what was
// there stays as it was, and Format finds nothing to put in order.
func TestRecord(t *testing.T) {
	files := fstest.MapFS{}
	for name, text := range shippedFiles(t) {
		files[name] = &fstest.MapFile{Data: text}
	}
	later := awkward
	later.Chart = "2026-12-02-0123abd"
	text := files[historyFile].Data
	head, _, _ := strings.Cut(string(text), "history:")
	for _, release := range []Release{awkward, later} {
		var err error
		if text, err = Record(text, release); err != nil {
			t.Fatal(err)
		}
		ordered, problems := Format(folder+historyFile, text)
		if diff := cmp.Diff(string(text), string(ordered)); diff != "" || len(problems) > 0 {
			t.Errorf("not in order (-recorded +formatted):\n%s%v", diff, problems)
		}
	}
	if !strings.HasPrefix(string(text), head) {
		t.Error("the head of the file was lost")
	}
	before, _ := Load(files)
	files[historyFile] = &fstest.MapFile{Data: text}
	set, problems := Load(files)
	if len(problems) > 0 {
		t.Fatal(printedAll(problems))
	}
	if diff := cmp.Diff([]Release{later, awkward}, set.History, cmpopts.IgnoreTypes(diag.Pos{})); diff != "" {
		t.Errorf("(-recorded +read):\n%s", diff)
	}
	if before.Version() != set.Version() {
		t.Error("what is recorded changed the chart's name")
	}
	if _, err := Record([]byte("releases: []\n"), awkward); err == nil {
		t.Error("recorded into a file that holds no history")
	}
	if text, err := Record(nil, awkward); err != nil || !strings.HasPrefix(string(text), "history:\n  - chart: 2026-12-01-0123abc\n") {
		t.Errorf("a history that is not there: %v\n%s", err, text)
	}
}

func TestHistoryIsChecked(t *testing.T) {
	entry := "history:\n  - chart: 2026-12-01-0123abc\n    date: 2026-12-01\n    why: tried\n    tables: [x 1.0.1]\n    changes:\n      - {of: x/a, what: note}\n"
	tests := map[string]struct{ old, new, rule string }{
		"no name":    {"2026-12-01-0123abc", "1.2.3", "bad-version"},
		"no day":     {"date: 2026-12-01", "date: 2026-13-01", "bad-date"},
		"no reason":  {"    why: tried\n", "", "missing-key"},
		"nothing":    {"    changes:\n      - {of: x/a, what: note}\n", "    changes: []\n", "empty-value"},
		"no subject": {"of: x/a, ", "", "missing-key"},
		"odd key":    {"what: note", "what: note, who: me", "unknown-key"},
		"twice":      {"history:\n", entry, "duplicate-id"},
		"a word":     {entry, "history: none\n", "wrong-shape"},
	}
	for name, tt := range tests {
		files := fstest.MapFS{}
		for name, text := range shippedFiles(t) {
			files[name] = &fstest.MapFile{Data: text}
		}
		files[historyFile] = &fstest.MapFile{Data: []byte(strings.Replace(entry, tt.old, tt.new, 1))}
		_, problems := Load(files)
		if len(problems) != 1 || problems[0].Rule != tt.rule || problems[0].Pos.File != "tables/history.yaml" {
			t.Errorf("%s: want %s, got\n%s", name, tt.rule, printedAll(problems))
		}
	}
}

// A release that would make the file too long, or say more than is read, is found before
// it is written.
func TestCheckHistory(t *testing.T) {
	long := awkward
	for range 20_000 {
		long.Changes = append(long.Changes, Recorded{Of: "joints-inch/1310", Column: "cap", What: "value", Old: "1.062 in", New: "1.063 in"})
	}
	wordy := awkward
	wordy.Why = strings.Repeat("a", 401)
	for _, tt := range []struct {
		release Release
		rule    string
	}{{awkward, ""}, {long, "file-size"}, {wordy, "text-length"}} {
		text, err := Record(nil, tt.release)
		if err != nil {
			t.Fatal(err)
		}
		rule := ""
		if problems := CheckHistory(text); len(problems) > 0 {
			rule = problems[0].Rule
		}
		if rule != tt.rule {
			t.Errorf("got %q, want %q", rule, tt.rule)
		}
	}
}
