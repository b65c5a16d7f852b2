package pdf

import "lowvent.example/cmd/lowvent/internal/draw"

// press puts rows on pages.
type press struct {
	sheet Sheet
	rooms [2]area // for the rows, on pages that stand and that lie
	pages []*page
	y     float64 // how far the page is filled, mm from its top
	blank bool    // nothing stands on the page yet
	rows  []row   // what stands on it
}

func newPress(sheet Sheet, standing, lying area) *press {
	p := &press{sheet: sheet, rooms: [2]area{standing, lying}}
	p.next(false)
	return p
}

func (p *press) page() *page { return p.pages[len(p.pages)-1] }

func (p *press) room() area {
	if p.page().turned {
		return p.rooms[1]
	}
	return p.rooms[0]
}

// next begins a page.
func (p *press) next(turned bool) {
	wide, high := p.sheet.size(turned)
	p.pages = append(p.pages, &page{wide: wide, high: high, turned: turned, uprights: map[bar]*draw.Path{}})
	p.y, p.blank, p.rows = p.room().top, true, nil
}

// set puts all rows on pages: those that belong together on one, where one has room.
func (p *press) set(rows []row) {
	for len(rows) > 0 {
		link := rows[:chain(rows)]
		if turns(link) && !p.couldFit(link) {
			rows = p.force(rows, link)
			continue
		}
		p.prepare(link)
		switch {
		case p.fits(link):
			rows = rows[len(link):]
			p.place(link)
		case !p.blank && p.couldFit(link):
			p.next(turns(link))
		default:
			rows = p.force(rows, link)
		}
	}
}

// chain is how many rows belong together.
func chain(rows []row) int {
	n := 1
	for n < len(rows) && rows[n-1].keep && !rows[n].fresh {
		n++
	}
	return n
}

func turns(link []row) bool {
	for i := range link {
		if link[i].turned {
			return true
		}
	}
	return false
}

// prepare begins a page where rows need one of their own or one that lies the other way.
func (p *press) prepare(link []row) {
	lies, wants := p.page().turned, turns(link)
	other := wants != lies && !(lies && link[0].stays)
	switch {
	case other && wants && !link[0].fresh && p.couldLie(link):
		p.lay()
	case other && p.blank:
		p.pages = p.pages[:len(p.pages)-1]
		p.next(wants)
	case other, link[0].fresh && !p.blank:
		p.next(wants)
	}
}

// couldLie tells whether what stands on the page has room on one that lies, together with
// the rows that need one: a heading and a few lines need no page before their drawing.
func (p *press) couldLie(link []row) bool {
	all := append(p.rows[:len(p.rows):len(p.rows)], link...)
	return tall(all, true) <= p.rooms[1].high+1e-6
}

// lay turns the page onto its side.
func (p *press) lay() {
	rows := p.rows
	p.pages = p.pages[:len(p.pages)-1]
	p.next(true)
	for _, r := range rows {
		p.put(r)
	}
}

// force deals with rows that no page has room for: one of them is taken apart, the last
// that can be, or the first of them is set alone.
func (p *press) force(rows, link []row) []row {
	for i := len(link) - 1; i >= 0; i-- {
		if link[i].parts == nil {
			continue
		}
		parts := link[i].parts()
		out := append(rows[:i:i], parts...)
		return append(out, rows[i+1:]...)
	}
	first := link[:1]
	p.prepare(first)
	if !p.fits(first) && !p.blank {
		p.next(turns(first))
	}
	p.place(first)
	return rows[1:]
}

// fits tells whether rows have room on what is left of the page.
func (p *press) fits(link []row) bool {
	return p.y+tall(link, p.blank) <= p.room().top+p.room().high+1e-6
}

// couldFit tells whether they have room on a page of their own.
func (p *press) couldFit(link []row) bool {
	room := p.rooms[0].high
	if turns(link) {
		room = p.rooms[1].high
	}
	return tall(link, true) <= room+1e-6
}

// tall is the height of rows, at the top of a page or further down.
func tall(link []row, top bool) float64 {
	sum := 0.0
	for i := range link {
		sum += link[i].high
		if !top || i > 0 {
			sum += link[i].gap
		}
	}
	if top && link[0].head != nil {
		sum += link[0].head.high
	}
	return sum
}

func (p *press) place(link []row) {
	if p.blank && link[0].head != nil {
		again := *link[0].head
		again.pieces = moved(again.pieces, 0, 0)
		for i := range again.pieces {
			again.pieces[i].of = 0
		}
		p.put(again)
	}
	for _, r := range link {
		p.put(r)
	}
}

func (p *press) put(r row) {
	page := p.page()
	if !p.blank {
		page.bars(r.gapBars, p.y, p.y+r.gap)
		p.y += r.gap
	}
	page.bars(r.bars, p.y, p.y+r.high)
	page.pieces = append(page.pieces, moved(r.pieces, 0, p.y)...)
	if r.bookmark != nil {
		b := *r.bookmark
		b.page, b.top = len(p.pages)-1, p.y
		page.bookmarks = append(page.bookmarks, b)
	}
	p.y += r.high
	p.blank, p.rows = false, append(p.rows, r)
}
