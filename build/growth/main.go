// Command growth measures how what Capspan does grows with the rows of its chart, and makes
// the table of figures in DEVELOPERS.md and the picture beside it.
//
//	go run ./build/growth                 measure at 1,000, 10,000 and 100,000 rows; print the table
//	go run ./build/growth -rows 1000      at some sizes only
//	go run ./build/growth -write          and put table and picture into their places
//
// The charts are invented (build/synth/catalogue). What people wait for is measured as
// they wait for it: the program in a process of its own, with its memory. The rest are the
// benchmarks of the packages, and questions put to the scripts that pages load, in node.
// What a measurement needs and is not there is an error. A machine that does something else
// at the same time swells every time; ratios of one run are good for what they compare.
package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"runtime"
	"strconv"
	"strings"
)

func main() {
	if err := command(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, "growth:", err)
		os.Exit(1)
	}
}

func command(args []string) error {
	flags := flag.NewFlagSet("growth", flag.ContinueOnError)
	sizes := flags.String("rows", "1000,10000,100000", "rows of joints, with commas between")
	only := flags.String("only", "", "some measurements only, with commas between: "+strings.Join(names(), ", "))
	write := flags.Bool("write", false, "write the table into DEVELOPERS.md and the picture beside this command; from the top folder of the project")
	keep := flags.String("temp", "", "a folder for what is made; it is removed when none is given")
	if err := flags.Parse(args); err != nil {
		return err
	}
	wanted, err := chosen(*only)
	if err != nil {
		return err
	}
	if *write && *only != "" {
		return errors.New("-write wants every measurement")
	}
	folder := *keep
	if folder == "" {
		if folder, err = os.MkdirTemp("", "growth"); err != nil {
			return err
		}
		defer os.RemoveAll(folder)
	}
	shop := &workshop{folder: folder}
	if err := shop.compile(); err != nil {
		return err
	}
	var all []column
	for _, text := range strings.Split(*sizes, ",") {
		rows, err := strconv.Atoi(strings.TrimSpace(text))
		if err != nil {
			return fmt.Errorf("%q is no number of rows", text)
		}
		c := column{rows: rows, figures: map[string]figure{}}
		chart, err := shop.catalogue(rows)
		if err != nil {
			return err
		}
		for _, m := range wanted {
			fmt.Fprintf(os.Stderr, "%d rows: %s ...\n", rows, m.name)
			if err := m.take(chart, c.figures); err != nil {
				return fmt.Errorf("%s at %d rows: %w", m.name, rows, err)
			}
		}
		all = append(all, c)
	}
	text := table(all, fmt.Sprintf("%s/%s, %d cores, %s", runtime.GOOS, runtime.GOARCH, runtime.NumCPU(), runtime.Version()))
	if !*write {
		_, err := fmt.Print(text)
		return err
	}
	return place(text, all)
}

// measurement takes some figures of a chart, each under its name.
type measurement struct {
	name string
	take func(*catalogueFolder, map[string]figure) error
}

var measurements = []measurement{
	{"build", takeBuild}, {"loop", takeLoop}, {"check", takeCheck}, {"compare", takeCompare},
	{"rebuild", takeRebuild}, {"identify", takeIdentify}, {"reach", takeReach},
}

func names() []string {
	var list []string
	for _, m := range measurements {
		list = append(list, m.name)
	}
	return list
}

func chosen(only string) ([]measurement, error) {
	if only == "" {
		return measurements, nil
	}
	var list []measurement
	for _, name := range strings.Split(only, ",") {
		found := false
		for _, m := range measurements {
			if m.name == strings.TrimSpace(name) {
				list, found = append(list, m), true
			}
		}
		if !found {
			return nil, fmt.Errorf("there is no measurement %q; there are %s", name, strings.Join(names(), ", "))
		}
	}
	return list, nil
}
