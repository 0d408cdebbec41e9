package build

import (
	"fmt"
	"net/http"
	"strings"
	"sync"
	"time"
)

// event is something an open page is told. The names:
//
//	site      the edition of the page that is up; a page of another one reloads
//	problems  the text of the problems that stopped a build; the page stays as it is
type event struct{ name, data string }

// hub passes events on to the open pages.
type hub struct {
	mu     sync.Mutex
	pages  map[chan event]bool
	closed chan struct{}
	once   sync.Once
}

func newHub() *hub {
	return &hub{pages: map[chan event]bool{}, closed: make(chan struct{})}
}

// send never waits: a page that is behind gets the newest event only.
func (h *hub) send(e event) {
	h.mu.Lock()
	defer h.mu.Unlock()
	for page := range h.pages {
		select {
		case <-page:
		default:
		}
		page <- e
	}
}

func (h *hub) join() chan event {
	h.mu.Lock()
	defer h.mu.Unlock()
	page := make(chan event, 1)
	h.pages[page] = true
	return page
}

func (h *hub) leave(page chan event) {
	h.mu.Lock()
	defer h.mu.Unlock()
	delete(h.pages, page)
}

// close ends every stream.
func (h *hub) close() { h.once.Do(func() { close(h.closed) }) }

// pulse is how often an idle stream says a word, so that one whose page is gone ends.
const pulse = 20 * time.Second

// stream keeps one page informed until it leaves.
func (s *server) stream(w http.ResponseWriter, r *http.Request) {
	events := s.live.join()
	defer s.live.leave(events)

	w.Header().Set("Content-Type", "text/event-stream")
	control := http.NewResponseController(w)
	// What is up now: a page that was open while the program was started anew, that slept, or
	// that came while the next was being built, compares it with what it is.
	at := r.URL.Query().Get("page")
	waiting := []event{{name: "site"}}
	if problems := s.problems.Load(); problems != nil {
		waiting = append(waiting, event{name: "problems", data: problemText(*problems)})
	}
	beat := time.NewTicker(pulse)
	defer beat.Stop()
	for {
		var text strings.Builder
		for _, e := range waiting {
			if e.name == "site" {
				e.data = s.edition(at)
			}
			text.WriteString(e.String())
		}
		if text.Len() == 0 {
			text.WriteString(": still here\n\n")
		}
		waiting = nil
		if err := control.SetWriteDeadline(time.Now().Add(pulse)); err != nil {
			return
		}
		if _, err := w.Write([]byte(text.String())); err != nil {
			return
		}
		if err := control.Flush(); err != nil {
			return
		}
		select {
		case e := <-events:
			waiting = []event{e}
		case <-beat.C:
		case <-r.Context().Done():
			return
		case <-s.live.closed:
			return
		}
	}
}

// edition tells one state of a page from another: only a page that has changed needs to be
// loaded again. Of an address that has no file it is the site's.
func (s *server) edition(address string) string {
	site := s.pages.Load()
	if site == nil {
		return ""
	}
	if file, found := site.files[fileAt(strings.TrimPrefix(address, s.base))]; found && address != "" {
		return strings.Trim(file.tag, `"`)
	}
	return site.sum
}

// String writes the event as the standard wants it: each line of the data on its own.
func (e event) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "event: %s\n", e.name)
	for line := range strings.Lines(e.data + "\n") {
		fmt.Fprintf(&b, "data: %s\n", strings.TrimRight(line, "\r\n"))
	}
	b.WriteString("\n")
	return b.String()
}
