package templates

// Own is who keeps a site made from a folder of their own, as every page shows it.
type Own struct {
	Keeper        Keeper
	From          string // above the keeper's own pages and tables
	Logo          string // address; empty for none
	Width, Height int    // of the logo, in CSS pixels
	Style         string // address of the sheet with the keeper's colours
}
