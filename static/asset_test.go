package static

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
)

// A file that is fetched late is known to its importer by its hashed name and its sum.
func TestAssetImport(t *testing.T) {
	fsys := small()
	fsys["parts/send/send.ts"] = &fstest.MapFile{Data: []byte("import { asset } from \"asset:table.js\";\ndocument.title = asset.file + asset.integrity;\n")}
	assets, problems := Bundle(fsys)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	var sum string
	for _, f := range assets.Files {
		if f.Path == assets.Path("table.js") {
			sum = f.Integrity()
		}
	}
	script := string(assets.Bytes("send.js"))
	for _, want := range []string{strings.TrimPrefix(assets.Path("table.js"), "assets/"), sum} {
		if want == "" || !strings.Contains(script, want) {
			t.Errorf("send.js does not hold %q: %s", want, script)
		}
	}
}

func TestAssetImportOutOfOrder(t *testing.T) {
	for _, name := range []string{"send.js", "no.js"} { // itself, and nothing
		fsys := small()
		fsys["parts/send/send.ts"] = &fstest.MapFile{Data: []byte("import { asset } from \"asset:" + name + "\";\ndocument.title = asset.file;\n")}
		assets, problems := Bundle(fsys)
		if !strings.Contains(fmt.Sprint(problems), `no asset "`+name+`" is bundled before this`) {
			t.Errorf("%s: got %v", name, problems)
		}
		if assets.Path("send.js") != "" || assets.Path("table.js") == "" {
			t.Errorf("%s: the bundle has %v", name, assets.names)
		}
	}
}
