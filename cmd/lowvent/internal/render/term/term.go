// Package term writes a report for people at a terminal: the worst first, the
// result last, where the eye rests. The words carry everything; colour, where
// it is asked for, only repeats what they say.
package term

import (
	"io"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// Options are what the look of a report depends on. None of them changes what
// was judged.
type Options struct {
	Width  int  // columns; brought between 60 and 200
	Colour bool // paint signal words and carets
	View   View // what of it is shown; the zero View is all

	// Excerpt shows the line of a file on which a place begins in at most so
	// many characters. It may be nil, and gives the zero Excerpt for a place
	// that has no line.
	Excerpt func(place report.Place, width int) source.Excerpt
}

// Write writes the report of a run. The error is that of the writer.
func Write(w io.Writer, run *report.Run, o Options) error {
	p := newPage(o)
	for _, each := range run.Caution {
		p.Para(text.Strong, 0, each)
	}
	for i := range run.Files {
		p.file(run, &run.Files[i])
	}
	p.result(run)
	_, err := p.WriteTo(w)
	return err
}

// page is a page that knows what it shows, and the places of its files.
type page struct {
	*text.Page
	excerpt func(report.Place, int) source.Excerpt
	view    View
	whole   *report.FileReport // the file that is being told of, all of it
}

func newPage(o Options) *page {
	var paint text.Paint
	if o.Colour {
		paint = text.Colours()
	}
	return &page{Page: text.New(o.Width, paint), excerpt: o.Excerpt, view: o.View}
}

// The columns of a report: signal words and headings begin at 0, what belongs
// to them is indented, and labels have a column of their own.
const (
	indent = 10
	labels = 10
)

// heading begins a section.
func (p *page) heading(text string) {
	p.Blank()
	p.Item(strong, 0, indent, text)
}

const strong = text.Strong

// field puts one labelled line of a finding; nothing for an empty text.
func (p *page) field(label, content string) {
	if content != "" {
		p.Field(text.Plain, indent, label, labels, text.Plain, content)
	}
}
