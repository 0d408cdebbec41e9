package build

import (
	"bytes"
	"compress/flate"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"sync"

	"capspan/build/diag"
	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
)

// A large chart is fetched in pieces, by pages and by the build itself:
//
//	assets/chart-directory.<name>.json  what comes first, and leads to all others
//	assets/chart/<name>.json            a part of the directory, a piece of some hundred rows, or
//	                                    the roll of their names; all languages have the same
//
// A name is made of the bytes it stands for, so whoever fetched a file knows whether it is
// the one that was meant (static/parts/pieces), and a chart in which one row has changed has
// all other pieces where they were.
const (
	pieceFolder   = "assets/chart/"
	directoryStem = "assets/chart-directory."
)

// pieceName is the beginning of the SHA-256 of a file's bytes, 128 bits of it, in hex digits: no
// file system takes two names for one, and packed they are as short as base64.
func pieceName(content []byte) string {
	sum := sha256.Sum256(content)
	return hex.EncodeToString(sum[:])[:32]
}

// chartPieces is a large chart, cut.
type chartPieces struct {
	directory matcher.Directory
	files     map[string][]byte // all that the directory leads to, by name
	packed    int               // bytes of all of them, about as a host sends them
}

// directoryFile is the directory with what a reader is told before much of it is fetched.
type directoryFile struct {
	matcher.Directory
	Packed int `json:"packed"`
}

// cutOnce cuts a large chart when it is first asked for, once for all languages. It is nil
// for a chart that is held whole.
func cutOnce(set *tables.Set) func() (*chartPieces, error) { return (*Memory)(nil).cutOnce(set) }

// cutOnce is the same, with what the memory has of rows and pieces.
func (m *Memory) cutOnce(set *tables.Set) func() (*chartPieces, error) {
	if set == nil || jointRows(set) <= largeRows {
		return nil
	}
	return sync.OnceValues(func() (*chartPieces, error) {
		again := m.rowsAgain("pieces", set, set, sum{})
		return cutPieces(chartAgain(set, again), again)
	})
}

func cutPieces(chart matcher.Chart, again *rowsAgain) (*chartPieces, error) {
	cut := &chartPieces{files: map[string][]byte{}}
	packedThen, packedNow := map[string]int{}, map[string]int{} // by name
	if again != nil {
		packedThen, _ = again.before["packed"].(map[string]int)
		again.now["packed"] = packedNow
	}
	var packed bytes.Buffer
	pack, err := flate.NewWriter(&packed, flate.DefaultCompression)
	if err != nil {
		return nil, err
	}
	cut.directory, err = matcher.Split(chart, pieceRows, func(p matcher.Piece) (string, error) {
		content, err := json.Marshal(p)
		if err != nil {
			return "", err
		}
		name := pieceName(content)
		cut.files[name] = content
		size, known := packedThen[name]
		if !known {
			packed.Reset()
			pack.Reset(&packed)
			if _, err := pack.Write(content); err != nil {
				return "", err
			}
			if err := pack.Close(); err != nil {
				return "", err
			}
			size = packed.Len()
		}
		packedNow[name] = size
		cut.packed += size
		return name, nil
	})
	if err != nil {
		return nil, fmt.Errorf("cut the chart into pieces: %w", err)
	}
	return cut, nil
}

// in is the directory as a language has it, whose titles of tables are those of the set.
func (c *chartPieces) in(set *tables.Set) []byte {
	file := directoryFile{Directory: c.directory, Packed: c.packed}
	titles := map[string]string{}
	for _, t := range set.Tables {
		titles[t.ID] = t.Title
	}
	file.Tables = nil
	for _, t := range c.directory.Tables {
		file.Tables = append(file.Tables, [2]string{t[0], titles[t[0]]})
	}
	text, err := json.Marshal(file)
	if err != nil {
		panic("internal error: " + err.Error()) // strings and numbers only
	}
	return text
}

// fetch returns such a file by its name.
func (c *chartPieces) fetch(name string) ([]byte, error) {
	if content, there := c.files[name]; there {
		return content, nil
	}
	return nil, fmt.Errorf("there is no piece %q", name)
}

// addPieces writes the directory and all it leads to.
func (s *site) addPieces() diag.List {
	cut, err := s.cut()
	if err != nil {
		return diag.List{{Pos: diag.Pos{File: "tables"}, Fact: err.Error(), Rule: "core-fails"}}
	}
	content := s.chartFile()
	s.chart = directoryStem + pieceName(content) + ".json"
	s.addRoot(s.chart, content, Assets)
	if s.folder != "" {
		return nil // the first language has written the pieces
	}
	for name, content := range cut.files {
		s.addRoot(pieceFolder+name+".json", content, Assets)
	}
	return nil
}

// chartFile is what a browser reads of the chart first: all of it, or the directory of a
// large one, which addPieces has found to be there.
func (s *site) chartFile() []byte {
	if s.cut == nil {
		return s.chartJSON()
	}
	cut, err := s.cut()
	if err != nil {
		return nil
	}
	return cut.in(s.set)
}

// coreScripts are the core's scripts that a page asks for, with what reads pieces behind
// them where the chart is in pieces.
func (s *site) coreScripts(names ...string) []string {
	if s.cut != nil {
		names = append(names, static.PiecesScript)
	}
	return names
}

// aheadWhole is what a page fetches as it begins where the chart is held whole, and cannot use
// where it is in pieces.
func (s *site) aheadWhole(names ...string) []string {
	if s.cut != nil {
		return nil
	}
	return names
}

// inCore gives the core the chart that browsers are given, whole or in pieces.
func (in *inputs) inCore() (*matcher.Matcher, error) {
	core := in.assets.Core()
	if in.unbundled != nil {
		core, _ = coreFor(in.unbundled, jointRows(in.set.Whole())) // it is the program's own
	}
	if in.cut == nil {
		return matcher.New(core, Chart(in.set))
	}
	cut, err := in.cut()
	if err != nil {
		return nil, err
	}
	return matcher.NewAtHand(core, cut.in(in.set), cut.fetch)
}
