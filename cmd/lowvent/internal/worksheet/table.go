package worksheet

import (
	"fmt"
	"strings"

	"lowvent.example/cmd/lowvent/internal/ask"
	"lowvent.example/schema/layout"
)

// fewRows are kept on one page, so that no head is left behind at the end of another.
const fewRows = 5

// length tells the style whether a table may run over a page's end.
func (t table) length() string {
	if len(t.rows) <= fewRows {
		return "short"
	}
	return "long"
}

func (p *page) table(t table) {
	if len(t.rows) == 0 {
		return
	}
	p.put("<table class=\"%s\">\n<caption>%s</caption>\n<thead>\n<tr><th scope=\"col\" class=\"code\">No.</th><th scope=\"col\">What to measure, and how</th>", t.length(), paper(t.caption))
	if t.things == nil {
		p.put("<th scope=\"col\" class=\"blank\">Found</th><th scope=\"col\" class=\"unit\">Unit</th><th scope=\"col\" class=\"by\">Who</th><th scope=\"col\" class=\"by\">Date</th></tr>\n")
	} else {
		for i, name := range t.things {
			if name == "" {
				p.put("<th scope=\"col\" class=\"few\"><span class=\"line full\"></span><span class=\"small\">name %s</span></th>", fmt.Sprint(i+1))
				continue
			}
			p.put("<th scope=\"col\" class=\"few\">%s</th>", name)
		}
		p.put("</tr>\n")
	}
	p.put("</thead>\n<tbody>\n")
	for _, r := range t.rows {
		p.row(r, t)
	}
	if t.things != nil {
		p.put("<tr><th scope=\"row\" class=\"code\"></th><td>Who measured, and when</td>")
		p.WriteString(strings.Repeat("<td class=\"blank\"></td>", len(t.things)))
		p.put("</tr>\n")
	}
	p.put("</tbody>\n</table>\n")
}

func (p *page) row(r row, t table) {
	p.put("<tr><th scope=\"row\" class=\"code\">%s</th><td><strong>%s</strong> %s", r.code, r.label, r.means())
	for _, each := range r.beside {
		p.put("<br/><span class=\"small\">%s</span>", each)
	}
	if t.things != nil {
		p.put(" <span class=\"small\">(%s)</span></td>", ask.Unit(r.asked))
		for range t.things {
			p.put("<td class=\"blank\">")
			if r.asked.Form == layout.FormYesNo {
				p.boxes([]string{"yes", "no"})
			}
			p.put("</td>")
		}
		p.put("</tr>\n")
		return
	}
	p.put("</td><td class=\"blank\">")
	switch r.asked.Form {
	case layout.FormYesNo:
		p.boxes([]string{"yes", "no"})
	case layout.FormWord, layout.FormWords:
		p.boxes(r.asked.Words)
	}
	p.put("</td><td class=\"unit\">%s</td><td class=\"by\"></td><td class=\"by\"></td></tr>\n", unit(r.asked))
}

// means is what to do to find it out, in words for paper.
func (r row) means() string {
	if r.asked.Name == "" {
		return r.how
	}
	return paper(ask.HowTo(r.asked))
}

func (p *page) boxes(words []string) {
	for _, word := range words {
		p.put("<span class=\"choice\"><span class=\"box\"></span> %s</span> ", word)
	}
}

// unit is the column of units: what a figure is written in, or that a word is ticked.
func unit(k ask.Asked) string {
	switch k.Form {
	case layout.FormQuantity:
		return k.Kind.Accepted()
	case layout.FormPoint:
		return "x, y, z: mm, cm, m, in, ft"
	case layout.FormPoints:
		return "x, y, z of each corner"
	case layout.FormYesNo, layout.FormWord:
		return "tick one"
	case layout.FormWords:
		return "tick all that fit"
	case layout.FormDate:
		return "year-month-day"
	case layout.FormCount:
		return "count"
	case layout.FormClock:
		return "hours:minutes"
	case layout.FormRef, layout.FormRefs:
		return "name"
	case layout.FormThings:
		return "names, or none"
	}
	return "words"
}

// ticks are the boxes by which a list is said to be complete.
func (p *page) ticks(one sheet) {
	if len(one.ticks) == 0 {
		return
	}
	p.put("<h3>Complete here?</h3>\n<p>Tick only what you went through. An empty box says that the list may lack something.</p>\n<ul class=\"ticks\">\n")
	for _, t := range one.ticks {
		p.put("<li><span class=\"box\"></span> List complete: <strong>%s</strong>. %s</li>\n", t.word, t.meaning)
	}
	p.put("</ul>\n")
}
