// Package browser holds the checks that need a real browser: the whole site in
// headless Chromium, the accessibility rules of axe-core, the HTML checker, and the
// weight and speed of the identify page.
//
// They are tests behind the build tag "browser", so that plain go test works on a
// machine with Go and nothing else:
//
//	go test -tags browser ./build/browser/
//
// Under the tag a missing Chromium, Java or npm tool fails the test; it is never
// skipped. build/test.sh installs them and runs this.
package browser
