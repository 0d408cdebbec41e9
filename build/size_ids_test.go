package build

import (
	"fmt"
	"io/fs"
	"maps"
	"path"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"capspan/static"
	"capspan/tables"
)

// Whatever id a page of a size has besides those of its rows, and whatever id a script adds, no
// row can have: it is not made as those of rows are, or refused.
func TestSizePageIDs(t *testing.T) {
	files, set := mustLarge(t)
	own := map[string]string{} // with the page that has it
	for name, content := range files {
		if !strings.HasPrefix(name, "size/") || path.Base(path.Dir(name)) == "paper" {
			continue
		}
		for id := range crawl(t, content).ids {
			if set.Find(id) == nil {
				own[id] = name
			}
		}
	}
	named := regexp.MustCompile(`\bid: "([^"]+)"`)
	err := fs.WalkDir(static.FS, "parts", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasPrefix(name, "parts/search/") && !strings.HasPrefix(name, "parts/lifesize/") && !strings.HasPrefix(name, "parts/offline/") {
			return err
		}
		text, err := fs.ReadFile(static.FS, name)
		for _, found := range named.FindAllStringSubmatch(string(text), -1) {
			own[found[1]] = name
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(own) < 8 || own["main"] == "" || own["search-title"] == "" {
		t.Fatalf("only %v", own)
	}
	made, err := madeRows()
	if err != nil {
		t.Fatal(err)
	}
	made = maps.Clone(made)
	table, _, _ := strings.Cut(triedTable(), "  - id: ")
	possible := 0
	for id := range own {
		row := fmt.Sprintf("  - id: %s\n    hold:   {is: plate, basis: memory}\n    cap:    {is: 30, basis: memory}\n    across: {is: 80, faces: under-plates, basis: memory}\n    grease: {is: x, basis: memory}\n", id)
		if _, problems := tables.Load(fstest.MapFS{"joints-tried.yaml": {Data: []byte(table + row)}}); !problems.Blocked() {
			made["joints-named-"+id+".yaml"] = []byte(strings.Replace(table, "table: joints-tried", "table: joints-named-"+id, 1) + row)
			possible++
		}
	}
	large, problems := tables.Load(made.FS())
	if problems.Blocked() || possible < 8 {
		t.Fatalf("%d ids could be those of rows; %v", possible, problems)
	}
	refused := map[string]bool{}
	for _, p := range takenIDs(large) {
		refused[large.Find(p.Path).ID] = true
		if p.Rule != "taken-id" || p.Pos.Line == 0 || len(p.Hints) != 1 {
			t.Errorf("%v", p)
		}
	}
	for id, where := range own {
		if large.Find(id) != nil && !refused[id] {
			t.Errorf("%s has the id %q, and so may a row", where, id)
		}
	}
	if len(refused) != possible {
		t.Errorf("refused are %v of %v", refused, own)
	}
	if small, _ := tables.Load(fstest.MapFS{"joints-tried.yaml": {Data: made["joints-named-main.yaml"]}}); len(takenIDs(small)) > 0 {
		t.Error("a small chart has no such pages")
	}
}
