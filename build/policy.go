package build

// Policy is the Content-Security-Policy of every page, as its meta element says it; the
// header files and [Serve] send the same with what only a header may say. Nothing
// written into a page is run or styled by it: no 'unsafe-inline' and no 'unsafe-eval'.
// JSON-LD stands in a script element all the same: it is a data block, which is never
// run, so a policy says nothing about it (HTML, "prepare the script element").
const Policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; " +
	"font-src 'none'; form-action 'self' mailto:; base-uri 'none'; manifest-src 'self'; worker-src 'self'"
