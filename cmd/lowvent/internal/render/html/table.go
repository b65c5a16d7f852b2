package html

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"lowvent.example/cmd/lowvent/internal/paper"
)

// table writes a table within a frame of its own, which scrolls where the screen is
// narrower than the table can be.
func (p *page) table(t *paper.Table) {
	label := t.Caption
	if label == "" {
		label = p.section
	}
	p.Open("div", "class", "scroll", "role", "region", "aria-label", label, "tabindex", "0")
	p.Open("table", "class", p.tableClass(t))
	p.some("caption", t.Caption)
	p.widths(t.Columns)
	p.titles(t.Columns)
	p.Open("tbody")
	for _, row := range t.Rows {
		p.Open("tr")
		for i, cell := range row {
			p.cell(&cell, t.Columns[i].Head)
		}
		p.Close()
		p.Line()
	}
	p.Close()
	p.Close()
	p.Close()
}

func (p *page) tableClass(t *paper.Table) string {
	least := leastWidth(t)
	p.least[least] = true
	class := "m" + strconv.Itoa(least)
	if t.Small {
		class += " small"
	}
	if least >= mostWide {
		class += " crowded"
	}
	return class
}

// leastWidth is the least width of a table on a screen, in em, at which no column breaks
// the words of its title or a signal word. On paper the width is what it is.
func leastWidth(t *paper.Table) int {
	sum := 0.0
	for i := range t.Columns {
		sum += columnNeed(t, i)
	}
	return int(math.Ceil(min(sum, mostWide)))
}

// The most em that a table asks for, whatever is in it, which is what a sheet of paper
// has; what a column needs at least; and the width of a letter of a title with the edges
// of its cell.
const (
	mostWide   = 50
	columnWide = 4
	letterWide = 0.68
	edges      = 1.2
)

func columnNeed(t *paper.Table, column int) float64 {
	long := 0
	for _, word := range strings.Fields(t.Columns[column].Title) {
		long = max(long, utf8.RuneCountInString(word))
	}
	for _, row := range t.Rows {
		long = max(long, utf8.RuneCountInString(row[column].Word)+1)
	}
	return max(columnWide, float64(long)*letterWide+edges)
}

func total(columns []paper.Column) float64 {
	sum := 0.0
	for _, c := range columns {
		sum += max(c.Share, 0)
	}
	return sum
}

// widths gives each column its share, by a class that the style sheet will know.
func (p *page) widths(columns []paper.Column) {
	sum := total(columns)
	if !(sum > 0) || math.IsInf(sum, 0) {
		return
	}
	p.Open("colgroup")
	for _, c := range columns {
		share := int(math.Round(max(c.Share, 0) / sum * 1000))
		p.shares[share] = true
		p.Empty("col", "class", "w"+strconv.Itoa(share))
	}
	p.Close()
}

func (p *page) titles(columns []paper.Column) {
	if !slices.ContainsFunc(columns, func(c paper.Column) bool { return c.Title != "" }) {
		return
	}
	p.Open("thead")
	p.Open("tr")
	for _, c := range columns {
		if c.Title == "" {
			p.Element("td", "") // nothing to read out over the cells below
			continue
		}
		p.Element("th", c.Title, "scope", "col")
	}
	p.Close()
	p.Close()
	p.Line()
}

func (p *page) cell(c *paper.Cell, head bool) {
	name, scope, class := "td", "", ""
	if head && strings.TrimSpace(c.Word+c.Text) != "" {
		name, scope = "th", "row"
	}
	if c.Blank {
		class = "blank"
	}
	p.Open(name, "scope", scope, "class", class)
	p.words(c.Word, c.Text, c.Strong)
	if c.Blank {
		p.blank()
	}
	p.Close()
}
