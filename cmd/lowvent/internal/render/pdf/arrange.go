package pdf

import (
	"fmt"

	"lowvent.example/cmd/lowvent/internal/paper"
)

// footGap is left free between the text and the foot, in mm; mostFoot is how many lines a
// foot may have.
const (
	footGap  = 3
	mostFoot = 6
)

// arrange works out what stands where on every page.
func arrange(d *paper.Document, size Sheet) ([]*page, error) {
	standing, lying := size.within(false), size.within(true)
	for i, room := range []*area{&standing, &lying} {
		lines := footLines(d, size, i == 1)
		if len(lines) > mostFoot {
			return nil, fmt.Errorf("the foot of this paper takes %d lines of every page; shorten it to %d at most", len(lines), mostFoot)
		}
		room.high -= footGap + footHigh(lines)
	}
	var fault error
	texts := 0
	s := setter{left: standing.left, wide: standing.wide, body: standing, turned: lying, texts: &texts, fault: &fault}
	rows := s.document(d)
	if fault != nil {
		return nil, fault
	}
	p := newPress(size, standing, lying)
	p.set(rows)
	for i, page := range p.pages {
		page.foot(d, footLines(d, size, page.turned), i+1, len(p.pages))
	}
	return p.pages, nil
}

// ofFoot is the number of the foot among the document's texts, after title and subject.
const ofFoot = 3

func (s setter) document(d *paper.Document) []row {
	rows := s.opening(d)
	for i, part := range d.Parts {
		title := s.heading(partStyle, "", part.Title, 7)
		last := &title[len(title)-1]
		last.pieces = append(last.pieces, rule(s.left, last.high+0.8, s.left+s.wide, last.high+0.8, line))
		last.high += 1.6
		title[0].fresh = i > 0
		title[0].bookmark = &bookmark{title: part.Title}
		rows = append(rows, title...)
		for _, section := range part.Sections {
			rows = append(rows, s.section(section)...)
		}
	}
	return rows
}

// opening is what stands at the top of the first page.
func (s setter) opening(d *paper.Document) []row {
	*s.texts = 1
	rows := s.flow(s.numbered(titleStyle, 1, d.Title), titleStyle.lead, s.left, 0)
	if subject := s.numbered(subjectStyle, 2, d.Subject); !unseen(subject) {
		rows = append(rows, s.flow(subject, subjectStyle.lead, s.left, 1.5)...)
	}
	rows = append(rows, s.extra(bodyStyle, "Made on "+d.Made+" by "+d.Program+".", 1)...)
	*s.texts = ofFoot
	return rows
}

// numbered is lines of a text whose number is known.
func (s setter) numbered(st style, of int, text string) []textLine {
	var lines []textLine
	for _, words := range st.wrap(text, s.wide, s.wide) {
		var l textLine
		if words != "" {
			l = textLine{st.words(of, words, 0, 0)}
		}
		lines = append(lines, l)
	}
	return lines
}

func (s setter) section(section paper.Section) []row {
	title := s.heading(sectionStyle, "", section.Title, 6)
	title[0].fresh = section.NewPage
	title[0].bookmark = &bookmark{title: section.Title, level: 1}
	return append(title, s.blocks(section.Blocks)...)
}
