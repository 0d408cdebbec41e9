package static

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"testing"

	"github.com/dop251/goja"
)

// What the pages hold a piece of the chart to is the SHA-256 of the standard, over every way
// the bytes can fill the last block.
func TestSumOfBytes(t *testing.T) {
	script, problems := Script(FS, "parts/pieces/sum.ts", "Sum")
	if problems.Blocked() {
		t.Fatal(problems)
	}
	vm := goja.New()
	if _, err := vm.RunScript("sum.js", string(script)); err != nil {
		t.Fatal(err)
	}
	exports := vm.Get("Sum").ToObject(vm)
	sum, _ := goja.AssertFunction(exports.Get("sha256"))
	named, _ := goja.AssertFunction(exports.Get("isNamed"))
	array := func(b []byte) goja.Value {
		v, err := vm.New(vm.Get("Uint8Array"), vm.ToValue(vm.NewArrayBuffer(b)))
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	for n := range 130 {
		content := bytes.Repeat([]byte{byte(n), 0xff, 'a', byte(n * 7)}, n)[:n]
		got, err := sum(goja.Undefined(), array(content))
		if err != nil {
			t.Fatal(err)
		}
		want := sha256.Sum256(content)
		if !bytes.Equal(got.Export().([]byte), want[:]) {
			t.Fatalf("%d bytes: %x, want %x", len(content), got.Export(), want)
		}
		if n%9 != 0 {
			continue
		}
		name := hex.EncodeToString(want[:])
		for called, holds := range map[string]bool{name: true, name[:32]: true, name[:31]: false, "": false, "f" + name[:31]: name[:32] == "f"+name[:31]} {
			is, err := named(goja.Undefined(), array(content), vm.ToValue(called))
			if err != nil || is.ToBoolean() != holds {
				t.Fatalf("%d bytes are called %q: %v, %v", len(content), called, is, err)
			}
		}
	}
}
