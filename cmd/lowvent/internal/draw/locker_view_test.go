package draw

import (
	"math"
	"slices"
	"strings"
	"testing"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// shellsOf are the inner faces of a locker in its plan and in its section.
func shellsOf(t *testing.T, g *Drawing) (plan, section Rectangle) {
	t.Helper()
	var inner []Rectangle
	for _, of := range groups(g.Marks)["/lockers/k"] {
		for _, m := range of.Marks {
			if p, is := m.(*Path); is && p.Closed && p.Pen.Width == bold {
				r, _ := Extent([]Mark{p})
				inner = append(inner, r)
			}
		}
	}
	if len(inner) != 2 {
		t.Fatalf("%d outlines of the locker, want two", len(inner))
	}
	return inner[0], inner[1]
}

// TestBothViewsOfALockerAreToScale, whichever side the section is seen from, and its three
// sizes are dimensioned with what the file says.
func TestBothViewsOfALockerAreToScale(t *testing.T) {
	for door, across := range map[string]float64{"left": 0.6, "right": 0.6, "front": 0.5, "rear": 0.5} {
		g := lockerOf(t, aBox+`, "door": { "wall": "`+door+`" }`, "")
		plan, section := shellsOf(t, g)
		for _, c := range []struct{ got, want float64 }{{plan.wide(), 0.6}, {plan.high(), 0.5}, {section.wide(), across}, {section.high(), 0.7}} {
			if math.Abs(c.got-c.want*g.Scale) > 0.03 {
				t.Errorf("door %s: %v mm at %v a metre, want %v m", door, c.got, g.Scale, c.want)
			}
		}
		if plan.Right >= section.Left {
			t.Errorf("door %s: the section does not stand beside the plan", door)
		}
		var sizes []string
		for _, s := range g.Spans {
			if s.Check == "" && s.Subject == "/lockers/k" && !slices.Contains(sizes, s.Text) {
				sizes = append(sizes, s.Text)
			}
		}
		slices.Sort(sizes)
		if want := []string{"500 mm (19.69 in)", "600 mm (23.62 in)", "700 mm (27.56 in)"}; !slices.Equal(sizes, want) {
			t.Errorf("door %s: dimensioned are %q, want %q", door, sizes, want)
		}
		if text := textOn(g); !strings.Contains(text, "plan, seen from above") || !strings.Contains(text, "section, seen from the "+door) {
			t.Errorf("door %s: the views are not named:\n%s", door, text)
		}
	}
}

// TestTheLinerLiesOutside the inner faces, as thick as it is, or as a line that can be seen
// where it is thin or not known.
func TestTheLinerLiesOutside(t *testing.T) {
	for liner, thick := range map[string]float64{``: 0, `, "liner": { "thickness": "1.2 mm" }`: 0.0012, `, "liner": { "thickness": "18 mm" }`: 0.018} {
		g := lockerOf(t, aBox+liner, "")
		plan, _ := shellsOf(t, g)
		outer, _ := Extent(groups(g.Marks)["/lockers/k"][0].Marks[:1])
		want := max(0.8, thick*g.Scale)
		if thick == 0 {
			want = 1
		}
		if skin := plan.Left - outer.Left; math.Abs(skin-want) > 0.02 || !plan.Within(outer) {
			t.Errorf("%s: a skin of %v mm, want %v", liner, skin, want)
		}
	}
}

// TestTheDoorsWallIsMarked along all of it, outside, in each view that sees it from its
// edge; nowhere where the file does not say which it is.
func TestTheDoorsWallIsMarked(t *testing.T) {
	for door, views := range map[string]int{"left": 1, "right": 1, "front": 1, "rear": 1, "ceiling": 1, "": 0} {
		members := aBox
		if door != "" {
			members += `, "door": { "wall": "` + door + `" }`
		}
		g := lockerOf(t, members, "")
		plan, section := shellsOf(t, g)
		var marked []*Path
		for _, of := range groups(g.Marks)["/lockers/k/door"] {
			marked = append(marked, of.Marks[0].(*Path))
		}
		if len(marked) != views {
			t.Fatalf("%q: marked %d times, want %d", door, len(marked), views)
		}
		for _, p := range marked {
			a, b := p.Points[0], p.Points[1]
			middle := Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}
			near := plan
			if door == "ceiling" {
				near = section
			}
			off := near.nearest(middle).to(middle)
			long := map[string]float64{"left": plan.wide(), "right": plan.wide(), "front": plan.high(), "rear": plan.high(), "ceiling": section.wide()}[door]
			out := map[string]Point{"left": {0, 1}, "right": {0, -1}, "front": {-1, 0}, "rear": {1, 0}, "ceiling": {0, -1}}[door]
			way := Point{middle.X - near.centre().X, middle.Y - near.centre().Y}
			if off < 1 || off > 4 || math.Abs(a.to(b)-long) > 0.03 || way.X*out.X+way.Y*out.Y < 1 || math.Abs(way.X*out.Y)+math.Abs(way.Y*out.X) > 0.03 {
				t.Errorf("%s: marked from %v to %v, %v mm off %v", door, a, b, off, near)
			}
			if p.Pen.Dash != LongDash {
				t.Errorf("%s: marked with %+v", door, p.Pen)
			}
		}
	}
}

