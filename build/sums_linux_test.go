package build

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// The list is checked by the program it is written for (GNU coreutils), and notices a
// file that did not arrive whole.
func TestSums(t *testing.T) {
	dir := t.TempDir()
	out := mustSite(t, Options{})
	mustWrite(t, dir, out)
	check := func() error {
		sums := exec.Command("sha256sum", "--check", "--strict", "--quiet", sumsName)
		sums.Dir = dir
		said, err := sums.CombinedOutput()
		if err != nil {
			return fmt.Errorf("%w: %s", err, said)
		}
		return nil
	}
	if err := check(); err != nil {
		t.Error(err)
	}
	listed := strings.Count(string(contents(out)[sumsName]), "\n")
	if want := len(out.Files) - 1; listed != want {
		t.Errorf("%d files are listed, want all %d but the list", listed, want)
	}
	if err := os.Truncate(filepath.Join(dir, "identify", "index.html"), 100); err != nil {
		t.Fatal(err)
	}
	if err := check(); err == nil || !strings.Contains(err.Error(), "identify/index.html") {
		t.Errorf("a file cut off: got %v", err)
	}
}
