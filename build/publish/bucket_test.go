package publish

import (
	"bytes"
	"compress/gzip"
	"context"
	"errors"
	"io"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"capspan/build"
)

// Publishing a site again asks for one listing and for the record, and writes nothing.
func TestUnchanged(t *testing.T) {
	s := newStore(t)
	one := site("1", "a", "b")
	s.publish(one, Options{})
	report := s.publish(one, Options{})
	if diff := cmp.Diff([]string{"LIST", "GET " + recordName}, s.log); diff != "" {
		t.Errorf("requests (-want +got):\n%s", diff)
	}
	if report.Written != 0 || report.Removed != 0 || report.Same != len(one.Files) {
		t.Errorf("got %+v", report)
	}
}

// A changed row of the shipped chart writes the files that differ, and no other.
func TestOneRow(t *testing.T) {
	src := build.Embedded()
	before, problems := build.Site(src, build.Options{})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	src.Tables = replaced(t, src.Tables, "joints-inch.yaml", "the commonest light series;", "the commonest light series (a word of the test);")
	after, problems := build.Site(src, build.Options{})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	want, old := []string{}, texts(before)
	for _, f := range after.Files {
		if was, there := old[f.Path]; !there || was != string(f.Bytes) {
			want = append(want, f.Path)
		}
	}
	s := newStore(t)
	s.publish(before, Options{})
	s.publish(after, Options{})
	var put []string
	for _, what := range s.log {
		if name, is := strings.CutPrefix(what, "PUT "); is && name != recordName {
			put = append(put, name)
		}
	}
	slices.Sort(put)
	if diff := cmp.Diff(want, put); diff != "" {
		t.Errorf("(-differ +put):\n%s", diff)
	}
	if len(want) == 0 || len(want) == len(after.Files) {
		t.Errorf("%d of %d files differ: this test compares nothing", len(want), len(after.Files))
	}
	t.Logf("%d of %d files put, %v", len(put), len(after.Files), s.counted())
}

// Each object has the type and caching of its kind, and comes back as it was built.
func TestFields(t *testing.T) {
	s := newStore(t)
	out := site("1", "a", strings.Repeat("long/", 60)+"b")
	s.publish(out, Options{})
	want := map[string][3]string{ // type, caching, encoding
		"assets/core.1.js": {"text/javascript; charset=utf-8", "public, max-age=31536000, immutable", "gzip"},
		"assets/same.js":   {"text/javascript; charset=utf-8", "public, max-age=31536000, immutable", ""}, // too small to pack
		"data/joints.csv":  {"text/csv; charset=utf-8", "no-cache", ""},
		"a/index.html":     {"text/html; charset=utf-8", "no-cache", "gzip"},
		"SHA256SUMS.txt":   {"text/plain; charset=utf-8", "no-cache", ""},
	}
	for name, want := range want {
		h := s.heads[name]
		if got := [3]string{h.Get("Content-Type"), h.Get("Cache-Control"), h.Get("Content-Encoding")}; got != want {
			t.Errorf("%s: got %q, want %q", name, got, want)
		}
	}
	got := s.holds()
	for name, text := range got {
		if s.heads[name].Get("Content-Encoding") == "gzip" {
			r, err := gzip.NewReader(strings.NewReader(text))
			if err != nil {
				t.Fatal(name, err)
			}
			var b bytes.Buffer
			io.Copy(&b, r)
			got[name] = b.String()
		}
	}
	equal(t, texts(out), got)

	// Another encoding is another object, though the site is the same.
	if report := s.publish(out, Options{Plain: true}); report.Written < 2 || report.Same < 2 {
		t.Errorf("plain after packed: %+v", report)
	}
	equal(t, texts(out), s.holds())
}

// Packed files beside others are for servers that choose; a bucket gets one form.
func TestPackedBeside(t *testing.T) {
	out := site("1", "a")
	want := texts(out)
	out.Files = append(out.Files, build.File{Path: "a/index.html.br"}, build.File{Path: "a/index.html.gz"})
	s := newStore(t)
	s.publish(out, Options{Plain: true})
	equal(t, want, s.holds())
}

// Whatever was lost or spoiled in the bucket is put again.
func TestMends(t *testing.T) {
	s := newStore(t)
	one := site("1", "a", "b")
	s.publish(one, Options{Plain: true})
	s.put("a/index.html", "spoiled")
	if _, err := s.backend.DeleteObject(bucketName, "b/index.html"); err != nil {
		t.Fatal(err)
	}
	if report := s.publish(one, Options{Plain: true}); report.Written != 2 {
		t.Errorf("got %+v, want 2 written", report)
	}
	equal(t, texts(one), s.holds())
}

