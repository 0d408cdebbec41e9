package build

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"capspan/static/matcher"
)

// A chart takes longer to read than a question to answer, a large one seconds, so what was
// compiled of it is kept in a folder: one file for each chart, named by the hash of
// everything it was made from. It holds sums of all its parts, and whatever is not as they
// say is as if it were not there.
//
//	line of JSON     what is in it and where, kept.head
//	line             SHA-256 of the line before
//	parts            the core's script, the chart or its directory, the record of changes, the pieces

const (
	keptFormat = "capspan chart 2"
	keptEnding = ".chart"
	keptMost   = 4 // charts; those not used for longest are removed
	// keptLeft is how old a file is that somebody began and never finished.
	keptLeft = time.Hour
)

// keptHead says what is in a file.
type keptHead struct {
	Format string              `json:"format"`
	Key    string              `json:"key"`
	Core   keptPart            `json:"core"`
	Chart  keptPart            `json:"chart"` // its directory, where there are pieces
	Record keptPart            `json:"record"`
	Pieces map[string]keptPart `json:"pieces"`
}

// keptPart is where some bytes are, behind the head, and their sum.
type keptPart struct {
	At     int64  `json:"at"`
	Length int    `json:"length"`
	Sum    string `json:"sum"`
}

// compiled is a chart as it is kept: whole, or its directory and its pieces.
type compiled struct {
	core, chart, record []byte
	pieces              map[string][]byte
}

// matcher is the core over such a chart.
func (c compiled) matcher() (*matcher.Matcher, error) {
	if len(c.pieces) == 0 {
		return matcher.NewWritten(c.core, c.chart)
	}
	return matcher.NewAtHand(c.core, c.chart, func(name string) ([]byte, error) { return c.pieces[name], nil })
}

// writeKept puts a chart into the folder, whole or not at all, and removes those that have
// not been used for longest.
func writeKept(folder, key string, c compiled) error {
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return err
	}
	var body bytes.Buffer
	add := func(text []byte) keptPart {
		part := keptPart{At: int64(body.Len()), Length: len(text), Sum: hexSum(text)}
		body.Write(text)
		return part
	}
	head := keptHead{Format: keptFormat, Key: key, Core: add(c.core), Chart: add(c.chart), Record: add(c.record), Pieces: map[string]keptPart{}}
	for name, text := range c.pieces {
		head.Pieces[name] = add(text)
	}
	line, err := json.Marshal(head)
	if err != nil {
		return err
	}
	file, err := os.CreateTemp(folder, "begun-*")
	if err != nil {
		return err
	}
	defer os.Remove(file.Name()) // renamed by then, if all went well
	_, err = fmt.Fprintf(file, "%s\n%s\n%s", line, hexSum(line), body.Bytes())
	if err := errors.Join(err, file.Close()); err != nil {
		return err
	}
	if err := os.Rename(file.Name(), filepath.Join(folder, key+keptEnding)); err != nil {
		return err
	}
	return tidyKept(folder)
}

// openKept finds a chart in the folder. What is not whole is no chart.
func openKept(folder, key string) (*keptFile, error) {
	name := filepath.Join(folder, key+keptEnding)
	file, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	k := &keptFile{file: file}
	if err := k.readHead(key); err != nil {
		file.Close()
		return nil, err
	}
	now := time.Now()
	_ = os.Chtimes(name, now, now) // only which goes first hangs on it
	return k, nil
}

// keptFile is a kept chart, of which parts are read as they are asked for.
type keptFile struct {
	file *os.File
	head keptHead
	from int64 // where the parts begin
}

var errNotWhole = errors.New("the kept chart is not whole")

func (k *keptFile) readHead(key string) error {
	info, err := k.file.Stat()
	if err != nil {
		return err
	}
	all := io.NewSectionReader(k.file, 0, info.Size())
	text := make([]byte, min(info.Size(), 1<<16))
	for {
		if _, err := all.ReadAt(text, 0); err != nil && !errors.Is(err, io.EOF) {
			return err
		}
		line, rest, found := bytes.Cut(text, []byte("\n"))
		sum, _, ended := bytes.Cut(rest, []byte("\n"))
		if found && ended {
			if hexSum(line) != string(sum) || json.Unmarshal(line, &k.head) != nil || k.head.Format != keptFormat || k.head.Key != key {
				return errNotWhole
			}
			k.from = int64(len(line) + len(sum) + 2)
			return nil
		}
		if int64(len(text)) == info.Size() {
			return errNotWhole
		}
		text = make([]byte, min(info.Size(), 4*int64(len(text))))
	}
}

func (k *keptFile) part(p keptPart) ([]byte, error) {
	if p.Length < 0 || p.Length > 1<<30 {
		return nil, errNotWhole
	}
	text := make([]byte, p.Length)
	if _, err := k.file.ReadAt(text, k.from+p.At); err != nil {
		return nil, errNotWhole
	}
	if hexSum(text) != p.Sum {
		return nil, errNotWhole
	}
	return text, nil
}

// matcher is the core over the kept chart.
func (k *keptFile) matcher() (*matcher.Matcher, error) {
	core, err1 := k.part(k.head.Core)
	chart, err2 := k.part(k.head.Chart)
	if err := errors.Join(err1, err2); err != nil {
		return nil, err
	}
	if len(k.head.Pieces) == 0 {
		return matcher.NewWritten(core, chart)
	}
	return matcher.NewAtHand(core, chart, func(name string) ([]byte, error) {
		part, there := k.head.Pieces[name]
		if !there {
			return nil, errNotWhole
		}
		return k.part(part)
	})
}

// record is the record of changes that belongs to the chart.
func (k *keptFile) record() (matcher.Record, error) {
	var out matcher.Record
	text, err := k.part(k.head.Record)
	if err != nil {
		return out, err
	}
	return out, json.Unmarshal(text, &out)
}

// tidyKept removes the charts that were not used for longest, and what was begun and left.
func tidyKept(folder string) error {
	files, err := os.ReadDir(folder)
	if err != nil {
		return err
	}
	used := map[string]time.Time{}
	var charts []string
	for _, f := range files {
		info, err := f.Info()
		if err != nil || !info.Mode().IsRegular() {
			continue // somebody else was quicker
		}
		switch name := f.Name(); {
		case strings.HasSuffix(name, keptEnding):
			charts = append(charts, name)
			used[name] = info.ModTime()
		case strings.HasPrefix(name, "begun-") && time.Since(info.ModTime()) > keptLeft:
			_ = os.Remove(filepath.Join(folder, name))
		}
	}
	slices.SortFunc(charts, func(a, b string) int { return used[b].Compare(used[a]) })
	for _, name := range charts[min(keptMost, len(charts)):] {
		_ = os.Remove(filepath.Join(folder, name))
	}
	return nil
}
