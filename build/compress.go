package build

import (
	"bytes"
	"compress/gzip"
	"strings"
	"sync"

	"github.com/andybalholm/brotli"
)

// brotliLevel packs a site once for many readers. BenchmarkCompress on the shipped site,
// 5.85 MB of text: level 9 gives 1.45 MB, 10 gives 1.33 MB in two to three times the time
// and 11 gives 1.29 MB in four to six times, 9 s of one core; gzip gives 1.60 MB.
const brotliLevel = 11

// compress adds a .br and a .gz beside every file of text that they make smaller, for
// servers that send packed files as they are.
func (out *Output) compress(room *spool) {
	var texts []File
	for _, f := range out.Files {
		if packable(f) {
			texts = append(texts, f)
		}
	}
	packed := make([][]File, len(texts))
	onAllCores(len(texts), func(n int) { packed[n] = pack(texts[n], brotliLevel, room) })
	for _, files := range packed {
		out.Files = append(out.Files, files...)
	}
}

// packable reports whether a file is text a reader asks for.
func packable(f File) bool {
	kind := contentType(f.Path)
	return f.Stage != Hosting && (strings.HasPrefix(kind, "text/") || strings.Contains(kind, "json") || strings.Contains(kind, "xml"))
}

// pack returns the packed forms that are smaller than the file. Neither carries a date
// or a name, so that equal input gives equal bytes.
func pack(f File, level int, room *spool) []File {
	var files []File
	text := f.mustRead()
	for ending, packed := range map[string][]byte{".br": packBrotli(text, level), ".gz": packGzip(text)} {
		if len(packed) < len(text) {
			files = append(files, room.keep(f.Path+ending, packed, f.Stage))
		}
	}
	return files
}

// Gzip packs a file of text; it says no when the file is none, or would get no smaller.
func Gzip(f File) (packed []byte, smaller bool) {
	if !packable(f) {
		return nil, false
	}
	text := f.mustRead()
	packed = packGzip(text)
	return packed, len(packed) < len(text)
}

// brotliWriters are at rest, by level: to make one, of 33 MB at the highest, is a sixth of
// the packing of a page.
var brotliWriters [brotli.BestCompression + 1]sync.Pool

func packBrotli(text []byte, level int) []byte {
	var b bytes.Buffer
	w, rested := brotliWriters[level].Get().(*brotli.Writer)
	if rested {
		w.Reset(&b)
	} else {
		w = brotli.NewWriterLevel(&b, level)
	}
	w.Write(text) // a buffer takes everything
	w.Close()
	brotliWriters[level].Put(w)
	return b.Bytes()
}

func packGzip(text []byte) []byte {
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		panic("internal error: " + err.Error()) // the level is a constant
	}
	w.Write(text)
	w.Close()
	return b.Bytes()
}
