package build

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"slices"
	"strings"
	"unicode/utf8"
)

// What a large chart has to tell of its rows is too much for one file. It lies in drawers:
// files of records, each found by the beginning of its key, which static/parts/late/drawers.ts
// opens. A drawer that would be too full is taken apart by the next character of the keys,
// so that a row that is edited, or comes or goes, changes the drawers it lies in and no
// other. A drawer's file is named by its bytes; which beginning is in which file is told by
// a directory, whose own name stays.

// record is one thing in a drawer.
type record struct {
	key  string // without spaces, but for the end
	json []byte
}

// recordOf is a record of anything that JSON can say.
func recordOf(key string, of any) record { return record{key + keyEnd, mustJSON(of)} }

// drawerSize is how many bytes a drawer holds at most, unless all of its keys are the same:
// less than 8 kB when it travels.
const drawerSize = 48_000

// keyEnd stands behind every key, so that a key that others begin with has a drawer too.
const keyEnd = " "

// drawerDigits are those of its sum, in hexadecimal, that name a drawer.
const drawerDigits = 12

// drawers are what a directory says of them; static/parts/late/drawers.ts reads it.
type drawers struct {
	Folder string            `json:"folder"` // address of the files, with a slash behind
	Files  map[string]string `json:"files"`  // names, by the beginning of the keys
}

// drawerFiles writes drawers into a folder of the site's assets, each once.
type drawerFiles struct {
	site        *site
	folder      string
	written     map[string]bool
	before, now map[string]drawerThen // by what it is, in the build before and in this
}

// drawerThen is a file made of records.
type drawerThen struct {
	records []record
	name    string
	file    File
}

// drawersIn begins to write drawers of something.
func (s *site) drawersIn(folder, what string) drawerFiles {
	d := drawerFiles{site: s, folder: folder, written: map[string]bool{}}
	if r := s.again; r != nil {
		d.before, _ = r.before["drawers of "+what].(map[string]drawerThen)
		d.now = map[string]drawerThen{}
		r.now["drawers of "+what] = d.now
	}
	return d
}

// add writes one file and gives its name.
func (d drawerFiles) add(content []byte) string {
	name, file := d.fileOf(content)
	d.put(name, file)
	return name
}

func (d drawerFiles) fileOf(content []byte) (string, File) {
	sum := sha256.Sum256(content)
	name := hex.EncodeToString(sum[:])[:drawerDigits]
	return name, d.site.spool.keep(d.folder+name+".json", content, Assets)
}

func (d drawerFiles) put(name string, file File) {
	if !d.written[name] {
		d.written[name] = true
		d.site.files = append(d.site.files, file)
	}
}

// addOf writes the file that is made of nothing but what it is and its records, and gives its
// name. Made of the same before, it is the same.
func (d drawerFiles) addOf(what string, records []record, content func() []byte) string {
	one, known := d.before[what]
	if !known || !slices.EqualFunc(one.records, records, sameRecord) {
		one.name, one.file = d.fileOf(content())
	}
	d.put(one.name, one.file)
	if d.now != nil {
		one.records = records // of the old ones nothing is to stay
		d.now[what] = one
	}
	return one.name
}

func sameRecord(a, b record) bool { return a.key == b.key && bytes.Equal(a.json, b.json) }

// addAll puts sorted records into drawers of at most as many bytes and writes them.
func (d drawerFiles) addAll(what string, records []record, most int) drawers {
	list := drawers{Folder: d.site.atRoot(d.folder), Files: map[string]string{}}
	takeApart(records, "", most, func(beginning string, records []record) {
		list.Files[beginning] = d.addOf(what+" "+beginning, records, func() []byte { return listOf(records) })
	}, nil)
	return list
}

// sortIn puts records into drawers as takeApart does, in whatever order they are.
func sortIn(records []record, most int, see, split func(beginning string, records []record)) {
	list := slices.Clone(records)
	slices.SortStableFunc(list, func(a, b record) int { return strings.Compare(a.key, b.key) })
	takeApart(list, "", most, see, split)
}

// takeApart puts sorted records whose keys begin alike into drawers of at most as many bytes;
// a record counts one more than it has. It gives see each drawer, and split, when it is not
// nil, each beginning that too many keys have for one, in front of what it is split into.
func takeApart(records []record, beginning string, most int, see, split func(string, []record)) {
	size := 0
	for _, r := range records {
		size += len(r.json) + 1
	}
	if size <= most || strings.HasSuffix(beginning, keyEnd) {
		see(beginning, records)
		return
	}
	if split != nil {
		split(beginning, records)
	}
	for len(records) > 0 {
		_, wide := utf8.DecodeRuneInString(records[0].key[len(beginning):])
		next := records[0].key[:len(beginning)+wide]
		n := slices.IndexFunc(records, func(r record) bool { return !strings.HasPrefix(r.key, next) })
		if n < 0 {
			n = len(records)
		}
		takeApart(records[:n], next, most, see, split)
		records = records[n:]
	}
}

// listOf is the file of a drawer. A record that lies there under several keys stands in it once.
func listOf(records []record) []byte {
	seen := map[string]bool{}
	out := []byte("[")
	for _, r := range records {
		if seen[string(r.json)] {
			continue
		}
		seen[string(r.json)] = true
		if len(out) > 1 {
			out = append(out, ",\n"...)
		}
		out = append(out, r.json...)
	}
	return append(out, "]\n"...)
}

func mustJSON(of any) []byte {
	text, err := json.Marshal(of)
	if err != nil {
		panic("internal error: " + err.Error()) // strings and numbers only
	}
	return text
}
