package pdf

import (
	"math"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/demos"
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

// TestTheSheetsThatDrawingsAreMadeFor have room at true size on both sizes of paper.
func TestTheSheetsThatDrawingsAreMadeFor(t *testing.T) {
	for _, size := range []Sheet{A4, Letter} {
		for _, made := range []struct{ wide, high float64 }{{250, 165}, {180, 225}} {
			d := sample()
			d.Parts[0].Sections[0].Blocks = []paper.Block{&paper.Heading{Text: "Over it"}, &paper.Picture{Drawing: plan("made", made.wide, made.high)}}
			pages, err := arrange(d, size)
			if err != nil {
				t.Fatal(err)
			}
			holds(t, d, pages)
			if _, heading := find(pages, "Over it"); heading != 0 {
				t.Errorf("the heading over a drawing of %g by %g leaves the first page empty", made.wide, made.high)
			}
			_, at := find(pages, "The bus from above, made")
			if text, _ := find(pages[at:at+1], "Scale 1:20 when printed at 100 %"); text == nil {
				t.Errorf("a drawing of %g by %g is made smaller on sheet %d", made.wide, made.high, size)
			}
		}
	}
}

// TestAFewLinesGoWithTheDrawingBelowThem onto a page that lies, and do not fill a page.
func TestAFewLinesGoWithTheDrawingBelowThem(t *testing.T) {
	wide := &paper.Picture{Drawing: plan("wide", 250, 120)}
	pages := laid(t, wide, &paper.Heading{Text: "Elevation"}, &paper.Para{Text: prose}, &paper.Picture{Drawing: plan("next", 250, 110)}, &paper.Para{Text: "after"})
	_, heading := find(pages, "Elevation")
	_, drawing := find(pages, "The bus from above, next")
	if _, before := find(pages, "The bus from above, wide"); heading != drawing || !pages[drawing].turned || drawing != before+1 {
		t.Errorf("the heading stands on page %d, its drawing on page %d, the one before it on page %d", heading, drawing, before)
	}
	if _, after := find(pages, "after"); pages[after].turned {
		t.Error("what follows stays on the page that lies")
	}
}

// TestDrawingsOfTheDemosAreTrueToSize: what is drawn to scale stands at that scale on
// both sizes of paper, with nothing over anything else.
func TestDrawingsOfTheDemosAreTrueToSize(t *testing.T) {
	for _, demo := range demos.All(t) {
		drawings := []*draw.Drawing{draw.Plan(demo.Layout, demo.Report), draw.Elevation(demo.Layout, demo.Report), draw.Schematic(demo.Layout, demo.Report)}
		for _, k := range demo.Layout.Lockers.All() {
			drawings = append(drawings, draw.Locker(demo.Layout, demo.Report, k))
		}
		d := &paper.Document{Title: demo.Name, Foot: sample().Foot, Parts: []paper.Part{{ID: "p", Title: "Drawings", Sections: []paper.Section{{ID: "s", Title: "All of them"}}}}}
		for _, one := range drawings {
			if one != nil {
				d.Parts[0].Sections[0].Blocks = append(d.Parts[0].Sections[0].Blocks, &paper.Picture{Drawing: one})
			}
		}
		if len(d.Parts[0].Sections[0].Blocks) == 0 {
			continue // a heading with nothing under it
		}
		for _, size := range []Sheet{A4, Letter} {
			pages, err := arrange(d, size)
			if err != nil {
				t.Fatal(err)
			}
			holds(t, d, pages)
			if n := count(pages, "at its scale of"); n > 0 {
				t.Errorf("%s: %d drawings to scale are made smaller on sheet %d", demo.Name, n, size)
			}
		}
	}
}
