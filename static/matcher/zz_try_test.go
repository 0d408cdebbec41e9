package matcher_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"capspan/build"
	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
)

func TestZZ(t *testing.T) {
	b, p := static.Core(static.FS)
	if p.Blocked() { t.Fatal(p) }
	set, _ := tables.Load(tables.FS)
	m, err := matcher.New(b, build.Chart(set))
	if err != nil { t.Fatal(err) }
	in, _ := os.ReadFile(os.Getenv("Q"))
	for _, l := range strings.Split(strings.TrimSpace(string(in)), "\n") {
		q, err := matcher.DecodeQuery([]byte(l))
		if err != nil { fmt.Println(l, err); continue }
		a, err := m.Identify(q)
		if err != nil { t.Fatal(err) }
		fmt.Println("#", l)
		fmt.Println("   ", strings.ToUpper(a.Verdict), "|", a.Says.Head)
		for _, s := range a.Says.Because { fmt.Println("     -", s) }
		for _, s := range a.Says.Next { fmt.Println("     >", s) }
		for _, s := range a.Sizes { fmt.Printf("     = %v %.4f %s %s\n", s.Rows, s.Probability, s.Basis, s.Because) }
		for _, s := range a.Near { fmt.Printf("     ~ %v %s\n", s.Names, s.Because) }
		for _, s := range a.SameFigures { fmt.Printf("     h %v %s\n", s.Rows, s.Because) }
		for _, s := range a.Ends { fmt.Printf("     e %v %s\n", s.Rows, s.Says) }
		for _, s := range a.Readings { fmt.Printf("     r %v | aside %v | %s\n", s.Used, s.SetAside, s.Why) }
		for _, s := range a.TellApart { fmt.Printf("     t %s %v\n", s.Measure, s.Says) }
		fmt.Println("     c", a.Conversions)
	}
}