// Open data of earlier versions stays; everything else that is gone goes, last.
func TestRemoves(t *testing.T) {
	s := newStore(t)
	const stays = "data/2020-01-01-0a1b2c3/joints.csv"
	old := site("1", "a", "gone")
	old.Files = append(old.Files, build.File{Path: stays, Bytes: []byte("id\n"), Stage: build.Pages})
	s.publish(old, Options{Plain: true})
	two := site("2", "a")
	s.publish(two, Options{Plain: true})
	want := texts(two)
	want[stays] = "id\n"
	equal(t, want, s.holds())
	removing := false
	for _, what := range s.log {
		is := strings.HasPrefix(what, "DELETE ")
		if removing && !is && what != "PUT "+recordName {
			t.Errorf("%s comes after a removal", what)
		}
		removing = removing || is
	}
	if !removing {
		t.Error("nothing was removed")
	}
	s.publish(two, Options{Plain: true})
	equal(t, want, s.holds())
	if len(s.log) != 2 {
		t.Errorf("not at rest: %q", s.log)
	}
}

// A dry run lists what the run then does, in its order, and writes nothing.
func TestDryRun(t *testing.T) {
	s := newStore(t)
	s.publish(site("1", "a", "gone"), Options{})
	before := s.holds()
	told := s.publish(site("2", "a"), Options{DryRun: true, Jobs: 1})
	if count := s.counted(); count["PUT"]+count["DELETE"]+count["POST"] > 0 {
		t.Errorf("a dry run wrote: %q", s.log)
	}
	equal(t, before, s.holds())
	did := s.publish(site("2", "a"), Options{Jobs: 1})
	if diff := cmp.Diff(told, did); diff != "" {
		t.Errorf("(-told +done):\n%s", diff)
	}
	var log []string
	for _, c := range told.Changes {
		log = append(log, map[string]string{"put": "PUT ", "remove": "DELETE "}[c.Do]+c.Path)
	}
	got := slices.DeleteFunc(slices.Clone(s.log), func(what string) bool {
		return what == "LIST" || strings.HasSuffix(what, recordName)
	})
	if diff := cmp.Diff(log, got); diff != "" {
		t.Errorf("(-told +asked):\n%s", diff)
	}
}

// Somebody else's objects are listed and nothing is written; with force those of the
// site's own names are written over and no other is touched, then or later.
func TestForeign(t *testing.T) {
	s := newStore(t)
	s.put("letter.txt", "dear all")
	s.put("a/index.html", "theirs")
	s.put("assets/same.js", "the same in all") // to the byte: nobody's loss
	one, plain := site("1", "a"), Options{Plain: true}
	before := s.holds()
	var refusal *ForeignError
	_, err := s.target("").Publish(context.Background(), one, plain)
	if !errors.As(err, &refusal) || !slices.Equal(refusal.Files, []string{"a/index.html", "letter.txt"}) {
		t.Fatalf("got %v", err)
	}
	equal(t, before, s.holds())
	if s.counted()["PUT"] > 0 {
		t.Errorf("written: %q", s.log)
	}
	plain.Force = true
	s.publish(one, plain)
	want := texts(one)
	want["letter.txt"] = "dear all"
	equal(t, want, s.holds())

	// Later only what is in the way is told.
	plain.Force = false
	s.put("new/index.html", "theirs")
	_, err = s.target("").Publish(context.Background(), site("1", "a", "new"), plain)
	if !errors.As(err, &refusal) || !slices.Equal(refusal.Files, []string{"new/index.html"}) {
		t.Errorf("got %v", err)
	}
	s.publish(site("2", "b"), plain)
	want = texts(site("2", "b"))
	want["letter.txt"], want["new/index.html"] = "dear all", "theirs"
	equal(t, want, s.holds())
}

// Two sites in one bucket do not see each other.
func TestPrefixes(t *testing.T) {
	s := newStore(t)
	plain := Options{Plain: true}
	for _, prefix := range []string{"joints", "joints-2/sub/"} {
		if _, err := s.target(prefix).Publish(context.Background(), site("1", "a"), plain); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := s.target("joints/").Publish(context.Background(), site("2"), plain); err != nil {
		t.Fatal(err)
	}
	want := map[string]string{}
	for name, text := range texts(site("2")) {
		want["joints/"+name] = text
	}
	for name, text := range texts(site("1", "a")) {
		want["joints-2/sub/"+name] = text
	}
	got := s.holds()
	maps.DeleteFunc(got, func(name, _ string) bool { return strings.HasSuffix(name, recordName) })
	equal(t, want, got)
}

// A record that is not ours is nothing to go by.
func TestForeignRecord(t *testing.T) {
	for _, text := range []string{"", "{}", `{"about":"theirs","files":{}}`,
		`{"about":"` + recordHead + `","whole":true,"files":{"../other/index.html":{}}}`,
		`{"about":"` + recordHead + `","whole":true,"files":{},"more":1}`} {
		s := newStore(t)
		s.put(recordName, text)
		s.put("index.html", "theirs")
		_, err := s.target("").Publish(context.Background(), site("1"), Options{Force: true})
		if err == nil || !strings.Contains(err.Error(), recordName) || s.counted()["PUT"] > 0 {
			t.Errorf("%s: got %v, %q", text, err, s.log)
		}
	}
}
