package matcher

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// What Address writes, Decode reads back.
func TestDecode(t *testing.T) {
	m := mustCore(t)
	want := Query{
		Ends: []QueryEnd{
			{Hold: "outside-clip", Faces: "over-caps", Cap: []string{"1.060 in", "1 1/16 in"}, Across: []string{"3.226 in"}},
			{Hold: "inside-clip", Taken: "yoke", Cap: []string{"27.40 mm"}},
		},
		Tool: "tape", Condition: "worn",
	}
	address, err := m.Address(want)
	if err != nil {
		t.Fatal(err)
	}
	got, complaints, err := m.Decode("#" + address)
	if err != nil || len(complaints) > 0 {
		t.Fatal(err, complaints)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	_, complaints, err = m.Decode("hold=glue")
	if err != nil || len(complaints) != 1 || !strings.Contains(complaints[0].Says, "glue") {
		t.Errorf("a word nobody knows: got %v, %v", complaints, err)
	}
}
