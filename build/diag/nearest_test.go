package diag

import "testing"

func TestNearest(t *testing.T) {
	known := []string{"1310", "1330-big-cap", "7260", "7290", "outside-clip"}
	for _, test := range []struct{ name, want string }{
		{"1301", `did you mean "1310"?`}, // two neighbours swapped
		{"outside-clp", `did you mean "outside-clip"?`},
		{"1330", `did you mean "1310"?`}, // a typo comes before a longer form
		{"1330-big", `did you mean "1330-big-cap"?`},
		{"72x0", ""}, // two are as near
		{"plate", ""},
	} {
		got := ""
		if hints := Nearest(test.name, known); len(hints) > 0 {
			got = hints[0]
		}
		if got != test.want {
			t.Errorf("Nearest(%q) = %q, want %q", test.name, got, test.want)
		}
	}
}
