// Package hosts holds the checks that need a real web server: the whole site behind
// nginx and behind Caddy, with the snippets the build writes for them, and how fast
// nginx sends it.
//
// They are tests behind the build tag "hosts", so that plain go test works on a machine
// with Go and nothing else:
//
//	go test -tags hosts ./build/hosts/
//	go test -tags hosts -run '^$' -bench . -benchtime 1x ./build/hosts/
//
// Under the tag a missing nginx, brotli module, Caddy or wrk fails the test; it is never
// skipped. build/test.sh installs them and runs this.
package hosts
