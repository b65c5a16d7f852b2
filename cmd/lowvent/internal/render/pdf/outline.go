package pdf

import (
	"fmt"
	"strings"
)

// outline writes the bookmarks, sections below their parts, and gives the catalog's entry.
func (t *tail) outline(pages []*page) string {
	var marks []bookmark
	for _, g := range pages {
		marks = append(marks, g.bookmarks...)
	}
	if len(marks) == 0 {
		return ""
	}
	root := t.first + len(t.offsets)
	tops := within(marks, -1)
	t.object("<</Type /Outlines /First %d 0 R /Last %d 0 R /Count %d>>", root+1+tops[0], root+1+tops[len(tops)-1], len(marks))
	for i, b := range marks {
		t.object("<</Title %s /Dest [%d 0 R /XYZ 0 %.2f null] %s>>", textString(b.title), pageObject(b.page), (pages[b.page].high-b.top)/point, relations(marks, i, root))
	}
	return fmt.Sprintf("/Outlines %d 0 R /PageMode /UseOutlines\n", root)
}

// pageObject is the number of the object that the library writes for a page.
func pageObject(page int) int { return 3 + 2*page }

// within is the places of the entries below one, or of those on top for -1.
func within(marks []bookmark, i int) []int {
	level := 0
	if i >= 0 {
		level = marks[i].level + 1
	}
	var out []int
	for n := i + 1; n < len(marks) && marks[n].level >= level; n++ {
		if marks[n].level == level {
			out = append(out, n)
		}
	}
	return out
}

// relations are the links of an entry to those around it. The entries stand behind the
// outline's root in their order.
func relations(marks []bookmark, i, root int) string {
	var out strings.Builder
	link := func(name string, to int) { fmt.Fprintf(&out, "/%s %d 0 R ", name, root+1+to) }
	up := -1
	for n := i - 1; n >= 0 && up < 0; n-- {
		if marks[n].level < marks[i].level {
			up = n
		}
	}
	link("Parent", up)
	around := within(marks, up)
	for k, n := range around {
		if n == i && k > 0 {
			link("Prev", around[k-1])
		}
		if n == i && k+1 < len(around) {
			link("Next", around[k+1])
		}
	}
	if below := within(marks, i); len(below) > 0 {
		link("First", below[0])
		link("Last", below[len(below)-1])
		fmt.Fprintf(&out, "/Count %d ", len(below))
	}
	return out.String()
}
