package html

import "fmt"

// heading writes a heading one level below the last, and goes down to it, so that no
// level is ever left out. Without a title there is none.
func (p *page) heading(word, title string) {
	if title == "" {
		return
	}
	p.level++
	p.under(word, title)
}

// under writes a heading at the level that was reached.
func (p *page) under(word, title string) {
	p.Open(fmt.Sprintf("h%d", p.level))
	p.word(word)
	p.Text(title)
	p.Close()
	p.Line()
}

// some writes an element, unless there is nothing to put into it.
func (p *page) some(name, content string, attributes ...string) {
	if content != "" {
		p.Element(name, content, attributes...)
		p.Line()
	}
}
