package worksheet

import (
	"fmt"
	"strings"

	"lowvent.example/cmd/lowvent/internal/ask"
	"lowvent.example/schema/layout"
)

func (p *page) table(t table) {
	if len(t.rows) == 0 {
		return
	}
	p.put("<table>\n<caption>%s</caption>\n<thead>\n<tr><th scope=\"col\" class=\"code\">No.</th><th scope=\"col\">What to measure, and how</th>", paper(t.caption))
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
	span := 6
	if t.things != nil {
		span = 2 + len(t.things)
	}
	p.put("</tbody>\n<tfoot aria-hidden=\"true\"><tr><td class=\"room\" colspan=\"%s\"></td></tr></tfoot>\n</table>\n", fmt.Sprint(span))
}

func (p *page) row(r row, t table) {
	p.put("<tr><th scope=\"row\" class=\"code\">%s</th><td><strong>%s</strong> %s", r.code, r.label, paper(ask.HowTo(r.asked)))
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
