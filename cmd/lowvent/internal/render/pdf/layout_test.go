package pdf

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/letter"
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

// TestAMillimetreIsAMillimetre: what a drawing puts 100 mm apart stands so on the page, on
// one that stands and on one that lies; on neither is there room for more than the page.
func TestAMillimetreIsAMillimetre(t *testing.T) {
	for _, c := range []struct {
		wide, high float64
		turned     bool
		factor     float64
		says       string
	}{
		{100, 60, false, 1, "Scale 1:20 when printed at 100 %."},
		{180, 200, false, 1, "Scale 1:20 when printed at 100 %."},
		{181, 60, true, 1, "Scale 1:20 when printed at 100 %."},
		{267, 140, true, 1, "Scale 1:20 when printed at 100 %."},
		{300, 140, true, 0.8, "made smaller, to 80 %, which is 1:25 when printed at 100 %."},
		{100, 300, false, 0.8, "made smaller, to 80 %, which is 1:25 when printed at 100 %."},
	} {
		d := &draw.Drawing{Title: "D", Alt: "a", Width: c.wide, Height: c.high, Scale: 50, Marks: []draw.Mark{&draw.Path{Points: []draw.Point{{}, {X: 100}}, Pen: draw.Pen{Width: 0.3}}}}
		pages := laid(t, &paper.Picture{Drawing: d})
		length, turned := 0.0, false
		for _, g := range pages {
			for _, p := range g.pieces {
				if group, is := p.mark.(*draw.Group); is {
					r, _ := draw.Extent(group.Marks)
					length, turned = r.Right-r.Left, g.turned
				}
			}
		}
		if math.Abs(length-100*c.factor) > 1e-9 || turned != c.turned || count(pages, c.says) != 1 {
			t.Errorf("%g by %g: 100 mm are %g on paper, turned %v; want %g, %v and to be told %q", c.wide, c.high, length, turned, 100*c.factor, c.turned, c.says)
		}
	}
}

func TestADrawingThatFillsThePageKeepsNoHeadingWaiting(t *testing.T) {
	d := plan("full", 180, 240)
	d.Key = nil
	pages := laid(t, &paper.Para{Text: "before"}, &paper.Heading{Text: "Over it"}, &paper.Picture{Drawing: d}, &paper.Para{Text: "after"})
	_, heading := find(pages, "Over it")
	_, note := find(pages, "stands on the next page")
	_, title := find(pages, "The bus from above")
	if heading != 0 || note != 0 || title != 1 {
		t.Errorf("heading, note and drawing stand on pages %d, %d, %d", heading, note, title)
	}
}

func TestALegendGoesWithItsDrawing(t *testing.T) {
	pages := laid(t, &paper.Para{Text: strings.Repeat(prose+" ", 14)}, &paper.Picture{Drawing: plan("plan", 170, 100)})
	_, title := find(pages, "The bus from above, plan")
	for _, words := range []string{"Key to", "high pressure", "a run that can't be seen"} {
		if _, at := find(pages, words); at != title || at < 1 {
			t.Errorf("%q stands on page %d, its drawing on %d", words, at, title)
		}
	}
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
			if text, _ := find(one, words); text == nil || text.At.Y < one[0].high-margin-15 {
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

func TestShares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		share := rapid.SliceOfN(rapid.Float64Range(0.01, 100), 1, 12).Draw(t, "shares")
		least := make([]float64, len(share))
		for i := range least {
			least[i] = rapid.Float64Range(0, 180/float64(len(share))).Draw(t, "least")
		}
		sum := 0.0
		for i, wide := range shared(180, share, least) {
			sum += wide
			if wide < least[i]-1e-9 {
				t.Fatalf("column %d gets %g and needs %g", i, wide, least[i])
			}
		}
		if math.Abs(sum-180) > 1e-6 {
			t.Fatalf("the columns are %g wide together", sum)
		}
	})
	if got := shared(100, []float64{1, 3}, []float64{0, 0}); got[0] != 25 || got[1] != 75 {
		t.Errorf("shares of 1 and 3 come to %v", got)
	}
}

// TestLinesHoldTheirWords: no line is wider than its room, and no letter is lost.
func TestLinesHoldTheirWords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := anyText(20).Draw(t, "text")
		first, rest := rapid.Float64Range(5, 180).Draw(t, "first"), rapid.Float64Range(5, 180).Draw(t, "rest")
		lines := tableStyle.wrap(text, first, rest)
		for i, l := range lines {
			room := rest
			if i == 0 {
				room = first
			}
			if wide := letter.Width(letter.Regular, l, tableStyle.size); wide > room+1e-9 || strings.HasSuffix(l, " ") {
				t.Fatalf("line %d, %q, is %g wide, in %g", i, l, wide, room)
			}
		}
		if got, want := bareAll([]string{strings.Join(lines, "")})[0], bareAll([]string{text})[0]; got != want {
			t.Fatalf("lines of %q, text %q", got, want)
		}
	})
	broken := tableStyle.wrap("/lockers/skirt/lowVents/north/gross", 40, 40)
	if len(broken) != 2 || !strings.HasSuffix(broken[0], "/") {
		t.Errorf("a path is broken as %q", broken)
	}
}

// TestSignalWordsCanBeRead: contrast of 4.5 : 1 at least, reckoned as WCAG 2.2 does it
// (relative luminance, success criterion 1.4.3); red, orange, yellow and blue are the
// colours of the four words in ANSI Z535.1 (from memory).
func TestSignalWordsCanBeRead(t *testing.T) {
	grounds := map[string]draw.Ink{"DANGER": draw.Red, "WARNING": draw.Orange, "CAUTION": draw.Yellow, "NOTICE": draw.Blue, "ELSE": draw.White}
	for word, want := range grounds {
		ground, ink := inks(word)
		a, b := luminance(ground), luminance(ink)
		if ratio := (max(a, b) + 0.05) / (min(a, b) + 0.05); ratio < 4.5 || ground != want {
			t.Errorf("%s stands in ink %d on %d with a contrast of %.1f", word, ink, ground, ratio)
		}
	}
}

func luminance(i draw.Ink) float64 {
	r, g, b := i.RGB()
	linear := func(c uint8) float64 {
		v := float64(c) / 255
		if v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
}

// TestColourIsForSignalWordsOnly: all else on the pages is black, white and grey.
func TestColourIsForSignalWordsOnly(t *testing.T) {
	pages, err := arrange(sample(), A4)
	if err != nil {
		t.Fatal(err)
	}
	boxes := 0
	for _, g := range pages {
		for i, p := range g.pieces {
			path, is := p.mark.(*draw.Path)
			if !is || path.Fill < draw.Red {
				continue
			}
			boxes++
			if word := g.pieces[i+1].mark.(*draw.Text).Content; path.Fill == draw.White || !strings.Contains("DANGER WARNING CAUTION NOTICE", word) {
				t.Errorf("a coloured box holds %q", word)
			}
		}
	}
	if boxes != 4+26 {
		t.Errorf("%d signal words have a box", boxes)
	}
}
