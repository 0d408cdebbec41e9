// Command synth writes an invented catalogue of any size into a new folder, from which the
// site is built as from any other. It is a tool of this project, to measure with, and no
// part of the shipped command.
//
//	go run ./build/synth -rows 100000 -seed 1 -out DIR
//	capspan check --root DIR
//
// How the catalogue comes about, and by what it follows the shipped chart, stands at the
// head of package catalogue. Equal flags write equal files.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"capspan/build"
	"capspan/build/synth/catalogue"
)

func main() {
	if err := command(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "synth:", err)
		os.Exit(1)
	}
}

func command(args []string, out io.Writer) error {
	flags := flag.NewFlagSet("synth", flag.ContinueOnError)
	rows := flags.Int("rows", 100_000, "rows of joints")
	seed := flags.Uint64("seed", 1, "start of the numbers that stand for chance")
	makers := flags.Int("makers", catalogue.Makers, "how many makers' catalogues list the sizes, each about half of them")
	dir := flags.String("out", "", "the folder to make; it must not be there yet")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if *dir == "" {
		return errors.New("say where with -out DIR")
	}
	shipped := build.Embedded()
	made, err := catalogue.Make(catalogue.Options{Rows: *rows, Seed: *seed, Makers: *makers}, shipped.Tables)
	if err != nil {
		return err
	}
	guide, err := catalogue.Guide(shipped.Content)
	if err != nil {
		return err
	}
	if err := os.Mkdir(*dir, 0o755); err != nil {
		return err
	}
	for name, from := range map[string]fs.FS{"tables": made.FS(), "content": guide.FS(), "static": shipped.Static, "templates": shipped.Templates} {
		if err := os.CopyFS(filepath.Join(*dir, name), from); err != nil {
			return fmt.Errorf("write %s: %w", name, err)
		}
	}
	bytes := 0
	for _, data := range made {
		bytes += len(data)
	}
	_, err = fmt.Fprintf(out, "%s: %d rows of joints in %d files of tables, %d bytes\n", *dir, *rows, len(made), bytes)
	return err
}
