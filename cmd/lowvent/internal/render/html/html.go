// Package html writes a paper as one HTML file for a screen, a printer and a screen
// reader. The file runs no script and asks for nothing beside itself, which its own
// policy for the browser forbids as well: what is opened in a shed without a network is
// all there.
//
// Files that are enclosed with the paper are named, with their SHA-256, and not carried
// inside: a page that hands out files needs addresses of a kind that some mail programs
// and telephones block, and that make a reader wonder what else it does. By its hash the
// reader knows the file that lies beside the page, or in the PDF.
//
// In print a drawing of up to 180 mm by 225 mm keeps its true size on A4 and on Letter, and
// so does one of up to 261 mm by 165 mm, on a page of its own that lies on its side. One
// that is larger is made smaller, and says so.
package html

import (
	"fmt"
	"io"

	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/cmd/lowvent/internal/render/markup"
)

// Write writes a document, whole or not at all. The error is that of the writer, or tells
// what of the document no page could show.
func Write(w io.Writer, d *paper.Document) error {
	if err := d.Check(); err != nil {
		return fmt.Errorf("the paper %q can't be shown as it is: %w", d.Title, err)
	}
	p := page{drawings: map[string]int{}, shares: map[int]bool{}, least: map[int]bool{}, foot: footHeight(d.Foot)}
	p.body(d)
	if p.err != nil {
		return p.err
	}
	var whole markup.Writer
	whole.WriteString("<!DOCTYPE html>\n")
	whole.Open("html", "lang", language(d))
	head(&whole, d, p.sheet(d))
	whole.Write(p.Bytes())
	whole.Close()
	whole.Line()
	_, err := whole.WriteTo(w)
	return err
}

func language(d *paper.Document) string {
	if d.Language == "" {
		return "en"
	}
	return d.Language
}

// page is the body as it is written, with what its style sheet must know of it.
type page struct {
	markup.Writer
	level    int            // of the heading above what is written
	section  string         // its title
	drawings map[string]int // how often each id of a drawing came
	shares   map[int]bool   // widths of columns, in tenths of a percent
	least    map[int]bool   // least widths of tables on a screen, in em
	foot     int            // the room for the foot on each printed page, in mm
	fits     []float64      // widths in mm of drawings that are made smaller in print
	lying    bool           // a part is open that is printed on a page that lies on its side
	headed   bool           // and its drawing has not come yet
	err      error          // the first
}

func (p *page) body(d *paper.Document) {
	p.Open("body")
	p.top(d)
	p.contents(d)
	p.Open("main")
	p.Line()
	for i := range d.Parts {
		p.part(&d.Parts[i])
	}
	p.enclosed(d.Enclosed)
	p.Close()
	p.Open("footer")
	p.Element("p", d.Foot)
	p.Close()
	p.Close()
}

// top is what stands above everything: what this is, and what it is not.
func (p *page) top(d *paper.Document) {
	p.level = 1
	p.Open("header")
	p.Element("h1", d.Title)
	p.some("p", d.Subject, "class", "subject")
	p.some("p", d.Foot, "class", "foremost")
	if d.Made != "" {
		p.Open("p", "class", "made")
		p.Text("As of ")
		p.Element("time", d.Made, "datetime", d.Made)
		p.Text(".")
		p.Close()
	}
	p.some("p", d.Program, "class", "made")
	p.Close()
	p.Line()
}

func (p *page) part(part *paper.Part) {
	p.Open("section", "class", "part", "id", markup.ID(part.ID))
	p.level = 1
	p.heading("", part.Title)
	level := p.level
	for i := range part.Sections {
		p.level = level
		p.sectionOf(&part.Sections[i], part.Sections[i].NewPage && i > 0)
	}
	p.Close()
	p.Line()
}

// sectionOf writes a section. The first of a part never asks for a page, since the part
// has just begun one: its title would be left alone.
func (p *page) sectionOf(s *paper.Section, newPage bool) {
	class := ""
	if newPage {
		class = "page"
	}
	p.section = s.Title
	p.Open("section", "class", class, "id", markup.ID(s.ID))
	if p.headed = len(s.Blocks) > 0 && s.Title != "" && p.lies(s.Blocks[0]); p.headed {
		p.lie()
	}
	p.heading("", s.Title)
	p.blocks(s.Blocks)
	p.Close()
	p.Line()
}
