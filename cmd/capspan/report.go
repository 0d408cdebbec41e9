package main

import (
	"fmt"
	"io"
	"text/tabwriter"

	"capspan/build"
)

// printWeights prints a line for each page, then one for each kind of page with its
// heaviest. What a site leaves out that does not know its own address is said below.
func printWeights(w io.Writer, weights []build.Weight, found bool) error {
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(t, "bytes\tbrotli\tfirst visit\tbudget\t\t  page")
	for _, p := range weights {
		fmt.Fprintf(t, "%d\t%d\t%d\t%s\t%s\t  %s\n", p.Bytes, p.Packed, p.Visit, budget(p), judged(p), p.Address)
	}
	fmt.Fprintln(t, "\t\t\t\t\t")
	fmt.Fprintln(t, "pages\tbrotli\theaviest visit\tbudget\t\t  kind")
	for len(weights) > 0 {
		first := weights[0] // the heaviest of its kind
		pages, packed := 0, 0
		for len(weights) > 0 && weights[0].Kind == first.Kind {
			pages, packed, weights = pages+1, packed+weights[0].Packed, weights[1:]
		}
		fmt.Fprintf(t, "%d\t%d\t%d\t%s\t%s\t  %s\n", pages, packed, first.Visit, budget(first), judged(first), first.Kind)
	}
	if err := t.Flush(); err != nil || found {
		return err
	}
	_, err := fmt.Fprintln(w, "no sitemap, canonical links or previews: content/site.yaml does not say where the site is (web: https://...)")
	return err
}

func budget(p build.Weight) string {
	if p.Budget == 0 {
		return "none"
	}
	return fmt.Sprint(p.Budget)
}

func judged(p build.Weight) string {
	switch {
	case p.Budget == 0:
		return "-"
	case p.Over:
		return "over"
	}
	return "ok"
}
