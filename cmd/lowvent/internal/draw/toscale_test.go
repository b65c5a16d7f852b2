package draw

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// drawings are all the drawings to scale of a layout, and the view of each but the lockers'.
func drawings(d demos.Demo) []*Drawing {
	all := []*Drawing{Plan(d.Layout, d.Report), Elevation(d.Layout, d.Report)}
	for _, k := range d.Layout.Lockers.All() {
		all = append(all, Locker(d.Layout, d.Report, k))
	}
	var some []*Drawing
	for _, g := range all {
		if g != nil {
			some = append(some, g)
		}
	}
	return some
}

// TestDrawingsStayOnTheirPaper: no mark lies beyond the drawing, and the drawing fits what
// printers reach of A4 and Letter.
func TestDrawingsStayOnTheirPaper(t *testing.T) {
	for _, d := range demos.All(t) {
		for _, g := range drawings(d) {
			r, _ := Extent(g.Marks)
			if !r.Within(Rectangle{0, 0, g.Width, g.Height}) {
				t.Errorf("%s, %s: marks reach over %v, the paper is %v by %v", d.Name, g.ID, r, g.Width, g.Height)
			}
			if (g.Width > 250 || g.Height > 165) && (g.Width > 180 || g.Height > 225) {
				t.Errorf("%s, %s: %v by %v mm goes onto no sheet", d.Name, g.ID, g.Width, g.Height)
			}
			for _, k := range g.Key {
				if r, some := Extent(k.Marks); !some || !r.Within(Rectangle{0, 0, 12, 6}) || k.Means == "" {
					t.Errorf("%s, %s: the legend's %q takes %v", d.Name, g.ID, k.Means, r)
				}
			}
		}
	}
}

// TestLabelsNeverCoverOneAnother, and are large enough to read.
func TestLabelsNeverCoverOneAnother(t *testing.T) {
	for _, d := range demos.All(t) {
		for _, g := range drawings(d) {
			texts := textsOf(g.Marks)
			for i, a := range texts {
				if a.Size < 2.2 {
					t.Errorf("%s, %s: %q is only %v mm high", d.Name, g.ID, a.Content, a.Size)
				}
				for _, b := range texts[:i] {
					if a.Bounds().Overlaps(b.Bounds()) {
						t.Errorf("%s, %s: %q lies over %q", d.Name, g.ID, a.Content, b.Content)
					}
				}
			}
		}
	}
}

// groups are the groups of a drawing by the pointer of what they show.
func groups(marks []Mark) map[string][]*Group {
	all := map[string][]*Group{}
	for _, m := range marks {
		if g, is := m.(*Group); is {
			all[g.Of] = append(all[g.Of], g)
		}
	}
	return all
}

// TestEveryPlacedThingIsDrawn: whatever of the drawn kinds has a place in the file is a
// group of the plan and of the elevation; whatever has none is named in the words and on
// the paper.
func TestEveryPlacedThingIsDrawn(t *testing.T) {
	drawn, named := 0, 0
	for _, d := range demos.All(t) {
		for _, g := range []*Drawing{Plan(d.Layout, d.Report), Elevation(d.Layout, d.Report)} {
			if g == nil {
				continue
			}
			of := groups(g.Marks)
			for _, item := range itemsOf(d.Layout) {
				switch _, ok := solidAt(item, "at"); {
				case ok || hasRoute(item):
					drawn++
					if len(of[item.Spot().Pointer()]) == 0 {
						t.Errorf("%s, %s: %s has a place and is not drawn", d.Name, g.ID, item.Spot().Pointer())
					}
				default:
					named++
					if !strings.Contains(g.Alt, item.Label()) {
						t.Errorf("%s, %s: %s has no place, and the words do not say so", d.Name, g.ID, item.Spot().Pointer())
					}
				}
			}
		}
	}
	if drawn < 400 || named < 40 {
		t.Errorf("%d things drawn, %d named: the test says little", drawn, named)
	}
}

func hasRoute(item layout.Item) bool {
	n, is := item.(*layout.Line)
	return is && n.Route.Known()
}

// itemsOf lists all things of the drawn kinds, by a way of its own.
func itemsOf(l *layout.Layout) []layout.Item {
	var all []layout.Item
	all = append(all, items(l.Spaces.All())...)
	all = append(all, items(l.Lockers.All())...)
	all = append(all, items(l.Cylinders.All())...)
	all = append(all, items(l.Changeovers.All())...)
	all = append(all, items(l.Regulators.All())...)
	all = append(all, items(l.Junctions.All())...)
	all = append(all, items(l.Lines.All())...)
	all = append(all, items(l.OpenEnds.All())...)
	all = append(all, items(l.Outlets.All())...)
	all = append(all, items(l.Appliances.All())...)
	all = append(all, items(l.Flues.All())...)
	all = append(all, items(l.Stoves.All())...)
	all = append(all, items(l.Exhausts.All())...)
	all = append(all, items(l.Openings.All())...)
	all = append(all, items(l.FixedVents.All())...)
	all = append(all, items(l.Fans.All())...)
	all = append(all, items(l.IgnitionSources.All())...)
	all = append(all, items(l.Stored.All())...)
	all = append(all, items(l.Alarms.All())...)
	all = append(all, items(l.Extinguishers.All())...)
	all = append(all, items(l.FillPoints.All())...)
	for _, k := range l.Lockers.All() {
		all = append(all, items(k.Vents.All())...)
	}
	return all
}

