//go:build browser

package browser

import (
	"errors"
	"os/exec"
	"path/filepath"
	"testing"

	"capspan/build"
)

// Every page is valid HTML by the Nu Html Checker.
func TestValidHTML(t *testing.T) {
	dir := t.TempDir()
	if _, err := build.Write(dir, site); err != nil {
		t.Fatal(err)
	}
	jar, err := filepath.Abs(filepath.Join(tools, "vnu-jar", "build", "dist", "vnu.jar"))
	if err != nil {
		t.Fatal(err)
	}
	// Not errors only: its warnings find headings out of order and doubtful attributes.
	// What it says of the content security policy is left out: it takes the folder for
	// the origin. Chromium holds the pages to their policy in TestEveryPage.
	check := exec.Command("java", "-Xss2m", "-jar", jar, "--skip-non-html",
		"--filterpattern", ".*violates Content Security Policy.*", dir)
	said, err := check.CombinedOutput()
	if exit := (*exec.ExitError)(nil); err != nil && !errors.As(err, &exit) {
		t.Fatalf("run the HTML checker: %v; build/test.sh installs Java and vnu-jar", err)
	}
	if err != nil || len(said) > 0 {
		t.Errorf("the HTML checker says (%v):\n%.8000s", err, said)
	}
}

// The checker really checks: a page with a fault is told.
func TestHTMLCheckerFindsFaults(t *testing.T) {
	dir := t.TempDir()
	spoiled := build.Output{Files: []build.File{{Path: "index.html", Stage: build.Pages,
		Bytes: []byte("<!doctype html><html lang=en><title>x</title><p id=a>x<p id=a>y")}}}
	if _, err := build.Write(filepath.Join(dir, "site"), spoiled); err != nil {
		t.Fatal(err)
	}
	jar := filepath.Join(tools, "vnu-jar", "build", "dist", "vnu.jar")
	said, err := exec.Command("java", "-jar", jar, "--skip-non-html", filepath.Join(dir, "site")).CombinedOutput()
	if exit := (*exec.ExitError)(nil); !errors.As(err, &exit) || len(said) == 0 {
		t.Errorf("a page with one id twice passed: %v, %s", err, said)
	}
}
