package tables

import (
	"bytes"
	"io/fs"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// What is shipped is formatted, so that a contributor's diff shows only their change.
func TestShippedFilesAreFormatted(t *testing.T) {
	for name, src := range shippedFiles(t) {
		got, problems := Format(folder+name, src)
		if len(problems) > 0 {
			t.Errorf("%s: %v", name, problems)
		}
		if diff := cmp.Diff(string(src), string(got)); diff != "" {
			t.Errorf("%s is not formatted (-shipped +formatted):\n%s", name, diff)
		}
	}
}

func shippedFiles(t testing.TB) map[string][]byte {
	t.Helper()
	names, err := fs.Glob(FS, "*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatalf("no tables: %v", err)
	}
	files := map[string][]byte{}
	for _, name := range names {
		if files[name], err = fs.ReadFile(FS, name); err != nil {
			t.Fatal(err)
		}
	}
	return files
}

const untidy = "# about the file\n" +
	"\n" +
	"title:   A   table # said twice\r\n" +
	"table: x\n" +
	"# the columns\n" +
	"columns:\n" +
	"    hold: {kind: hold,label: Hold}\n" +
	"    # the cap\n" +
	"    cap: { greatest: 4 ,least: 0.30, kind: length, label: \"Cap, outside\"}\n" +
	"\n\n\n" +
	"rows:\n" +
	"- note: it's {odd}#1   # why\n" +
	"  cap: {basis: memory, is: 1.50}\n" +
	"  id: '1'\n" +
	"  # both ways\n" +
	"  hold: {others: [ {basis: memory, is: strap} ,{is: plate,basis: memory}], is: wing,basis: memory}\n" +
	"\n" +
	"  # another\n" +
	"- id: \"2\"\n" +
	"  twins: [ \"1\",'3' ]\n" +
	"# the end\n\n"

const tidied = `# about the file

table: x
title: A   table # said twice
# the columns
columns:
  hold: {label: Hold, kind: hold}
  # the cap
  cap:  {label: "Cap, outside", kind: length, least: 0.30, greatest: 4}

rows:
  - id: '1'
    # both ways
    hold: {is: wing, basis: memory, others: [{is: strap, basis: memory}, {is: plate, basis: memory}]}
    cap:  {is: 1.50, basis: memory}
    note: it's {odd}#1 # why

  # another
  - id: "2"
    twins: ["1", '3']
# the end
`

func TestFormat(t *testing.T) {
	got, problems := Format("tables/x.yaml", []byte(untidy))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if diff := cmp.Diff(tidied, string(got)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// A file that cannot be read stays as it is.
func TestFormatLeavesWhatItCannotRead(t *testing.T) {
	for _, src := range []string{"a: [1\n", "", "a: {b: 1,\n  c: 2}\n", "a: |\n  text\n"} {
		got, problems := Format("tables/x.yaml", []byte(src))
		if string(got) != src || len(problems) == 0 {
			t.Errorf("Format(%q) = %q with %d problems, want it unchanged with one at least", src, got, len(problems))
		}
	}
}

// Formatting twice is formatting once, and Format itself compares the meaning.
func FuzzFormat(f *testing.F) {
	for _, src := range shippedFiles(f) {
		f.Add(src)
	}
	f.Add([]byte(untidy))
	f.Fuzz(func(t *testing.T, src []byte) {
		once, problems := Format("tables/x.yaml", src)
		if len(problems) > 0 {
			return
		}
		twice, problems := Format("tables/x.yaml", once)
		if len(problems) > 0 || !bytes.Equal(once, twice) {
			t.Errorf("%q\nonce  %q\ntwice %q\n%v", src, once, twice, problems)
		}
	})
}
