package build

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"io/fs"
	"sync"

	"capspan/build/diag"
	"capspan/content"
	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
)

// Memory keeps what one build under serve worked out for the next, each thing under all
// that it depends on: a build with a memory has the same bytes as one without, unless it
// is asked to be hasty. Two builds must not use the same at once.
type Memory struct {
	answers  map[answerKey]answerOf
	scripts  map[string]scripts // by language, and whether for a chart in pieces
	pictures map[pictureKey][]byte
	pages    map[string]pageMemory // of rows, by language
	tables   tables.Reader
	exports  tables.Exports
	english  *voice                    // words and templates
	files    map[diskFile]summedFile   // of the disk
	data     map[string]File           // of the open data, by name
	worked   map[string]workedOut      // by language
	again    *again                    // the rows of the last chart, beside those of the one before
	made     map[string]map[string]any // of rows, by language, and by what it is
	disk     *known                    // of the folder that was written to last
	mu       sync.Mutex                // of scripts and words, of what is worked out and of what is made of rows
	blank    bool                      // of a check: pictures are not drawn
}

// NewMemory is one that knows nothing yet.
func NewMemory() *Memory {
	return &Memory{answers: map[answerKey]answerOf{}, scripts: map[string]scripts{}, pictures: map[pictureKey][]byte{}, pages: map[string]pageMemory{},
		files: map[diskFile]summedFile{}, made: map[string]map[string]any{}, worked: map[string]workedOut{}}
}

// set loads the chart; a table whose file is as it was is not read anew.
func (m *Memory) set(src Sources) (*tables.Set, *tables.Overlay, diag.List) {
	if m == nil {
		return src.Set()
	}
	return src.setBy(m.tables.Load)
}

// openData writes it; nil remembers nothing, as is enough for a check.
func (m *Memory) openData() *tables.Exports {
	if m == nil || m.blank {
		return nil
	}
	return &m.exports
}

// summed is a file of the open data; the very bytes that it had before are not summed again.
func (m *Memory) summed(name string, room *spool, content []byte) File {
	if m == nil || room != nil || len(content) == 0 {
		return room.keep(name, content, Pages)
	}
	before := m.data[name]
	if len(before.Bytes) == len(content) && &before.Bytes[0] == &content[0] {
		return before
	}
	return room.keep(name, content, Pages)
}

// holdData keeps the files of the open data for the next build, and no others.
func (m *Memory) holdData(files []File) {
	if m == nil {
		return
	}
	m.data = make(map[string]File, len(files))
	for _, f := range files {
		m.data[f.Path] = f
	}
}

// answerKey is all that the words of an example depend on, but for the chart.
type answerKey struct{ core, base, query string }

// answerOf is what the core said to an example with that chart.
type answerOf struct {
	chart  string
	answer content.Answer
}

// workedOut is what the calculations' examples come to, and of what.
type workedOut struct {
	of [sha256.Size]byte
	calculated
}

// pictureKey is all that a picture of the icon depends on.
type pictureKey struct {
	source  [sha256.Size]byte
	size    int
	purpose string
}

// picture draws one, or has it from before.
func (m *Memory) picture(key pictureKey, draw func() []byte) []byte {
	switch {
	case m == nil:
		return draw()
	case m.blank:
		return []byte{}
	}
	if m.pictures[key] == nil {
		m.pictures[key] = draw()
	}
	return m.pictures[key]
}

// calculate is [calculate], or what it gave before for the same scripts and chart; of a
// hasty build also for another chart, which stale says. Several languages may ask at once.
func (m *Memory) calculate(language string, core, scripts []byte, set *tables.Set, cut func() (*chartPieces, error), hasty bool) (calculated, error) {
	if m == nil {
		return calculate(core, scripts, set, cut)
	}
	all := sha256.New()
	for _, of := range []any{core, scripts, set.Version().Name(), drivelineRows(set)} {
		if err := json.NewEncoder(all).Encode(of); err != nil {
			return calculated{}, fmt.Errorf("internal error: %w", err)
		}
	}
	of := [sha256.Size]byte(all.Sum(nil))
	m.mu.Lock()
	before, known := m.worked[language]
	m.mu.Unlock()
	if known && (hasty || before.of == of) {
		before.stale = before.of != of
		return before.calculated, nil
	}
	made, err := calculate(core, scripts, set, cut)
	if err == nil {
		m.mu.Lock()
		m.worked[language] = workedOut{of, made}
		m.mu.Unlock()
	}
	return made, err
}

// scripts is what is made of the folder static.
type scripts struct {
	of        [sha256.Size]byte // the folder's files, and the language's
	assets    static.Assets
	method    []matcher.Assumption
	problems  [3]diag.List
	driveline []byte // the calculations
}

// bundled makes it, or has it from before when no file that it is made of has changed.
// Several languages may ask at once, and each for a chart held whole or one in pieces.
func (m *Memory) bundled(src Sources, language string, pieced bool) scripts {
	key, bundle, calculations := language, static.Bundle, static.Driveline
	if pieced {
		key, bundle, calculations = language+" in pieces", static.BundlePieced, static.DrivelinePieced
	}
	spoken, _ := src.In(language) // an unknown language has been refused
	fsys := spoken.Static
	made := scripts{}
	if m != nil {
		folders := []fs.FS{src.Static}
		if own, err := fs.Sub(src.Content, language); err == nil {
			folders = append(folders, own)
		}
		made.of = m.sumOf(folders...)
		m.mu.Lock()
		before, known := m.scripts[key]
		m.mu.Unlock()
		if known && made.of == before.of {
			return before
		}
	}
	var beside sync.WaitGroup
	beside.Go(func() {
		var err error
		if made.method, err = matcher.Assumptions(fsys); err != nil {
			made.problems[1].Add(diag.Problem{Pos: diag.Pos{File: "static/matcher/method.ts"}, Fact: err.Error(), Rule: "core-fails"})
		}
	})
	beside.Go(func() { made.driveline, made.problems[2] = calculations(fsys) })
	made.assets, made.problems[0] = bundle(fsys)
	beside.Wait()
	if m != nil {
		m.mu.Lock()
		m.scripts[key] = made
		m.mu.Unlock()
	}
	return made
}