// TestALockerShowsItsOwnVentsAlone: with two lockers, each drawing has the vents and holes of
// its own, and tells its own free areas.
func TestALockerShowsItsOwnVentsAlone(t *testing.T) {
	const two = `"lockers": {
		"k": { "box": { "from": ["0 m", "0 m", "0 m"], "to": ["0.6 m", "0.5 m", "0.7 m"] }, "vents": { "mine": { "level": "low", "at": ["0.3 m", "0.2 m", "0 m"] } }, "penetrations": { "hole": { "at": ["0.6 m", "0.2 m", "0.3 m"] } } },
		"m": { "box": { "from": ["0.6 m", "0 m", "0 m"], "to": ["1.2 m", "0.5 m", "0.7 m"] }, "vents": { "its": { "level": "low", "at": ["0.7 m", "0.2 m", "0 m"] } }, "penetrations": {} } },
		"openings": { "hatch": { "of": "lockers/m", "at": ["0.9 m", "0.2 m", "0.7 m"] } }`
	l := loaded(t, two)
	area := func(subject, text string) report.Figure {
		return report.Figure{ID: "locker.low-vent-free-area", Subject: subject, Value: &report.Amount{Text: text}}
	}
	f := &report.FileReport{Figures: []report.Figure{area("/lockers/m", "20 cm²"), area("/lockers/k", "10 cm²"), {ID: "locker.high-vent-free-area", Subject: "/lockers/k"}}}
	for i, c := range []struct{ drawn, not, says string }{
		{"/lockers/k/vents/mine /lockers/k/penetrations/hole", "/lockers/m/vents/its /openings/hatch", "Free area, all low vents: 10 cm²; all high vents: ? not known."},
		{"/lockers/m/vents/its /openings/hatch", "/lockers/k/vents/mine /lockers/k/penetrations/hole", "Free area, all low vents: 20 cm²; all high vents: ? not known."},
	} {
		g := Locker(l, f, l.Lockers.All()[i])
		of := groups(g.Marks)
		for pointer := range strings.FieldsSeq(c.drawn) {
			if len(of[pointer]) < 2 {
				t.Errorf("locker %d: %s is drawn and named %d times", i, pointer, len(of[pointer]))
			}
		}
		for pointer := range strings.FieldsSeq(c.not) {
			if len(of[pointer]) > 0 {
				t.Errorf("locker %d: %s is drawn", i, pointer)
			}
		}
		if !strings.Contains(textOn(g), c.says) || !strings.Contains(g.Alt, c.says) {
			t.Errorf("locker %d: %q does not stand on it:\n%s", i, c.says, textOn(g))
		}
	}
}

// TestWhatStandsByThingsInALocker: a cylinder without its size and a hole without its gland
// say that it is not known; with them they do not.
func TestWhatStandsByThingsInALocker(t *testing.T) {
	for _, c := range []struct {
		members, rest, fact string
		stands              bool
	}{
		{aBox, `, "cylinders": { "A": { "in": "lockers/k", "at": ["1.3 m", "0.25 m", "0 m"] } }`, "? size not known", true},
		{aBox, `, "cylinders": { "A": { "in": "lockers/k", "at": ["1.3 m", "0.25 m", "0 m"], "diameter": "0.3 m" } }`, "? size not known", true},
		{aBox, `, "cylinders": { "A": { "in": "lockers/k", "at": ["1.3 m", "0.25 m", "0 m"], "diameter": "0.3 m", "height": "0.5 m" } }`, "? size not known", false},
		{aBox, `, "cylinders": { "A": { "in": "lockers/k", "box": { "from": ["1.1 m", "0.1 m", "0 m"], "to": ["1.4 m", "0.4 m", "0.5 m"] } } }`, "? size not known", false},
		{aBox + `, "penetrations": { "p": { "at": ["1.6 m", "0.2 m", "0.3 m"] } }`, "", "? gland not known", true},
		{aBox + `, "penetrations": { "p": { "gland": "bulkhead", "at": ["1.6 m", "0.2 m", "0.3 m"] } }`, "", "? gland not known", false},
	} {
		if g := lockerOf(t, c.members, c.rest); strings.Contains(textOn(g), c.fact) != c.stands {
			t.Errorf("%s%s: %q stands on it: %v", c.members, c.rest, c.fact, !c.stands)
		}
	}
}

