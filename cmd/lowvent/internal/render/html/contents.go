package html

import (
	"crypto/sha256"
	"encoding/hex"
	"strconv"

	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/cmd/lowvent/internal/render/markup"
)

// contents is the list of parts and sections, where there is more than one thing to list.
func (p *page) contents(d *paper.Document) {
	if len(d.Parts) < 2 && (len(d.Parts) == 0 || len(d.Parts[0].Sections) < 2) {
		return
	}
	id := markup.ID("page", "contents")
	p.Open("nav", "aria-labelledby", id)
	p.Element("h2", "Contents", "id", id)
	p.Open("ol")
	for i := range d.Parts {
		p.Open("li")
		p.link(d.Parts[i].ID, d.Parts[i].Title)
		p.sections(d.Parts[i].Sections)
		p.Close()
	}
	if len(d.Enclosed) > 0 {
		p.Open("li")
		p.Element("a", enclosedTitle, "href", "#"+markup.ID("page", "enclosed"))
		p.Close()
	}
	p.Close()
	p.Close()
	p.Line()
}

func (p *page) sections(all []paper.Section) {
	if len(all) == 0 {
		return
	}
	p.Line()
	p.Open("ol")
	for i := range all {
		p.Open("li")
		p.link(all[i].ID, all[i].Title)
		p.Close()
		p.Line()
	}
	p.Close()
}

// link leads to a part or a section; one without a title is named by its word.
func (p *page) link(id, title string) {
	if title == "" {
		title = id
	}
	p.Element("a", title, "href", "#"+markup.ID(id))
}

const enclosedTitle = "Files that belong to this paper"

// enclosed names the files, so that each can be known again where it lies.
func (p *page) enclosed(all []paper.Enclosure) {
	if len(all) == 0 {
		return
	}
	p.level = 1
	p.Open("section", "class", "part", "id", markup.ID("page", "enclosed"))
	p.heading("", enclosedTitle)
	p.Element("p", "They are not inside this page. A file is the one that is meant only if its SHA-256 is the same.")
	table := &paper.Table{Caption: "How each file is known again", Columns: []paper.Column{{Title: "File", Head: true, Share: 2}, {Title: "What it is", Share: 3}, {Title: "Bytes", Share: 1}, {Title: "SHA-256", Share: 4}}}
	for _, each := range all {
		sum := sha256.Sum256(each.Data)
		table.Rows = append(table.Rows, []paper.Cell{{Text: each.Name}, {Text: each.About}, {Text: strconv.Itoa(len(each.Data))}, {Text: hex.EncodeToString(sum[:])}})
	}
	p.table(table)
	p.Close()
}
