package main

import (
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/alecthomas/kong"
	"github.com/rhysd/actionlint"
	"go.yaml.in/yaml/v4"

	"capspan/build"
	"capspan/content"
)

var fenced = regexp.MustCompile("(?ms)^```([a-z]+)\n(.*?)^```$")

// keeperFiles are the YAML files on the page for keepers, in its order.
func keeperFiles(t *testing.T) []string {
	t.Helper()
	page, err := fs.ReadFile(content.FS, "contribute/keeper.md")
	if err != nil {
		t.Fatal(err)
	}
	var files []string
	for _, m := range fenced.FindAllStringSubmatch(string(page), -1) {
		if m[1] == "yaml" {
			files = append(files, m[2])
		}
	}
	if len(files) != 3 {
		t.Fatalf("%d files on the page", len(files))
	}
	return files
}

// The two files for GitHub pass a checker of that format which is somebody else's: keys,
// expressions, inputs of the actions, and words of a stranger's that would get into a script.
func TestWorkflowFiles(t *testing.T) {
	linter, err := actionlint.NewLinter(io.Discard, &actionlint.LinterOptions{})
	if err != nil {
		t.Fatal(err)
	}
	for n, file := range keeperFiles(t)[:2] {
		problems, err := linter.Lint("workflow.yml", []byte(file), nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range problems {
			t.Errorf("file %d: %s", n+1, p)
		}
	}
}

// workflow is what the tests look at in a file for either forge.
type workflow struct {
	Permissions map[string]string
	Jobs        map[string]struct {
		Steps []struct {
			Uses, Name, Run string
			With            map[string]string
		}
	}
}

// What reads a stranger's change has no right to write and no secret; what may write
// neither fetches the change nor runs the program.
func TestWorkflowRights(t *testing.T) {
	files := keeperFiles(t)
	var check, comment workflow
	for n, to := range []*workflow{&check, &comment} {
		if err := yaml.Unmarshal([]byte(files[n]), to); err != nil {
			t.Fatal(err)
		}
	}
	for right, may := range check.Permissions {
		if may != "read" {
			t.Errorf("the first job may %s %s", may, right)
		}
	}
	if strings.Contains(files[0], "secrets.") || strings.Contains(files[0], "github.token") || strings.Contains(files[0], "pull_request_target") {
		t.Error("the first job has a secret")
	}
	kept := false
	for _, step := range check.Jobs["check"].Steps {
		kept = kept || step.With["persist-credentials"] == "false"
	}
	if !kept || check.Permissions["contents"] != "read" || len(check.Permissions) != 1 {
		t.Errorf("the first job keeps a token or may more than read: %v", check.Permissions)
	}
	for _, step := range comment.Jobs["comment"].Steps {
		if step.Uses != "" || strings.Contains(step.Run, "git ") || strings.Contains(step.Run, "capspan") {
			t.Errorf("the second job fetches or runs something: %+v", step)
		}
	}
	var lab map[string]yaml.Node
	if err := yaml.Unmarshal([]byte(files[2]), &lab); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"compare", "comment"} {
		var job struct {
			Rules     []struct{ If string }
			Script    []string
			Variables map[string]string
			Image     string
		}
		node := lab[name]
		if err := node.Decode(&job); err != nil {
			t.Fatal(err)
		}
		script := strings.Join(job.Script, "\n")
		if len(job.Rules) != 1 || job.Rules[0].If != `$CI_PIPELINE_SOURCE == "schedule"` {
			t.Errorf("%s: a change could start it: %v", name, job.Rules)
		}
		reads, writes := strings.Contains(script, "git "), strings.Contains(script, "COMMENT_TOKEN")
		if name == "compare" && (!reads || writes) || name == "comment" && (reads || !writes || job.Variables["GIT_STRATEGY"] != "none") {
			t.Errorf("%s: reads the change %t, has the token %t", name, reads, writes)
		}
		if mod, err := os.ReadFile("../../go.mod"); err != nil || name == "compare" && !strings.Contains(string(mod), "\ngo "+strings.TrimPrefix(job.Image, "golang:")+".") {
			t.Errorf("the image %s is not of the Go in go.mod (%v)", job.Image, err)
		}
	}
}

