package templates

import (
	"html/template"
	"io"
)

// Book is the whole chart and guide as one document to print. It is no page: it has no
// frame, no address and no script, and its style stands in it.
type Book struct {
	Chart, Date string
	Web         string // full address of the site; empty when it is not known
	Keeper      Keeper
	Style       template.CSS // our own sheets, with paper and foot
	Bases       []NamedBasis
	Chapters    []BookChapter
}

// NamedBasis is a basis and what it allows.
type NamedBasis struct{ Basis, Says string }

// BookChapter begins a page. Each of its sections is a line of the contents.
type BookChapter struct {
	ID, Title, About string
	Sections         []BookSection
	Sources          []BookSource
	Constants        []Constant
	Sizes            []BookSize
	Names            []Link
	Gone             []string // what became of retired rows
}

// BookSection is a page of the guide or a table of the chart.
type BookSection struct {
	ID, Title, About string
	HTML             template.HTML // of the guide
	Table            *BookTable
}

// BookTable is a table with every row: joints one by one with a drawing, others as lines.
type BookTable struct {
	Cautions []string
	Version  string
	Date     string
	Basis    string // how many rows have which basis
	Columns  []string
	Joints   []BookJoint
	Rows     []BookRow
}

// BookJoint is one joint with its drawing.
type BookJoint struct {
	Anchor string
	Joint
}

// BookRow is one row of a table without joints; Cells go with the columns.
type BookRow struct {
	Anchor, ID string
	Also       []string
	Cells      []Cell
	Note       string
}

// BookSource is an entry of the registry under its number in this book.
type BookSource struct {
	N int
	SourceView
}

// BookSize is a line of the finder: one end of a joint.
type BookSize struct {
	Cap, Across, Hold string
	Row               Link
	Basis             string
}

// Book writes the document. The addresses in it are those of the site, rooted; whoever
// asked for it turns them into places of the book.
func (s *Set) Book(w io.Writer, b *Book) error {
	t, err := s.based("/")
	if err != nil {
		return err
	}
	return t.ExecuteTemplate(w, "book.html", b)
}
