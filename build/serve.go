package build

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"net"
	"strconv"
	"syscall"
	"time"

	"capspan/build/diag"
)

// ServeOptions say what [Serve] builds and where it is reached.
type ServeOptions struct {
	Sources Sources
	Watch   string // the folder the sources lie in; empty: build once
	Addr    string // host:port; empty means 127.0.0.1:8080; port 0 means any free one
	Base    string // as in [Options]

	Ready func(address string) // called once and first, with the address of the front page
	Built func(Built)          // called after each build, never twice at a time
}

// Built is what one build under [Serve] came to.
type Built struct {
	Problems diag.List
	Kept     bool // the problems stopped the build: an earlier site, if any, stays up
	Changed  bool // the site differs from the one before, and open pages were told
	Pages    int
	Took     time.Duration
}

// liveName is the address, below the base, that open pages listen to.
const liveName = "_live"

// portsTried is how many ports Serve tries, the wanted one included.
const portsTried = 20

// Serve builds the site into memory and serves it until the context is done. With a
// folder to watch it builds again on every change and tells the open pages, through
// Server-Sent Events (WHATWG HTML, section 9.2). A problem in the sources leaves the
// last good site up: whoever reads a page while somebody edits a table sees a whole
// site, never a broken one.
func Serve(ctx context.Context, opt ServeOptions) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()

	changes := make(chan struct{}, 1)
	if opt.Watch != "" {
		w, err := newWatcher(opt.Watch)
		if err != nil {
			return fmt.Errorf("watch %q: %w", opt.Watch, err)
		}
		defer w.close()
		go w.run(ctx, changes)
	}
	listener, err := listen(ctx, opt.Addr)
	if err != nil {
		return err
	}
	s := newServer(opt)
	first := s.build() // before the address is told: the first page is there when it is asked for

	web := usual.server(knownHost(s, opt.Addr))
	failed := make(chan error, 1)
	go func() { failed <- web.Serve(listener) }()
	if opt.Ready != nil {
		opt.Ready("http://" + listener.Addr().String() + s.base)
	}
	s.tell(first)
	for {
		select {
		case <-changes:
			s.tell(s.build())
		case err := <-failed:
			return fmt.Errorf("serve: %w", err)
		case <-ctx.Done():
			s.live.close() // open pages would keep Shutdown waiting
			grace, cancel := context.WithTimeout(context.Background(), 2*time.Second)
			defer cancel()
			if err := web.Shutdown(grace); err != nil && !errors.Is(err, context.DeadlineExceeded) {
				return fmt.Errorf("stop serving: %w", err)
			}
			return nil
		}
	}
}

// listen takes the wanted port, or the next free one when another program has it.
func listen(ctx context.Context, addr string) (net.Listener, error) {
	if addr == "" {
		addr = "127.0.0.1:8080"
	}
	host, text, err := net.SplitHostPort(addr)
	if err != nil {
		return nil, fmt.Errorf("%q is no host:port: %w", addr, err)
	}
	port, err := strconv.ParseUint(text, 10, 16)
	if err != nil {
		return nil, fmt.Errorf("%q: the port must be a number from 0 to 65535", addr)
	}
	var config net.ListenConfig
	for try := range portsTried {
		listener, err := config.Listen(ctx, "tcp", net.JoinHostPort(host, strconv.FormatUint(port+uint64(try), 10)))
		if err == nil {
			return listener, nil
		}
		if !errors.Is(err, syscall.EADDRINUSE) {
			return nil, fmt.Errorf("listen: %w", err)
		}
	}
	return nil, fmt.Errorf("ports %d to %d of %s are all taken; name another", port, port+portsTried-1, host)
}

// build makes the site again and, when it differs, puts it up and tells open pages. A
// change of the chart changes what the core says to each of the guide's examples, which
// takes longer than all the rest: they follow in a second build, which changes their pages
// alone.
func (s *server) build() Built {
	start := time.Now()
	opt := Options{Base: s.base, Memory: s.memory, Hasty: true}
	if s.opt.Watch != "" {
		opt.Live = s.base + liveName
	}
	out, problems := Site(s.opt.Sources, opt)
	first := false
	if out.Stale && !problems.Blocked() {
		first, _ = s.put(out)
		opt.Hasty = false
		out, problems = Site(s.opt.Sources, opt)
	}
	built := Built{Problems: problems, Kept: problems.Blocked()}
	if built.Kept {
		s.problems.Store(&problems)
		s.live.send(event{name: "problems", data: problemText(problems)})
	} else {
		built.Changed, built.Pages = s.put(out)
		built.Changed = built.Changed || first
	}
	built.Took = time.Since(start)
	return built
}

// put puts a site up and tells open pages when it differs from the one before, or when
// they still show problems that are mended.
func (s *server) put(out Output) (changed bool, count int) {
	next := newPages(out)
	before := s.pages.Swap(next)
	mended := s.problems.Swap(nil) != nil
	changed = before == nil || before.sum != next.sum
	if changed || mended {
		s.live.send(event{name: "site"})
	}
	return changed, next.count
}

func (s *server) tell(b Built) {
	if s.opt.Built != nil {
		s.opt.Built(b)
	}
}

// newPages puts an output up for serving.
func newPages(out Output) *pages {
	p := &pages{files: make(map[string]page, len(out.Files)), moved: map[string]string{}, areas: areasOf(out.folders())}
	for _, r := range out.Redirects {
		p.moved[r.From] = r.To
	}
	whole := sha256.New()
	for _, f := range out.Files {
		if f.Stage == Hosting {
			continue
		}
		sum := f.sum()
		whole.Write([]byte(f.Path))
		whole.Write(sum[:])
		p.files[f.Path] = page{bytes: f.Bytes, tag: fmt.Sprintf(`"%x"`, sum[:8])}
		if f.Stage == Pages {
			p.count++
		}
	}
	p.sum = fmt.Sprintf("%x", whole.Sum(nil)[:8])
	return p
}
