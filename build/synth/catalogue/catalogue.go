// Package catalogue makes charts of any size, to measure with: what happens to loading,
// comparing, building and identifying when the chart has a hundred thousand rows is
// measured with what this package writes. Every figure in it is invented, and every table
// says so.
//
// A catalogue follows the shipped chart, which is read when it is made: nothing about its
// shares is typed in here. In call order:
//
//	[Make]        reads the chart and makes the files
//	learn         takes each size of the chart apart into a pattern (pattern.go): how its
//	              rows are held, printed, believed and contradicted
//	maker.plain   draws a pattern, moves its figures (move.go) to where no caliper would take
//	              them for another size's (room.go), and lists them once for each of the
//	              makers who have it: the kits of a size, twins of each other
//	maker.joined  draws conversion joints between two sizes (conversion.go)
//	writeTables   writes rows as a contributor would, some thousand a file (yaml.go)
//	guide         is the guide without what it says of single rows (guide.go)
//
// Resampling with noise in this manner is a smoothed bootstrap (Silverman and Young 1987):
// what rows say keeps the chart's shares, whatever they are, and what belongs together in
// the chart stays together. One thing cannot follow when sizes are many: there is only so
// much room that a caliper can tell apart, so they spread further out than the chart does.
package catalogue

import (
	"fmt"
	"io/fs"
	"maps"
	"math/rand/v2"
	"slices"
	"testing/fstest"

	"capspan/tables"
)

// Options say which catalogue is made. Equal options and an equal chart give equal bytes.
type Options struct {
	Rows   int    // of joints; the tables of other parts come on top, as they are
	Seed   uint64 // of what stands for chance
	Makers int    // each lists about half of the sizes
}

// Makers is how many makers are invented unless something else is wanted: a size then has
// six kits on average, and a row names five or six twins.
const Makers = 12

// Files are those of one folder, by slash-separated path.
type Files map[string][]byte

// Make writes the tables of a catalogue that follows the chart in the folder given.
func Make(opt Options, chart fs.FS) (Files, error) {
	if opt.Rows < 1 || opt.Makers < 1 || opt.Makers > mostMakers {
		return nil, fmt.Errorf("a catalogue has a row or more and 1 to %d makers", mostMakers)
	}
	set, problems := tables.Load(chart)
	if problems.Blocked() {
		return nil, fmt.Errorf("the chart to follow: %s", problems.Summary())
	}
	patterns, err := learn(set)
	if err != nil {
		return nil, err
	}
	m := &maker{patterns: patterns, makers: opt.Makers, random: rand.New(rand.NewPCG(opt.Seed, 0x73796e7468)), room: newRoom()}
	if err := m.fill(opt.Rows); err != nil {
		return nil, err
	}
	files, err := copied(chart, set)
	if err != nil {
		return nil, err
	}
	files[registry] = append(files[registry], registryOf(opt.Makers)...)
	maps.Copy(files, writeTables(set, m.rows))
	return files, nil
}

// FS is the files as a folder in memory.
func (f Files) FS() fs.FS {
	out := fstest.MapFS{}
	for name, data := range f {
		out[name] = &fstest.MapFile{Data: data}
	}
	return out
}

// Names lists the files in order.
func (f Files) Names() []string { return slices.Sorted(maps.Keys(f)) }

// maker draws sizes until there are enough rows.
type maker struct {
	patterns patterns
	makers   int
	random   *rand.Rand
	room     *room
	sizes    []size // of plain joints
	pairs    map[[2]int]bool
	rows     []row
}

// fill makes plain joints and conversion joints by their shares of the chart.
func (m *maker) fill(rows int) error {
	m.pairs = map[[2]int]bool{}
	share := m.patterns.conversionShare()
	for n := 0; len(m.rows) < rows; n++ {
		if len(m.sizes) > 1 && m.random.Float64() < share {
			m.joined(n)
			continue
		}
		if err := m.plain(n); err != nil {
			return err
		}
	}
	m.rows = m.rows[:rows]
	m.dropTwins()
	return nil
}

// who draws the makers that list a size: each with even chances, and one at least.
func (m *maker) who() []int {
	var list []int
	for n := range m.makers {
		if m.random.IntN(2) == 0 {
			list = append(list, n)
		}
	}
	if list == nil {
		list = []int{m.random.IntN(m.makers)}
	}
	return list
}

// dropTwins takes out the names of kits that were cut off at the end.
func (m *maker) dropTwins() {
	last := m.rows[len(m.rows)-1].kits
	there := map[string]bool{}
	for _, r := range m.rows[max(0, len(m.rows)-m.makers):] {
		there[r.id] = true
	}
	*last = slices.DeleteFunc(*last, func(id string) bool { return !there[id] })
}