func items[T layout.Item](some []T) []layout.Item {
	var all []layout.Item
	for _, item := range some {
		all = append(all, item)
	}
	return all
}

// TestSpansAreToScale: what is dimensioned lies as far apart on paper as it says, and says
// what the report found.
func TestSpansAreToScale(t *testing.T) {
	of := map[string]int{}
	for _, d := range demos.All(t) {
		for _, g := range drawings(d) {
			for _, s := range g.Spans {
				of[s.Check]++
				long := math.Hypot(s.To.X-s.From.X, s.To.Y-s.From.Y)
				if math.Abs(long-s.Metres*g.Scale) > 0.005*s.Metres*g.Scale+0.015 {
					t.Errorf("%s, %s: %s of %s is %v mm long for %v m", d.Name, g.ID, s.Check, s.Subject, long, s.Metres)
				}
				if s.Check != "" && !saysSo(d.Report, s) {
					t.Errorf("%s, %s: no finding of %s for %s found %s", d.Name, g.ID, s.Check, s.Subject, s.Text)
				}
			}
		}
	}
	for _, check := range []string{"", "ignition.near-gas", "locker.vent-clear", "locker.low-vent", "clearance.above", "alarm.gas"} {
		if of[check] == 0 {
			t.Errorf("no distance of %q is drawn in any layout", check)
		}
	}
}

// saysSo tells whether a report has a finding, not met, with the distance that a span shows.
func saysSo(r *report.FileReport, s Span) bool {
	for _, f := range r.Findings {
		for _, p := range f.Parts {
			if f.Check == s.Check && f.Subject == s.Subject && p.Outcome == report.NotMet && p.Found != nil && p.Found.SI != nil && *p.Found.SI == s.Metres && p.Found.Text == s.Text {
				return true
			}
		}
	}
	return false
}

// TestSpacesAreToScale: the outline of a space is its box times the scale, in plan and in
// elevation.
func TestSpacesAreToScale(t *testing.T) {
	for _, d := range demos.All(t) {
		plan, elevation := Plan(d.Layout, d.Report), Elevation(d.Layout, d.Report)
		if plan == nil {
			continue
		}
		for _, p := range d.Layout.Spaces.All() {
			s, ok := boxOf(&p.Box)
			if !ok {
				continue
			}
			for _, c := range []struct {
				d          *Drawing
				wide, high float64
			}{{plan, s.size(0), s.size(1)}, {elevation, s.size(0), s.size(2)}} {
				outline, _ := Extent(groups(c.d.Marks)[p.Spot().Pointer()][0].Marks)
				if math.Abs(outline.wide()-c.wide*c.d.Scale) > 0.03 || math.Abs(outline.high()-c.high*c.d.Scale) > 0.03 {
					t.Errorf("%s, %s: %s is drawn %v by %v mm, its box is %v by %v m", d.Name, c.d.ID, p.Label(), outline.wide(), outline.high(), c.wide, c.high)
				}
			}
		}
	}
}

// TestNothingToDraw: a file that places nothing gives no drawing rather than an empty one.
func TestNothingToDraw(t *testing.T) {
	d := demos.One(t, "bare")
	if Plan(d.Layout, d.Report) != nil || Elevation(d.Layout, d.Report) != nil {
		t.Error("a drawing of nothing")
	}
	for _, k := range demos.One(t, "van").Layout.Lockers.All() {
		if Locker(d.Layout, d.Report, k) != nil {
			t.Errorf("%s has no box and is drawn", k.Label())
		}
	}
}

// TestTheSameAgain: the same layout gives the same drawing, mark for mark.
func TestTheSameAgain(t *testing.T) {
	for _, name := range []string{"sorrel-faulty", "teal"} {
		d := demos.One(t, name)
		for i, g := range drawings(d) {
			if again := drawings(demos.One(t, name))[i]; fmt.Sprint(flat(g.Marks)) != fmt.Sprint(flat(again.Marks)) || g.Alt != again.Alt {
				t.Errorf("%s, %s: another drawing the second time", name, g.ID)
			}
		}
	}
}

// flat is every mark by value, groups opened.
func flat(marks []Mark) []any {
	var all []any
	for _, m := range marks {
		switch m := m.(type) {
		case *Group:
			all = append(all, m.Of, m.Label)
			all = append(all, flat(m.Marks)...)
		case *Path:
			all = append(all, *m)
		case *Circle:
			all = append(all, *m)
		case *Text:
			all = append(all, *m)
		}
	}
	return all
}
