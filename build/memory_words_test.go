package build

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	catalog "capspan/templates/words"
)

// Words and templates that are had from before are those of the folders as they are now.
func TestWordsAndTemplatesAgain(t *testing.T) {
	edited, memory := fstest.MapFS{}, NewMemory()
	src := inEnglish()
	text, err := fs.ReadFile(src.Templates, "words/en/joint.yaml")
	if err != nil {
		t.Fatal(err)
	}
	src.Templates = layers{edited, src.Templates}
	const key = "joint.enquiry"
	first := memory.spokenIn(src, catalog.English)
	if again := memory.spokenIn(src, catalog.English); again.frames != first.frames || again.words != first.words {
		t.Error("what has not changed is read again")
	}
	edited["more.html"] = &fstest.MapFile{Data: []byte("{{define \"more\"}}more{{end}}")}
	if !memory.spokenIn(src, catalog.English).frames.Has("more.html") {
		t.Error("a new template is not there")
	}
	edited["words/en/joint.yaml"] = &fstest.MapFile{Data: []byte(strings.Replace(string(text), "enquiry: \"Write", "enquiry: \"Do write", 1))}
	shipped := memory.spokenIn(src, catalog.English).words.Say(key)
	if !strings.HasPrefix(shipped, "Do write") {
		t.Errorf("edited words are not said: %q", shipped)
	}
	own := src
	for _, said := range []string{"Ask", "Ask once more"} {
		own.Own = fstest.MapFS{"words/en/joint.yaml": {Data: []byte("enquiry: " + said + "\n")}}
		if got := memory.spokenIn(own, catalog.English).words.Say(key); got != said {
			t.Errorf("a keeper says %q, and the page %q", said, got)
		}
	}
	if got := memory.spokenIn(src, catalog.English).words.Say(key); got != shipped {
		t.Errorf("without a keeper the page says %q", got)
	}
}