// TestTheLowestPointIsDrawnWhereItIs, below the floor of the box or above it.
func TestTheLowestPointIsDrawnWhereItIs(t *testing.T) {
	for written, z := range map[string]float64{"0 m": 0, "-40 mm": -0.04, "60 mm": 0.06} {
		g := lockerOf(t, aBox+`, "lowestPoint": "`+written+`"`, "")
		_, section := shellsOf(t, g)
		var at []float64
		for _, m := range g.Marks {
			if p, is := m.(*Path); is && p.Pen.Dash == DashDot && len(p.Points) == 2 && p.Points[0].Y == p.Points[1].Y {
				at = append(at, p.Points[0].Y)
			}
		}
		if len(at) != 1 || math.Abs(at[0]-(section.Bottom-z*g.Scale)) > 0.03 {
			t.Errorf("%s: drawn at %v, the floor is at %v, %v mm a metre", written, at, section.Bottom, g.Scale)
		}
		if !strings.Contains(textOn(g), "lowest point, z ") {
			t.Errorf("%s: not named:\n%s", written, textOn(g))
		}
	}
}

// TestALineThroughALockerIsCutOff a little outside of it, and one elsewhere is not there.
func TestALineThroughALockerIsCutOff(t *testing.T) {
	g := lockerOf(t, aBox, `, "junctions": { "j": {} }, "appliances": { "hob": {}, "oven": {} }, "lines": {
		"in": { "from": "junctions/j", "to": "appliances/hob", "route": [["1.3 m", "0.2 m", "0.3 m"], ["9 m", "0.2 m", "0.3 m"]] },
		"off": { "from": "junctions/j", "to": "appliances/oven", "route": [["5 m", "0.2 m", "0.3 m"], ["9 m", "0.2 m", "0.3 m"]] } }`)
	plan, section := shellsOf(t, g)
	of := groups(g.Marks)
	if len(of["/lines/in"]) != 2 || len(of["/lines/off"]) > 0 {
		t.Fatalf("%d and %d", len(of["/lines/in"]), len(of["/lines/off"]))
	}
	for i, shell := range []Rectangle{plan, section} {
		r, _ := Extent(of["/lines/in"][i].Marks)
		if !r.Within(shell.grown(5)) || r.wide() < 3 {
			t.Errorf("view %d: the line takes %v, the locker %v", i, r, shell)
		}
	}
}

// TestAnEdgeThatIsTooHighIsDimensioned from the lowest point up, at its vent, with what was
// found and needed; not for a report that says nothing of it, nor of another locker.
func TestAnEdgeThatIsTooHighIsDimensioned(t *testing.T) {
	const members = aBox + `, "lowestPoint": "10 mm", "door": { "wall": "right" }, "vents": { "v": { "level": "low", "wall": "rear", "lowerEdgeOverLowest": "90 mm", "at": ["1.6 m", "0.2 m", "0.15 m"] } }`
	l := loaded(t, `"lockers": { "k": { `+members+` } }`)
	found, needed := 0.09, 0.0
	part := report.Part{About: "vent v", Outcome: report.NotMet, Place: report.Place{Pointer: "/lockers/k/vents/v/lowerEdgeOverLowest"},
		Found: &report.Amount{Kind: "length", SI: &found, Text: "90 mm"}, Needed: &report.Amount{Kind: "length", SI: &needed, Text: "0 mm"}}
	of := func(change func(*report.Part)) *report.FileReport {
		p := part
		if change != nil {
			change(&p)
		}
		return &report.FileReport{Findings: []report.Finding{{Check: "locker.low-vent", Subject: "/lockers/k", Word: report.Danger, Outcome: report.NotMet, Parts: []report.Part{p}}}}
	}
	g := Locker(l, of(nil), l.Lockers.All()[0])
	_, section := shellsOf(t, g)
	spans := slices.DeleteFunc(slices.Clone(g.Spans), func(s Span) bool { return s.Check == "" })
	if len(spans) != 1 || math.Abs(spans[0].From.to(spans[0].To)-0.09*g.Scale) > 0.02 || spans[0].Text != "90 mm" {
		t.Fatalf("%+v", spans)
	}
	low, high := max(spans[0].From.Y, spans[0].To.Y), min(spans[0].From.Y, spans[0].To.Y)
	if math.Abs(low-(section.Bottom-0.01*g.Scale)) > 0.03 || math.Abs(high-(section.Bottom-0.1*g.Scale)) > 0.03 {
		t.Errorf("it goes from %v up to %v, the floor is at %v", low, high, section.Bottom)
	}
	if !strings.Contains(textOn(g), "needed at most 0 mm") || !strings.Contains(g.Alt, "the lowest point and the lower edge of vent v, 90 mm found where at most 0 mm is needed") {
		t.Errorf("it is not told: %s\n%s", textOn(g), g.Alt)
	}
	none := 0.0
	for name, f := range map[string]*report.FileReport{"no report": nil, "within": of(func(p *report.Part) { p.Outcome = report.Within }), "nothing found": of(func(p *report.Part) { p.Found = nil }),
		"none at all": of(func(p *report.Part) { p.Found = &report.Amount{Kind: "length", SI: &none, Text: "0 mm"} }), "of another": of(func(p *report.Part) { p.Place.Pointer = "/lockers/m/vents/v/lowerEdgeOverLowest" })} {
		if s := slices.DeleteFunc(slices.Clone(Locker(l, f, l.Lockers.All()[0]).Spans), func(s Span) bool { return s.Check == "" }); len(s) > 0 {
			t.Errorf("%s: %+v", name, s)
		}
	}
}

