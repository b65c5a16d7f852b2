package pdf

import (
	"fmt"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/paper"
)

// laid is a paper of one section with these blocks, arranged on A4.
func laid(t *testing.T, blocks ...paper.Block) []*page {
	t.Helper()
	d := &paper.Document{Title: "T", Parts: []paper.Part{{ID: "p", Title: "P", Sections: []paper.Section{{ID: "s", Title: "S", Blocks: blocks}}}}}
	pages, err := arrange(d, A4)
	if err != nil {
		t.Fatal(err)
	}
	holds(t, d, pages)
	return pages
}

// find is the first text with these words, and the page it stands on.
func find(pages []*page, words string) (*draw.Text, int) {
	for n, g := range pages {
		for _, p := range g.pieces {
			if text, is := p.mark.(*draw.Text); is && strings.Contains(text.Content, words) {
				return text, n
			}
		}
	}
	return nil, -1
}

// count is on how many pages these words stand.
func count(pages []*page, words string) int {
	n := 0
	for _, g := range pages {
		if text, _ := find([]*page{g}, words); text != nil {
			n++
		}
	}
	return n
}

func TestHeadingsOfATableStandOnEachPage(t *testing.T) {
	columns := []paper.Column{{Title: "Word"}, {Title: "Subject"}, {Title: "Found"}, {Title: "Needed"}, {Title: "Source"}}
	pages := laid(t, &paper.Table{Caption: "All of them", Columns: columns, Rows: findings(120)})
	if len(pages) < 3 || count(pages, "Subject") != len(pages) || count(pages, "All of them") != 1 {
		t.Errorf("%d pages, the headings on %d, the caption on %d", len(pages), count(pages, "Subject"), count(pages, "All of them"))
	}
	headless := laid(t, &paper.Table{Columns: make([]paper.Column, 5), Rows: findings(120)})
	if len(headless) < 3 {
		t.Errorf("%d pages without headings", len(headless))
	}
}

// TestARowIsKeptWhole where a page has room for it; a longer one goes on over pages.
func TestARowIsKeptWhole(t *testing.T) {
	table := func(lines int) *paper.Table {
		return &paper.Table{Columns: []paper.Column{{Title: "A"}, {Title: "B"}}, Rows: [][]paper.Cell{{{Text: "short"}, {Text: "first" + strings.Repeat(" "+prose, lines) + " last"}}}}
	}
	whole := laid(t, &paper.Para{Text: strings.Repeat(prose+" ", 12)}, table(10))
	_, first := find(whole, "first")
	_, last := find(whole, "last")
	if first != 1 || last != 1 {
		t.Errorf("a row of a third of a page begins on page %d and ends on page %d", first, last)
	}
	long := laid(t, &paper.Para{Text: prose}, table(50))
	_, first = find(long, "first")
	if _, last = find(long, " last"); first != 0 || last < 1 || count(long, "A") < last {
		t.Errorf("a row longer than a page begins on page %d and ends on page %d", first, last)
	}
}

// TestRoomForAHand: blanks of cells, pairs and lines are 8 mm high or more.
func TestRoomForAHand(t *testing.T) {
	pages := laid(t,
		&paper.Table{Columns: []paper.Column{{Title: "above"}, {Title: "x"}}, Rows: [][]paper.Cell{{{Text: "one"}, {Blank: true}}, {{Text: "two"}, {Text: "a text that leaves no room beside it, in so narrow a column as this one is, not even for a word", Blank: true}}, {{Text: "three"}, {}}}},
		&paper.Pairs{Rows: []paper.Pair{{Label: "four", Blank: true}, {Label: "five", Value: "a value", Blank: true}, {Label: "six"}}},
		&paper.Lines{Label: "seven", Count: 2}, &paper.Para{Text: "eight"})
	y := func(words string) float64 {
		text, _ := find(pages, words)
		return text.At.Y
	}
	for _, c := range []struct {
		from, to string
		least    float64
	}{{"one", "two", 8}, {"two", "three", 8 + tableStyle.lead}, {"above", "four", 3*8 + tableStyle.lead}, {"five", "six", 8 + bodyStyle.lead}, {"seven", "eight", 16}} {
		if got := y(c.to) - y(c.from); got < c.least {
			t.Errorf("from %s to %s there are %.1f mm, want %.1f", c.from, c.to, got, c.least)
		}
	}
}

// TestASignalWordIsNeverHalf: a column has room for it whatever its share, and a word of a
// line's width and more is set smaller.
func TestASignalWordIsNeverHalf(t *testing.T) {
	long := laid(t, &paper.Para{Word: strings.Repeat("LONG", 20)})
	if text, _ := find(long, "LONG"); text == nil || text.Size >= bodyStyle.size || text.Wide() > 180 {
		t.Errorf("a word wider than a line: %+v", text)
	}
	usual := laid(t, &paper.Table{Columns: []paper.Column{{Share: 1}, {Share: 1000}}, Rows: [][]paper.Cell{{{Word: "WARNING"}, {Text: "x"}}}})
	if text, _ := find(usual, "WARNING"); text == nil || text.Size != tableStyle.size {
		t.Errorf("a column of a small share is too narrow for its word: %+v", text)
	}
}

func TestAFrameGoesOnOverPages(t *testing.T) {
	pages := laid(t, &paper.Box{Blocks: []paper.Block{&paper.Para{Text: strings.Repeat(prose+" ", 60)}, &paper.Box{Blocks: []paper.Block{&paper.Para{Text: "within"}}}}})
	for n, g := range pages {
		uprights := 0
		for b := range g.uprights {
			if b.at == margin || b.at == g.wide-margin {
				uprights++
			}
		}
		if uprights != 2 {
			t.Errorf("page %d has %d of the frame's two uprights", n+1, uprights)
		}
	}
	if len(pages) < 2 {
		t.Error("the frame fits on a page")
	}
}

// TestEveryPageSaysWhatItIs: the foot, the title and which of how many pages.
func TestEveryPageSaysWhatItIs(t *testing.T) {
	d := sample()
	d.Title = strings.Repeat("A very long title ", 20)
	pages, err := arrange(d, Letter)
	if err != nil {
		t.Fatal(err)
	}
	for n := range pages {
		one := pages[n : n+1]
		for _, words := range []string{"Not a certificate", fmt.Sprintf("page %d of %d", n+1, len(pages)), "…"} {
			if text, _ := find(one, words); text == nil || text.At.Y < one[0].high-margin-12 {
				t.Errorf("page %d does not say %q at its foot", n+1, words)
			}
		}
	}
}

// TestLettersAreLargeEnough: 9 pt at least, 8 pt in small tables, legends and the foot.
func TestLettersAreLargeEnough(t *testing.T) {
	for _, st := range []style{titleStyle, subjectStyle, partStyle, sectionStyle, headingStyle, bodyStyle, strongStyle, tableStyle, captionStyle} {
		if st.size < 9*point {
			t.Errorf("letters of %g pt", st.size/point)
		}
	}
	for _, st := range []style{smallStyle, footStyle} {
		if st.size < 8*point {
			t.Errorf("small letters of %g pt", st.size/point)
		}
	}
}
