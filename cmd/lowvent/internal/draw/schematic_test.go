package draw

import (
	"math"
	"slices"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/schema/layout"
)

// TestSchematicHasEverything: each cylinder, appliance and line of a layout has a group with
// its pointer, and no other line has.
func TestSchematicHasEverything(t *testing.T) {
	for _, demo := range demos.All(t) {
		l := demo.Layout
		var want []string
		for _, c := range l.Cylinders.All() {
			want = append(want, c.Spot().Pointer())
		}
		for _, a := range l.Appliances.All() {
			want = append(want, a.Spot().Pointer())
		}
		for _, line := range l.Lines.All() {
			to, _ := line.To.Get()
			want = append(want, line.Spot().Pointer(), "/"+string(to))
		}
		d := Schematic(l, demo.Report)
		if d == nil {
			if len(want) > 0 {
				t.Errorf("%s: no schematic of %d things", demo.Name, len(want))
			}
			continue
		}
		var got []string
		for _, m := range d.Marks {
			got = append(got, m.(*Group).Of)
		}
		for _, each := range want {
			if !slices.Contains(got, each) {
				t.Errorf("%s: %s is not drawn", demo.Name, each)
			}
		}
	}
}

// TestSchematicTellsWhatIsNotKnown: what the file leaves out is told as not known at its
// place, and never filled in.
func TestSchematicTellsWhatIsNotKnown(t *testing.T) {
	d := Schematic(demos.One(t, "willow").Layout, demos.One(t, "willow").Report)
	var all []string
	for _, text := range textsOf(d.Marks) {
		all = append(all, text.Content)
	}
	for _, line := range demos.One(t, "willow").Layout.Lines.All() {
		if _, known := line.Length.Get(); !known && !slices.Contains(all, "length not known") {
			t.Errorf("%s has no length, and that is told nowhere in %q", line.Label(), all)
		}
	}
}

// TestOneLineForEachZone: the patterns of the zones differ without their colour.
func TestOneLineForEachZone(t *testing.T) {
	seen := map[Pen]string{}
	for _, zone := range append(layout.PressureZone("").Choices(), "") {
		pen := zonePen(layout.PressureZone(zone))
		if other, is := seen[pen]; is {
			t.Errorf("%q is drawn like %q", zone, other)
		}
		if pen.Ink != None {
			t.Errorf("%q is told by its colour", zone)
		}
		seen[pen] = zone
	}
}

// TestJointsAreNumberedInTheFlow: every joint once, from 1 on, no line before one that
// feeds it, and along a line in the order of its route.
func TestJointsAreNumberedInTheFlow(t *testing.T) {
	for _, demo := range demos.All(t) {
		l, want, at := demo.Layout, 0, map[*layout.Line]int{}
		for _, line := range l.Lines.All() {
			want += len(line.Joints.All())
		}
		joints := Joints(l)
		if len(joints) != want {
			t.Errorf("%s: %d joints of %d", demo.Name, len(joints), want)
		}
		for i, j := range joints {
			if j.Number != i+1 {
				t.Errorf("%s: joint %d has the number %d", demo.Name, i+1, j.Number)
			}
			at[j.Line] = i
		}
		for _, line := range l.Lines.All() {
			from, _ := line.From.Get()
			for _, before := range l.FedBy(from) {
				if len(line.Joints.All()) > 0 && len(before.Joints.All()) > 0 && at[before] > at[line] {
					t.Errorf("%s: %s comes after %s, which it feeds", demo.Name, before.ID(), line.ID())
				}
			}
		}
	}
	var trunk []string
	for _, j := range Joints(demos.One(t, "sorrel").Layout) {
		if j.Line.ID() == "trunk" {
			trunk = append(trunk, j.Joint.ID())
		}
	}
	if got := strings.Join(trunk, " "); got != "at-regulator at-wall at-block" {
		t.Errorf("along the trunk: %s", got)
	}
}

// TestThingsOnALineKeepTheirWordsApart: where the words of a thing end and those of the
// next begin on one line, a browser that sets letters wider than they were measured has
// room.
func TestThingsOnALineKeepTheirWordsApart(t *testing.T) {
	const least, above = 1.4, 0.01 // mm
	for _, d := range demos.All(t) {
		g := Schematic(d.Layout, d.Report)
		if g == nil {
			continue
		}
		for _, a := range textsOf(g.Marks) {
			for _, b := range textsOf(g.Marks) {
				one, other := a.Bounds(), b.Bounds()
				if math.Abs(a.At.Y-b.At.Y) < above && one.Left < other.Left && other.Left-one.Right < least {
					t.Errorf("%s: %q ends %.2f mm before %q", d.Name, a.Content, other.Left-one.Right, b.Content)
				}
			}
		}
	}
}