// TestOfALockersPartsEachStandsInOneList: what of it has no place is told, its shut-offs
// with their line, and what is elsewhere without a place is not.
func TestOfALockersPartsEachStandsInOneList(t *testing.T) {
	g := lockerOf(t, aBox+`, "vents": { "v": { "level": "low" } }`, `, "cylinders": { "C": { "in": "lockers/k" }, "D": { "in": "open-air" } }, "regulators": { "r": { "in": "lockers/k" } }`)
	want := "Not drawn, no position stated: cylinder C, regulator r, vent v of locker k."
	if !strings.Contains(textOn(g), want) || strings.Contains(g.Alt, "cylinder D") {
		t.Errorf("%q does not stand on it, or more does:\n%s\n%s", want, textOn(g), g.Alt)
	}
}

// TestALockerFromAnyFile: whatever is left out of a locker that states all, it is drawn
// whole, or not at all where it has no box.
func TestALockerFromAnyFile(t *testing.T) {
	const all = `{ "format": "lowvent-layout/1", "lockers": { "k": { ` + aBox + `, "lowestPoint": "0 m", "falseFloor": false, "liner": { "material": "steel", "thickness": "1 mm" }, "door": { "wall": "rear", "opensTo": "open-air", "width": "0.4 m", "height": "0.5 m", "seal": "gasket", "sill": "20 mm" },
		"vents": { "v": { "level": "low", "wall": "left", "at": ["1.3 m", "0 m", "0.05 m"], "gross": "60 cm2", "cover": { "kind": "mesh", "open": "70 %" }, "lowerEdgeOverLowest": "20 mm", "endsAt": ["1.3 m", "-0.1 m", "0 m"], "endsIn": { "kind": "open-air", "overGround": "0.3 m" } } },
		"penetrations": { "p": { "gland": "bulkhead", "at": ["1.6 m", "0.2 m", "0.3 m"] } } } }, "cylinders": { "A": { "in": "lockers/k", "at": ["1.3 m", "0.25 m", "0 m"], "diameter": "0.3 m", "height": "0.5 m" } } }`
	file := source.NewFile("k.json", []byte(all))
	root, fault := source.Parse(file, source.DefaultLimits())
	if fault != nil {
		t.Fatal(fault)
	}
	drawn := 0
	var leave func(*source.Node)
	leave = func(n *source.Node) {
		for _, child := range n.Children {
			leave(child)
			if n.Kind != source.Object || child.Key == "format" {
				continue
			}
			edited, err := source.Apply(file, root, []source.Edit{{Pointer: child.Pointer(), Delete: true}})
			if err != nil {
				t.Fatal(err)
			}
			l, faults := layout.Load(edited)
			if faults != nil || len(l.Lockers.All()) == 0 {
				continue
			}
			g := Locker(l, nil, l.Lockers.All()[0])
			if (g == nil) != (child.Key == "box") {
				t.Fatalf("without %s: drawn %v", child.Pointer(), g != nil)
			}
			if g != nil {
				drawn++
				whole(t, "without "+child.Pointer(), g)
			}
		}
	}
	leave(root)
	if drawn < 25 {
		t.Errorf("%d drawings: the test says little", drawn)
	}
}
