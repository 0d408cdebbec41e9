package main

import (
	"bytes"
	"context"
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"capspan/build"
	"capspan/build/press"
)

// book prints the chart and guide of the working folder on one kind of paper.
func (r *release) book(ctx context.Context, paper string, date time.Time) error {
	start := time.Now()
	chromium, err := press.Find()
	if err != nil {
		return fmt.Errorf("%w (-paper none)", err)
	}
	made, problems := build.Book(build.Folder(r.root), build.BookOptions{Language: r.language, Sheet: paper})
	if problems.Blocked() {
		return problemsOf("the book", problems)
	}
	printed, err := press.Print(ctx, chromium, made.HTML, date)
	if err != nil {
		return err
	}
	for _, place := range made.Places() {
		if printed.Pages[place] == 0 {
			return fmt.Errorf("the book sends its reader to %q, and no page has it", place)
		}
	}
	if r.again {
		second, err := press.Print(ctx, chromium, made.HTML, date)
		if err != nil {
			return err
		}
		if !bytes.Equal(printed.PDF, second.PDF) {
			return fmt.Errorf("the book was printed twice, and the bytes differ: %x and %x", sha256.Sum256(printed.PDF), sha256.Sum256(second.PDF))
		}
	}
	name := "capspan-book-" + made.Chart.Name()
	if r.language != "" {
		name += "-" + r.language
	}
	name += "-" + paper + ".pdf"
	if err := r.write(name, printed.PDF); err != nil {
		return err
	}
	again := map[bool]string{true: "; printed twice, and the bytes are the same"}[r.again]
	r.say("%s: %d pages, %.1f MB, laid out %d times in %.0f s%s", name, printed.Count, float64(len(printed.PDF))/1e6, printed.Times,
		time.Since(start).Seconds(), again)
	return nil
}

// sums lists what was made, as sha256sum -c reads it.
func (r *release) sums() error {
	slices.Sort(r.made)
	var list strings.Builder
	for _, name := range r.made {
		content, err := os.ReadFile(filepath.Join(r.out, name))
		if err != nil {
			return err
		}
		fmt.Fprintf(&list, "%x  %s\n", sha256.Sum256(content), name)
	}
	return r.write("SHA256SUMS.txt", []byte(list.String()))
}
