package html

import (
	"fmt"
	"strings"

	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/schema/report"
)

// blocks writes what stands under a heading. All headings among it are of one level.
func (p *page) blocks(blocks []paper.Block) {
	p.level++
	defer func() { p.level-- }()
	p.each(blocks)
}

func (p *page) each(blocks []paper.Block) {
	for i, b := range blocks {
		p.turn(blocks[i:])
		p.block(b)
		p.Line()
	}
	p.stand()
}

func (p *page) block(b paper.Block) {
	switch b := b.(type) {
	case *paper.Heading:
		p.under(b.Word, b.Text)
	case *paper.Para:
		p.Open("p")
		p.words(b.Word, b.Text, b.Strong)
		p.Close()
	case *paper.List:
		p.list(b)
	case *paper.Table:
		p.table(b)
	case *paper.Picture:
		p.picture(b.Drawing)
	case *paper.Box:
		p.Open("section", "class", "box", "role", "note")
		p.each(b.Blocks)
		p.Close()
	case *paper.Pairs:
		p.pairs(b)
	case *paper.Lines:
		p.lines(b)
	}
}

// word writes a signal word. The word itself always stands there; colour only repeats it.
func (p *page) word(word string) {
	if word == "" {
		return
	}
	class := "word"
	if report.Signal(word).Rank() > 0 {
		class += " " + strings.ToLower(word)
	}
	p.Element("strong", word, "class", class)
	p.Text(" ")
}

func (p *page) words(word, content string, strong bool) {
	p.word(word)
	if strong && content != "" {
		p.Element("strong", content)
		return
	}
	p.Text(content)
}

// list writes a list. Squares to tick are drawn by the style sheet, so that nobody has
// them read aloud before every item.
func (p *page) list(l *paper.List) {
	name, class := "ul", ""
	if l.Ordered {
		name = "ol"
	}
	if l.Boxes {
		class = "boxes"
	}
	p.Open(name, "class", class, "role", "list")
	for _, item := range l.Items {
		p.Element("li", item)
		p.Line()
	}
	p.Close()
}

func (p *page) pairs(pairs *paper.Pairs) {
	p.Open("dl")
	for _, row := range pairs.Rows {
		p.Open("div")
		p.Element("dt", row.Label)
		p.Open("dd")
		p.Text(row.Value)
		if row.Blank {
			p.blank()
		}
		p.Close()
		p.Close()
		p.Line()
	}
	p.Close()
}

// blank is room for a pen, with a word for those who can't see that it is empty.
func (p *page) blank() {
	p.Element("span", "", "class", "blank", "role", "img", "aria-label", "blank to fill in")
}

func (p *page) lines(l *paper.Lines) {
	p.some("p", l.Label, "class", "label")
	p.Open("div", "class", "lines", "role", "img", "aria-label", fmt.Sprintf("%d empty lines to write on", l.Count))
	for range l.Count {
		p.Element("div", "")
	}
	p.Close()
}

func (p *page) note(err error) {
	if p.err == nil {
		p.err = err
	}
}
