package tables

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// What the README says for contributors is what the code knows. Run with -update to write
// it anew between its marks.
func TestReadmeIsNotStale(t *testing.T) {
	const name = "../README.md"
	src, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	text, c := string(src), Contribute(shippedSet(t))
	for part, want := range map[string]string{"row": "```yaml\n" + c.Row + "```\n", "sources": c.Sources, "rules": c.Rules} {
		begin, end := "<!-- "+part+": written by go test ./tables -update -->\n", "<!-- end of "+part+" -->\n"
		head, rest, found := strings.Cut(text, begin)
		got, tail, closed := strings.Cut(rest, end)
		if !found || !closed {
			t.Errorf("the README has no part between %q and %q", begin, end)
			continue
		}
		if diff := cmp.Diff("\n"+want+"\n", got); diff != "" && !*update {
			t.Errorf("%s is stale; run go test ./tables -update:\n%s", part, diff)
		}
		text = head + begin + "\n" + want + "\n" + end + tail
	}
	if *update && !t.Failed() {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// The job in one paragraph, then the two commands: nothing may come between.
func TestReadmeOpens(t *testing.T) {
	src, err := os.ReadFile("../README.md")
	if err != nil {
		t.Fatal(err)
	}
	parts := strings.SplitN(string(src), "\n\n", 4)
	if !strings.HasPrefix(parts[0], "# ") || strings.ContainsAny(parts[1][:1], "#`<-|") || !strings.HasPrefix(parts[2], "```\n") {
		t.Fatalf("the README begins %.300q", src)
	}
	if commands := strings.Split(strings.Trim(parts[2], "`\n"), "\n"); len(commands) != 2 {
		t.Errorf("%d commands: %q", len(commands), commands)
	}
}

// Every kind of source and every rule is explained, a rule in two lines at most.
func TestContributeListsAll(t *testing.T) {
	c := Contribute(shippedSet(t))
	if len(counts) != len(sourceKinds) {
		t.Errorf("%d kinds are explained, there are %d", len(counts), len(sourceKinds))
	}
	for _, kind := range sourceKinds {
		if counts[kind] == "" || !strings.Contains(c.Sources, "- `"+kind+"`: ") {
			t.Errorf("the kind %q is not explained", kind)
		}
	}
	entries := regexp.MustCompile(`(?m)^- `).Split(c.Rules, -1)[1:]
	if len(entries) != len(rules) {
		t.Fatalf("%d entries of %d rules", len(entries), len(rules))
	}
	for n, entry := range entries {
		if !strings.HasPrefix(entry, "`"+rules[n].ID+"`: ") || strings.Count(entry, "\n") > 2 {
			t.Errorf("rule %s:\n%s", rules[n].ID, entry)
		}
	}
}

// The example is a row of the chart: it loads as it stands, comments and all, and every
// column of its table is explained in it.
func TestExampleRowLoads(t *testing.T) {
	c := Contribute(shippedSet(t))
	name, _, _ := strings.Cut(strings.TrimPrefix(c.Row, "# from "), ".yaml")
	files := map[string]string{}
	for file, src := range shippedFiles(t) {
		files[file] = string(src)
	}
	head, _, found := strings.Cut(files[name+".yaml"], "\nrows:\n")
	if !found {
		t.Fatalf("the example names the table %q", name)
	}
	id := regexp.MustCompile(`(?m)^  - id: (.*)$`).FindStringSubmatch(c.Row)
	row := strings.Replace(c.Row, id[0], "  - id: the-example", 1)
	files[name+".yaml"] = head + "\nrows:\n" + row + strings.TrimPrefix(files[name+".yaml"], head+"\nrows:\n")
	set, list := loadFiles(files)
	for _, p := range list {
		if strings.Contains(p.Path, "the-example") && p.Rule != "unnamed-twins" && p.Rule != "one-sided-twins" {
			t.Errorf("%s", p)
		}
	}
	made := set.Find("the-example")
	if made == nil {
		t.Fatalf("the example is no row:\n%s", c.Row)
	}
	for _, column := range made.Table.Columns {
		if !strings.Contains(c.Row, "# "+column.Label+": ") {
			t.Errorf("the column %q is not explained", column.ID)
		}
	}
}
