package main

import (
	"fmt"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"capspan/build"
	"capspan/build/diag"
	"capspan/content"
)

type translateVerb struct {
	Root   string   `default:"." placeholder:"DIR" help:"The working folder, with content/ in it (the current one unless given)."`
	Settle bool     `help:"Record that the files named, or all, say what the English does today."`
	Start  bool     `help:"Make what is missing: pages and scripts as they are in English, words with nothing said yet."`
	JSON   bool     `name:"json" help:"Print the problems as JSON."`
	Quiet  bool     `short:"q" help:"Print the problems only, not the closing line; no names of files."`
	Lang   string   `arg:"" name:"lang" help:"The language, as its folder in content/ is called: es, fr, pt-BR."`
	Files  []string `arg:"" optional:"" name:"file" help:"With --settle: the files of the language that are up to date."`
}

// Help is shown below the one-line help.
func (translateVerb) Help() string {
	return `Lists what a language lacks and what in it is older than the English it was made
of: each problem is at the English line and names the file to mend. With any the
exit status is 1. A file that is still the English one counts as missing.

Words of the interface and of the tables say beside them what they are of. For
pages and scripts content/LANG/made-of.yaml does, which --settle writes: look at
the English again, mend the translation, then settle it.

Examples:
  capspan translate es
  capspan translate es --settle content/es/measure/cap.md
  capspan translate fr --start               the folder of a new language`
}

// Run lists, settles or starts.
func (v *translateVerb) Run(t *terminal) error {
	switch {
	case !content.LanguageFolder(v.Lang):
		return misuse("%q is the name of no other language\n    hint: write it as in the attribute lang, two small letters and perhaps a region: es, fr, pt-BR", v.Lang)
	case v.Settle && v.Start:
		return misuse("--settle and --start at once\n    hint: start, translate, then settle")
	case len(v.Files) > 0 && !v.Settle:
		return misuse("what of %q?\n    hint: files are named with --settle", v.Files[0])
	}
	if !holdsTables(v.Root) {
		return misuse("%q holds no folder named tables\n    hint: name the folder above it with --root", v.Root)
	}
	src := build.Folder(v.Root)
	switch {
	case v.Settle:
		return v.settle(t, src)
	case v.Start:
		return v.start(t, src)
	}
	return v.report(t, build.Translation(src, v.Lang), true)
}

// report prints problems as they were asked for. Warnings count too: what is behind is
// what the verb is for.
func (v *translateVerb) report(t *terminal, problems diag.List, closing bool) error {
	var err error
	switch {
	case v.JSON:
		err = printJSON(t.out, reportOf(problems))
	default:
		if err = problems.Print(t.out); err == nil && closing && !v.Quiet {
			_, err = fmt.Fprintln(t.out, problems.Summary())
		}
	}
	if err != nil {
		return err
	}
	if len(problems) > 0 {
		return problemsFound
	}
	return nil
}

func (v *translateVerb) settle(t *terminal, src build.Sources) error {
	name, madeOf, settled, problems := build.Settle(src, v.Lang, v.Files)
	if problems.Blocked() {
		return v.report(t, problems, false)
	}
	if len(settled) == 0 {
		return misuse("there is nothing to settle in content/%s\n    hint: capspan translate %s --start makes the folder; a file that is still the English one is not settled", v.Lang, v.Lang)
	}
	if err := v.write(map[string][]byte{name: madeOf}); err != nil {
		return err
	}
	return v.name(t, settled)
}

func (v *translateVerb) start(t *terminal, src build.Sources) error {
	files, problems := build.StartLanguage(src, v.Lang)
	if problems.Blocked() {
		return v.report(t, problems, false)
	}
	if err := v.write(files); err != nil {
		return err
	}
	var made []string
	for _, name := range slices.Sorted(maps.Keys(files)) {
		made = append(made, "content/"+name)
	}
	return v.name(t, made)
}

// name lists the files that were written or settled.
func (v *translateVerb) name(t *terminal, files []string) error {
	if v.Quiet || len(files) == 0 {
		return nil
	}
	_, err := fmt.Fprintln(t.out, strings.Join(files, "\n"))
	return err
}

// write puts files into the folder content, each by rename.
func (v *translateVerb) write(files map[string][]byte) error {
	root, err := os.OpenRoot(filepath.Join(v.Root, "content"))
	if err != nil {
		return fmt.Errorf("open the pages: %w", err)
	}
	defer root.Close()
	for _, name := range slices.Sorted(maps.Keys(files)) {
		if err := root.MkdirAll(path.Dir(name), 0o755); err != nil {
			return fmt.Errorf("make a folder: %w", err)
		}
		if err := replaceFile(root, name, files[name]); err != nil {
			return err
		}
	}
	return nil
}
