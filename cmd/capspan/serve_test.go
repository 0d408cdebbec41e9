package main

import (
	"bufio"
	"bytes"
	"context"
	"io"
	"net/http"
	"strings"
	"testing"
)

// The address is on the first line, a page is behind it, and an interrupt ends cleanly.
func TestServe(t *testing.T) {
	ctx, interrupt := context.WithCancel(context.Background())
	out, w := io.Pipe()
	var complaints bytes.Buffer
	status := make(chan int, 1)
	go func() {
		status <- run(ctx, []string{"serve", "--addr", "127.0.0.1:0", "--base", "/sub"}, &terminal{in: strings.NewReader(""), out: w, err: &complaints})
		w.Close()
	}()
	address := ""
	lines := bufio.NewScanner(out)
	for address == "" && lines.Scan() {
		address, _ = strings.CutPrefix(lines.Text(), "the site is at ")
		if !strings.HasPrefix(address, "http://127.0.0.1:") {
			address = ""
		}
	}
	if !strings.HasSuffix(address, "/sub/") {
		t.Fatalf("no address was told, status %d: %s", <-status, complaints.String())
	}
	go io.Copy(io.Discard, out)
	r, err := http.Get(address + "joint/1310/")
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	if body, err := io.ReadAll(r.Body); err != nil || r.StatusCode != 200 || !strings.Contains(string(body), "1310") {
		t.Errorf("status %d, error %v", r.StatusCode, err)
	}
	interrupt()
	if got := <-status; got != 0 {
		t.Errorf("exit status %d after an interrupt, want 0: %s", got, complaints.String())
	}
}
