package build

import "capspan/templates"

// Most pages that are not about rows are filled in each build, which takes little, and are
// rendered only when what they show is something else than before.

// viewsThen are the pages of a build, by address.
type viewsThen map[string]viewThen

type viewThen struct {
	page templates.Page
	file File
}

// groundedViews are pages with what their frames are made of.
type groundedViews struct {
	ground sum
	views  viewsThen
}

// viewsThen are those of the build before, if frames and words are as they were. There are
// none in a language that says the chart in its own words: which of a page's texts stay
// English hangs on all rows.
func (r *rowsAgain) viewsThen() viewsThen {
	if r == nil {
		return nil
	}
	then, _ := r.before["views"].(groundedViews)
	if then.ground != r.ground {
		return nil
	}
	return then.views
}

// keepViews leaves pages to the next build; nobody changes them any more.
func (r *rowsAgain) keepViews(drafted []drafted, pages []rendered) {
	views := make(viewsThen, len(pages))
	for n, p := range pages {
		if p.err == nil {
			views[p.address] = viewThen{drafted[n].page, p.file}
		}
	}
	r.now["views"] = groundedViews{r.ground, views}
}

// keptThen is something that was made.
type keptThen[K comparable, T any] struct {
	ground sum
	of     K
	is     T
}

// keep makes something, or takes it from the build before if it was made of the same. One
// at a time.
func keep[K comparable, T any](r *rowsAgain, what string, of K, each func() T) T {
	if r == nil {
		return each()
	}
	one, is := r.before[what].(keptThen[K, T])
	if !is || one.ground != r.ground || one.of != of {
		one = keptThen[K, T]{r.ground, of, each()}
	}
	r.now[what] = one
	return one.is
}
