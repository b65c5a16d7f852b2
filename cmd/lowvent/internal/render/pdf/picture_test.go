package pdf

import (
	"math"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/paper"
)

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
