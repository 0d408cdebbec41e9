package publish

import (
	"context"
	"path/filepath"
	"slices"

	"capspan/build"
)

// folder is a target on a disk.
type folder string

func (f folder) String() string { return string(f) }

// Publish brings the folder up to date. [build.Write] cannot be called off, and need not
// be: it is done within a second or two, and killed it leaves whole pages.
func (f folder) Publish(_ context.Context, out build.Output, opt Options) (Report, error) {
	dir := filepath.Clean(string(f))
	d, err := build.Differ(dir, out)
	if err != nil {
		return Report{}, err
	}
	if len(d.Foreign) > 0 && !opt.Force {
		return Report{}, &ForeignError{Target: f.String(), Files: d.Foreign}
	}
	report := Report{Written: len(d.Write), Removed: len(d.Remove), Same: d.Same, Changes: []Change{}}
	slices.SortStableFunc(d.Write, func(a, b build.File) int { return turn(a.Path) - turn(b.Path) })
	for _, file := range d.Write {
		report.Changes = append(report.Changes, Change{"put", file.Path})
		report.Bytes += int64(len(file.Bytes))
	}
	for _, name := range d.Remove {
		report.Changes = append(report.Changes, Change{"remove", name})
	}
	if opt.DryRun {
		return report, nil
	}
	if len(d.Foreign) > 0 {
		var over []string
		for _, file := range d.Write {
			over = append(over, file.Path)
		}
		if err := build.Adopt(dir, over); err != nil {
			return Report{}, err
		}
	}
	done, err := build.Write(dir, out)
	report.Written, report.Removed, report.Same, report.Bytes = done.Written, done.Removed, done.Same, done.Bytes
	return report, err
}
