package press

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strconv"
)

// What Chromium prints is plain PDF 1.4 (ISO 32000-1, 7.5): every object stands by itself as
// "7 0 obj ... endobj", and the table of the places (Dests, 12.3.2.3) and the tree of the
// pages (7.7.3) are not packed. That is all that is read here, and anything else is an error.

var (
	object      = regexp.MustCompile(`(?s)(\d+) 0 obj\n(.*?)\nendobj`)
	catalogue   = regexp.MustCompile(`/Type /Catalog\b`)
	destsOf     = regexp.MustCompile(`/Dests (\d+) 0 R`)
	pagesOf     = regexp.MustCompile(`/Pages (\d+) 0 R`)
	kidsOf      = regexp.MustCompile(`(?s)/Kids \[(.*?)\]`)
	reference   = regexp.MustCompile(`(\d+) 0 R`)
	destination = regexp.MustCompile(`/([^\s/<>\[\]()]+) \[(\d+) 0 R /XYZ`)
	nameEscape  = regexp.MustCompile(`#[0-9A-Fa-f]{2}`)
)

// places returns the page that each named place stands on, and how many pages there are.
func places(pdf []byte) (map[string]int, int, error) {
	objects := map[string][]byte{}
	var catalog []byte
	for _, found := range object.FindAllSubmatch(pdf, -1) {
		objects[string(found[1])] = found[2]
		if catalogue.Match(found[2]) {
			catalog = found[2]
		}
	}
	dests, tree := destsOf.FindSubmatch(catalog), pagesOf.FindSubmatch(catalog)
	if dests == nil || tree == nil {
		return nil, 0, errors.New("it has no table of places or no pages where they are looked for")
	}
	number := map[string]int{}
	if err := count(objects, string(tree[1]), number, 0); err != nil {
		return nil, 0, err
	}
	list := map[string]int{}
	for _, found := range destination.FindAllSubmatch(objects[string(dests[1])], -1) {
		n := number[string(found[2])]
		if n == 0 {
			return nil, 0, fmt.Errorf("the place %s stands on no page", found[1])
		}
		list[plainName(found[1])] = n
	}
	if len(list) == 0 {
		return nil, 0, errors.New("its table of places is empty")
	}
	return list, len(number), nil
}

// deepest is how far the tree of the pages may go down; Chromium's grows with a power of eight.
const deepest = 20

// count numbers the leaves of the tree of pages, in their order.
func count(objects map[string][]byte, id string, number map[string]int, depth int) error {
	node, there := objects[id]
	if !there || depth > deepest {
		return fmt.Errorf("the tree of pages is broken at object %s", id)
	}
	kids := kidsOf.FindSubmatch(node)
	if kids == nil || !bytes.Contains(node, []byte("/Type /Pages")) {
		number[id] = len(number) + 1
		return nil
	}
	for _, kid := range reference.FindAllSubmatch(kids[1], -1) {
		if err := count(objects, string(kid[1]), number, depth+1); err != nil {
			return err
		}
	}
	return nil
}

// plainName undoes the escapes of a name (7.3.5).
func plainName(name []byte) string {
	return string(nameEscape.ReplaceAllFunc(name, func(e []byte) []byte {
		n, err := strconv.ParseUint(string(e[1:]), 16, 8)
		if err != nil {
			panic("internal error: the pattern lets only hexadecimal digits through")
		}
		return []byte{byte(n)}
	}))
}
