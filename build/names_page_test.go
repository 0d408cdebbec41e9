package build

import (
	"net/url"
	"slices"
	"strings"
	"testing"

	"capspan/templates"
)

// Every name of every joint stands on one page of names, once, with its place; each page can
// be reached from the list from A to Z, and none holds more than a phone should get.
func TestNamesOfRows(t *testing.T) {
	_, set := mustMany(t)
	s := manySite()
	pages := map[string]*templates.Names{}
	for _, d := range s.drafted {
		if body, ok := d.page.Body.(*templates.Names); ok {
			if pages[d.page.Address] != nil || (&url.URL{Path: d.page.Address}).EscapedPath() != d.page.Address {
				t.Errorf("the address %s", d.page.Address)
			}
			pages[d.page.Address] = body
		}
	}
	listed := map[string]int{} // by name and place
	reached := map[string]bool{}
	var walk func(links []templates.Link)
	walk = func(links []templates.Link) {
		for _, link := range links {
			address := "/" + strings.TrimPrefix(link.Href, "/sub/")
			body := pages[address]
			if body == nil || reached[address] {
				t.Fatalf("%s is led to, and is not there or twice", address)
			}
			reached[address] = true
			lines := 0
			for _, line := range body.Lines {
				for _, row := range line.Rows {
					listed[row.Text+" "+row.Href]++
					lines++
				}
			}
			if lines > 1500 {
				t.Errorf("%s has %d names", address, lines)
			}
			walk(body.Parts)
		}
	}
	walk(s.az.Names)
	if len(reached) != len(pages) || len(pages) < 5 {
		t.Errorf("%d of %d pages are reached", len(reached), len(pages))
	}
	names := 0
	for row := range s.joints() {
		for _, name := range slices.Concat([]string{row.ID}, row.Also) {
			names++
			if n := listed[name+" "+s.at(s.placeOf(row))]; n != 1 {
				t.Errorf("%q of %s is listed %d times", name, row.ID, n)
			}
		}
	}
	if len(listed) != names || set == nil {
		t.Errorf("%d names are listed, and there are %d", len(listed), names)
	}
}

// Addresses of beginnings are apart and need no escape.
func TestNamesAddress(t *testing.T) {
	seen := map[string]string{}
	for _, beginning := range []string{"a", "1", "2.", "2.5", "é", "ñandú", "σ", "2", "e9", "-", "日本"} {
		address := namesAddress(beginning)
		if seen[address] != "" || (&url.URL{Path: address}).EscapedPath() != address || !strings.HasPrefix(address, azAddress) {
			t.Errorf("%q has the address %s, as %q", beginning, address, seen[address])
		}
		seen[address] = beginning
	}
}