var (
	called   = regexp.MustCompile(`(?m)(?:^|[\s"/])(?:capspan"?|\$capspan"|cmd/capspan) ([a-z]+(?: [^\n>|&;#]*)?)`)
	expanded = regexp.MustCompile(`"?\$\([^)]*\)"?|"\$[^"]*"`)
)

// Whatever the pages and the README tell a reader to type is something the program takes.
func TestPagesNameVerbsAndFlags(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	texts := map[string]string{"README.md": string(readme)}
	err = fs.WalkDir(content.FS, ".", func(name string, d fs.DirEntry, err error) error {
		if err == nil && strings.HasSuffix(name, ".md") {
			var text []byte
			text, err = fs.ReadFile(content.FS, name)
			texts[name] = string(text)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]int{}
	for name, text := range texts {
		text = strings.ReplaceAll(text, "\\\n", " ")
		for _, block := range fenced.FindAllStringSubmatch(text+"\n```", -1) {
			for _, m := range called.FindAllStringSubmatch(block[2], -1) {
				args := strings.Fields(expanded.ReplaceAllString(m[1], "x"))
				parser, err := kong.New(&command{}, kong.Exit(func(int) {}), kong.Writers(io.Discard, io.Discard))
				if err != nil {
					t.Fatal(err)
				}
				if _, err := parser.Parse(args); err != nil {
					t.Errorf("%s: capspan %s: %v", name, m[1], err)
				}
				seen[args[0]]++
			}
		}
	}
	for _, verb := range []string{"check", "fmt", "compare", "build"} {
		if seen[verb] < 2 {
			t.Errorf("%q is called %d times: the test looks at too little", verb, seen[verb])
		}
	}
}

// forge is a repository as a forge has it: the keeper's branch, and the change of a
// stranger, also as it would be merged.
type forge struct {
	t   *testing.T
	dir string
	env []string
}

// strangers send: a figure set right, beside a program of their own; and a table that is
// a link to a file of the machine.
const (
	corrects = `sed -i 's/is: 2.188/is: 2.190/; s/^version: 1.0.0/version: 1.1.0/' tables/joints-inch.yaml
		echo 'broken(' > static/matcher/index.ts; echo 'package evil' > tables/evil.go; echo 'name: other' > content/site.yaml`
	spies = `ln -s ../../secret tables/evil.yaml`
	spied = "what only the machine knows"
)

func newForge(t *testing.T, change string) *forge {
	t.Helper()
	dir := t.TempDir()
	f := &forge{t, filepath.Join(dir, "work"), append(os.Environ(), "GIT_CONFIG_GLOBAL=/dev/null", "GIT_AUTHOR_NAME=a", "GIT_AUTHOR_EMAIL=a@example.org",
		"GIT_COMMITTER_NAME=a", "GIT_COMMITTER_EMAIL=a@example.org", "PATH="+filepath.Join(dir, "bin")+":"+os.Getenv("PATH"),
		"RUNNER_TEMP="+dir, "CI_BUILDS_DIR="+dir)}
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	src := build.Embedded()
	for name, folder := range map[string]fs.FS{"tables": src.Tables, "content": src.Content, "static": src.Static, "templates": src.Templates} {
		must(os.CopyFS(filepath.Join(f.dir, name), folder))
	}
	must(os.WriteFile(filepath.Join(dir, "secret"), []byte(spied), 0o644))
	// What go build would make is this very program.
	program, err := os.Executable()
	must(err)
	must(os.Mkdir(filepath.Join(dir, "bin"), 0o755))
	must(os.WriteFile(filepath.Join(dir, "bin", "go"), []byte("#!/bin/sh\n[ \"$1 $2 $4\" = \"build -o ./cmd/capspan\" ] && exec ln -s '"+program+"' \"$3\"\n"), 0o755))
	for _, script := range []string{
		"git init -q -b main; git add .; git commit -q -m first; git switch -q -c change",
		change,
		"git add .; git commit -q -m change; git switch -q main; git merge -q --no-ff -m merge change; git tag merged; git reset -q --hard HEAD^1",
		"git init -q --bare ../origin; git remote add origin ../origin; git push -q origin main merged change:refs/merge-requests/7/head; git branch -q -D change",
	} {
		if out, err := f.sh(script); err != nil {
			t.Fatal(out, err)
		}
	}
	merged, err := f.sh("git rev-parse merged")
	must(err)
	f.env = append(f.env, "GITHUB_SHA="+strings.TrimSpace(merged))
	return f
}

// sh runs a script as the forges do, to the first failure, and returns what it printed.
func (f *forge) sh(script string) (string, error) {
	f.t.Helper()
	cmd := exec.Command("bash", "-e", "-o", "pipefail", "-c", script)
	cmd.Dir, cmd.Env = f.dir, f.env
	out, err := cmd.CombinedOutput()
	return string(out), err
}

// result is what would be posted; it never tells what lies outside the change.
func (f *forge) result(name string) string {
	f.t.Helper()
	text, err := os.ReadFile(filepath.Join(f.dir, name))
	if err != nil {
		f.t.Fatal(err)
	}
	if strings.Contains(string(text), spied) {
		f.t.Errorf("%s tells a file of the machine:\n%s", name, text)
	}
	return string(text)
}

// The first job for GitHub, step by step: the change's data is compared and its program
// left alone; a link is not followed, and is a problem.
func TestFirstJobOnGitHub(t *testing.T) {
	var check workflow
	if err := yaml.Unmarshal([]byte(keeperFiles(t)[0]), &check); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, change, says string
		fails              string // the steps that do, in order
	}{
		{"corrects", corrects, "changed **1000.across, 1880.cap**: value 2.188 in", ""},
		{"spies", spies, "tables\\/evil.yaml", "Compare, Check, Build"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := newForge(t, c.change)
			var failed []string
			for _, step := range check.Jobs["check"].Steps {
				if step.Run == "" {
					continue
				}
				if out, err := f.sh(step.Run); err != nil {
					failed = append(failed, step.Name)
					t.Logf("%s: %v\n%s", step.Name, err, out)
				}
			}
			if got := strings.Join(failed, ", "); got != c.fails {
				t.Errorf("failed: %q, want %q", got, c.fails)
			}
			if text := f.result("compare.md"); !strings.Contains(text, c.says) {
				t.Errorf("does not say %q:\n%s", c.says, text)
			}
			if _, err := os.Stat(filepath.Join(f.dir, "dist/index.html")); (err == nil) != (c.fails == "") {
				t.Errorf("built: %v", err)
			}
		})
	}
}

// The first job for GitLab leaves a text for each change and the folder as it was.
func TestFirstJobOnGitLab(t *testing.T) {
	var lab struct{ Compare struct{ Script []string } }
	if err := yaml.Unmarshal([]byte(keeperFiles(t)[2]), &lab); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ name, change, says, ends string }{
		{"corrects", corrects, "changed **1000.across, 1880.cap**: value 2.188 in", "\n\nThe site can be built with this change.\n"},
		{"spies", spies, "tables\\/evil.yaml", "\n\nThe site cannot be built with this change: run capspan check.\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := newForge(t, c.change)
			if out, err := f.sh(strings.Join(lab.Compare.Script, "\n")); err != nil {
				t.Fatal(out, err)
			}
			if text := f.result("results/7.md"); !strings.Contains(text, c.says) || !strings.HasSuffix(text, c.ends) {
				t.Errorf("does not say %q:\n%s", c.says, text)
			}
			if out, err := f.sh("git status --porcelain -- tables content static"); err != nil || out != "" {
				t.Errorf("the folder is not as it was: %v\n%s", err, out)
			}
		})
	}
}
