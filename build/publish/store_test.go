package publish

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"maps"
	"net/http"
	"net/http/httptest"
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/johannesboyne/gofakes3"
	"github.com/johannesboyne/gofakes3/backend/s3mem"

	"capspan/build"
)

const bucketName = "joints"

// store is somebody else's S3 server in this process, with a counter and a hand on the
// line before it.
type store struct {
	t       *testing.T
	backend *s3mem.Backend
	answers http.Handler
	server  *httptest.Server

	mutex  sync.Mutex
	log    []string                  // "GET", "LIST", "PUT name", "DELETE name"
	heads  map[string]http.Header    // of the last PUT of each name
	before func(n int, q string) int // a status to answer instead, 0 to go on; n counts requests
	after  func(n int, q string)
}

func newStore(t *testing.T) *store {
	t.Helper()
	s := &store{t: t, backend: s3mem.New(), heads: map[string]http.Header{}}
	if err := s.backend.CreateBucket(bucketName); err != nil {
		t.Fatal(err)
	}
	next := gofakes3.New(s.backend).Server()
	s.answers = http.HandlerFunc(func(w http.ResponseWriter, q *http.Request) {
		s.mutex.Lock() // one at a time: the tests look at the store in between
		defer s.mutex.Unlock()
		name := strings.TrimPrefix(q.URL.Path, "/"+bucketName+"/")
		what := q.Method + " " + name
		if name == "" {
			what = "LIST"
		}
		s.log = append(s.log, what)
		n := len(s.log)
		if s.before != nil {
			if status := s.before(n, what); status != 0 {
				io.Copy(io.Discard, q.Body)
				w.WriteHeader(status)
				return
			}
		}
		if q.Method == "PUT" {
			s.heads[name] = q.Header.Clone()
		}
		next.ServeHTTP(w, q)
		if s.after != nil {
			s.after(n, what)
		}
	})
	s.server = httptest.NewServer(s.answers)
	t.Cleanup(func() { s.server.Close() })
	for _, name := range []string{"AWS_SESSION_TOKEN", "AWS_ENDPOINT_URL", "AWS_ENDPOINT_URL_S3", "AWS_REGION", "AWS_DEFAULT_REGION"} {
		t.Setenv(name, "")
	}
	t.Setenv("AWS_ACCESS_KEY_ID", keyID)
	t.Setenv("AWS_SECRET_ACCESS_KEY", secret)
	return s
}

// hangUp ends what is still under way from a run that was cut off: it shall not be taken for
// the next one's.
func (s *store) hangUp() {
	s.server.Close()
	s.server = httptest.NewServer(s.answers)
}

// Both are invented.
const keyID, secret = "KEYOFTHETESTS", "secret-of-the-tests"

func (s *store) target(prefix string) Target {
	s.t.Helper()
	target, err := To("s3://" + bucketName + "/" + prefix + "?endpoint=" + s.server.URL)
	if err != nil {
		s.t.Fatal(err)
	}
	return target
}

// publish must succeed.
func (s *store) publish(out build.Output, opt Options) Report {
	s.t.Helper()
	s.log = nil
	report, err := s.target("").Publish(context.Background(), out, opt)
	if err != nil {
		s.t.Fatal(err)
	}
	return report
}

// counted returns how often each method was asked for.
func (s *store) counted() map[string]int {
	count := map[string]int{}
	for _, what := range s.log {
		method, _, _ := strings.Cut(what, " ")
		count[method]++
	}
	return count
}

// holds returns what lies in the bucket, but for the record.
func (s *store) holds() map[string]string {
	got := map[string]string{}
	list, err := s.backend.ListBucket(bucketName, nil, gofakes3.ListBucketPage{})
	if err != nil {
		s.t.Error(err)
	}
	for _, c := range list.Contents {
		o, err := s.backend.GetObject(bucketName, c.Key, nil)
		if err != nil {
			s.t.Error(err)
			continue
		}
		data, _ := io.ReadAll(o.Contents)
		o.Contents.Close()
		got[c.Key] = string(data)
	}
	delete(got, recordName)
	return got
}

// put lays an object there as somebody else would.
func (s *store) put(name, text string) {
	s.t.Helper()
	if _, err := s.backend.PutObject(bucketName, name, map[string]string{}, strings.NewReader(text), int64(len(text)), nil); err != nil {
		s.t.Fatal(err)
	}
}

// site makes an edition of a small site: pages that load assets named by their edition,
// data, a worker and the keeper's files. All pages of an edition name it.
func site(edition string, pages ...string) build.Output {
	var out build.Output
	add := func(path, text string, stage build.Stage) {
		out.Files = append(out.Files, build.File{Path: path, Bytes: []byte(text), Stage: stage})
	}
	add("SHA256SUMS.txt", "sums of "+edition, build.Hosting)
	add("assets/core."+edition+".js", strings.Repeat("core of "+edition+"\n", 40), build.Assets)
	add("assets/same.js", "the same in all", build.Assets)
	add("assets/sheet."+edition+".css", "sheet of "+edition, build.Assets)
	add("data/joints.csv", strings.Repeat("data of "+edition+"\n", 40), build.Pages)
	for _, page := range pages {
		add(page+"/index.html", fmt.Sprintf(`<link href="/assets/sheet.%s.css"><script src="/assets/core.%[1]s.js"></script><script src="/assets/same.js"></script>`, edition), build.Pages)
	}
	add("worker.js", "worker of "+edition, build.Pages)
	return out
}

var loaded = regexp.MustCompile(`(?:href|src)="/([^"]+)"`)

// faults tells of a page without what it loads, and of a worker without its pages.
func faults(holds map[string]string, sites ...build.Output) error {
	for name, text := range holds {
		for _, found := range loaded.FindAllStringSubmatch(text, -1) {
			if _, there := holds[found[1]]; !there {
				return fmt.Errorf("%s loads %s, which is not there", name, found[1])
			}
		}
	}
	for _, out := range sites {
		for _, o := range out.Files {
			if o.Path != "worker.js" || holds[o.Path] != string(o.Bytes) {
				continue
			}
			for _, f := range out.Files {
				// What is for the keeper comes after the worker, what is removed goes after it.
				if f.Stage != build.Hosting && holds[f.Path] == "" {
					return fmt.Errorf("the worker of %q is there, and %s is not", o.Bytes, f.Path)
				}
			}
		}
	}
	return nil
}

// texts are the files of a site, as they lie in a bucket unpacked.
func texts(out build.Output) map[string]string {
	want := map[string]string{}
	for _, f := range out.Files {
		want[f.Path] = string(f.Bytes)
	}
	return want
}

func equal(t *testing.T, want, got map[string]string) {
	t.Helper()
	if maps.Equal(want, got) {
		return
	}
	for name := range want {
		if _, there := got[name]; !there {
			t.Errorf("%s is not there", name)
		} else if !bytes.Equal([]byte(want[name]), []byte(got[name])) {
			t.Errorf("%s has other bytes", name)
		}
	}
	for name := range got {
		if _, wanted := want[name]; !wanted {
			t.Errorf("%s is there still", name)
		}
	}
}
