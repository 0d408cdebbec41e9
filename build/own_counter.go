package build

import (
	"strings"

	"capspan/build/diag"
)

// OwnWords is what the keeper of a site says of one row, for the command.
type OwnWords struct {
	Title string    `json:"title"` // whose word it is
	Row   string    `json:"row"`
	Says  []OwnSaid `json:"says"`
}

// OwnSaid is one thing of it.
type OwnSaid struct {
	Label string `json:"label"`
	Value string `json:"value"`
}

// String is all of it in one line.
func (o OwnWords) String() string {
	parts := make([]string, 0, len(o.Says))
	for _, s := range o.Says {
		parts = append(parts, s.Label+" "+s.Value)
	}
	return strings.Join(parts, "; ")
}

// Counter says what the keeper's overlay adds to rows, each named as the core names it;
// nothing where there is no overlay.
func Counter(src Sources, refs []string) ([]OwnWords, diag.List) {
	if src.Own == nil {
		return nil, nil
	}
	keeper, _, found := loadOwn(src)
	set, overlay, problems := src.Set()
	problems.Add(found...)
	if problems.Blocked() {
		return nil, problems
	}
	title := "At this counter"
	if keeper.Name != "" {
		title = "At the counter of " + keeper.Name
	}
	var list []OwnWords
	for _, ref := range refs {
		words := OwnWords{Title: title}
		row := set.Find(ref)
		if row == nil {
			continue
		}
		words.Row = row.ID
		for _, v := range overlay.Of(row) {
			words.Says = append(words.Says, OwnSaid{v.Column.Label, v.String()})
		}
		if len(words.Says) > 0 {
			list = append(list, words)
		}
	}
	return list, problems
}
