package draw

import (
	"math"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

// lockerOf draws the only locker of a file that states these members of it.
func lockerOf(t *testing.T, members, rest string) *Drawing {
	t.Helper()
	l := loaded(t, `"lockers": { "k": { `+members+` } }`+rest)
	judged, err := demos.Report(l)
	if err != nil {
		t.Fatal(err)
	}
	g := Locker(l, judged, l.Lockers.All()[0])
	if g == nil {
		t.Fatal("no drawing")
	}
	return g
}

func loaded(t *testing.T, members string) *layout.Layout {
	t.Helper()
	return loadedIn(t, members)
}

// loadedIn loads a file of those members, in a test or in the check of a property.
func loadedIn(t tester, members string) *layout.Layout {
	t.Helper()
	l, faults := layout.Load(source.NewFile("k.json", []byte(`{ "format": "lowvent-layout/1", `+members+` }`)))
	if faults != nil {
		t.Fatalf("%v\n%s", faults, members)
	}
	return l
}

// textOn is everything that stands on a drawing, a line a text.
func textOn(g *Drawing) string {
	var b strings.Builder
	for _, t := range textsOf(g.Marks) {
		b.WriteString(t.Content + "\n")
	}
	return b.String()
}

const aBox = `"box": { "from": ["1 m", "0 m", "0 m"], "to": ["1.6 m", "0.5 m", "0.7 m"] }`

// TestWhatIsNotKnownOfALocker: a locker of which a file states the box alone says of all the
// rest that it is not known, with a question mark, and nothing of it is guessed.
func TestWhatIsNotKnownOfALocker(t *testing.T) {
	g := lockerOf(t, aBox, "")
	for _, want := range []string{"Liner: ? not known, thickness ? not known, joints ? not known. False floor or mat: ? not known.", "Door: ? in which wall not known",
		"? Vents: not known.", "? Penetrations: not known.", "? lowest point not known", "Free area, all low vents: ? not known"} {
		if !strings.Contains(textOn(g), want) {
			t.Errorf("%q does not stand on the drawing:\n%s", want, textOn(g))
		}
		if !strings.HasPrefix(want, "? lowest") && !strings.Contains(g.Alt, want) {
			t.Errorf("the words do not tell %q: %s", want, g.Alt)
		}
	}
}

// TestWhatIsStatedToBeNone is told apart from what is not known.
func TestWhatIsStatedToBeNone(t *testing.T) {
	g := lockerOf(t, aBox+`, "vents": {}, "penetrations": {}`, "")
	for _, want := range []string{"Vents: the file states that there are none.", "Penetrations: the file states that there are none."} {
		if !strings.Contains(textOn(g), want) {
			t.Errorf("%q does not stand on the drawing:\n%s", want, textOn(g))
		}
	}
}

// TestAVentAndItsUnknowns: each thing that a file leaves out of a vent is told beside it.
func TestAVentAndItsUnknowns(t *testing.T) {
	for _, c := range []struct{ vent, want string }{
		{`"level": "low"`, "lower edge ? not known"},
		{`"level": "low"`, "? what it ends in not known"},
		{`"level": "low"`, "? free area not known"},
		{`"level": "low", "lowerEdgeOverLowest": "20 mm"`, "lower edge 20 mm (0.787 in) over lowest point"},
		{`"level": "low", "endsIn": { "kind": "skirted-bay" }`, "ends in skirted bay, ? not known"},
		{`"level": "low", "endsIn": { "kind": "open-air", "overGround": "0.3 m" }`, "ends in open air, 300 mm (11.81 in) over the ground"},
		{`"level": "low", "endsIn": { "kind": "overboard", "overWaterline": "0.2 m" }`, "ends overboard, 200 mm (7.874 in) over the waterline"},
		{`"level": "high", "lowerEdgeBelowCeiling": "80 mm"`, "lower edge 80 mm (3.15 in) below ceiling"},
	} {
		g := lockerOf(t, aBox+`, "vents": { "v": { "at": ["1.3 m", "0.2 m", "0 m"], `+c.vent+` } }`, "")
		if !strings.Contains(textOn(g), c.want) {
			t.Errorf("%s: %q does not stand on the drawing:\n%s", c.vent, c.want, textOn(g))
		}
	}
}

// TestAVentWithNoPlace is told to be one, and is not drawn somewhere.
func TestAVentWithNoPlace(t *testing.T) {
	g := lockerOf(t, aBox+`, "vents": { "v": { "level": "low" } }`, "")
	if !strings.Contains(textOn(g), "Not drawn, no position stated: vent v of locker k.") || !strings.Contains(g.Alt, "vent v of locker k") {
		t.Errorf("%s\n%s", textOn(g), g.Alt)
	}
	if len(groups(g.Marks)["/lockers/k/vents/v"]) > 0 {
		t.Error("a vent without a place is drawn")
	}
}

// TestGasThatNeverDrains: what lies below the lowest edge of the vents is hatched as deep as
// it is, and only when that is known.
func TestGasThatNeverDrains(t *testing.T) {
	vents := func(edges ...string) string {
		text := `, "lowestPoint": "0 m", "vents": { "h": { "level": "high", "at": ["1.3 m", "0.2 m", "0.6 m"] }`
		for i, edge := range edges {
			text += `, "` + string(rune('a'+i)) + `": { "level": "low", "at": ["1.3 m", "0.2 m", "0 m"]` + edge + ` }`
		}
		return text + " }"
	}
	const at20, at50, at0 = `, "lowerEdgeOverLowest": "20 mm"`, `, "lowerEdgeOverLowest": "50 mm"`, `, "lowerEdgeOverLowest": "0 mm"`
	for _, c := range []struct {
		vents string
		deep  float64 // m
		says  string
	}{
		{vents(at20, at50), 0.020, "gas 20 mm (0.787 in) deep never drains"},
		{vents(at50), 0.050, "gas 50 mm (1.969 in) deep never drains"},
		{vents(at20, at0), 0, ""},
		{vents(at0, ""), 0, ""},
		{vents(at20, ""), 0, "? depth of gas that can't drain: not known"},
		{vents(""), 0, "? depth of gas that can't drain: not known"},
		{vents(), 0, "? depth of gas that can't drain: not known"},
	} {
		g := lockerOf(t, aBox+c.vents, "")
		if c.says != "" && !strings.Contains(textOn(g), c.says) || c.says == "" && strings.Contains(textOn(g), "drain") {
			t.Errorf("%s: want %q:\n%s", c.vents, c.says, textOn(g))
		}
		deep := 0.0
		for _, h := range groups(g.Marks)["/lockers/k/vents"] {
			if strings.HasPrefix(h.Label, "what never drains") {
				r, _ := Extent(h.Marks)
				deep = r.high() / g.Scale
			}
		}
		if math.Abs(deep-c.deep) > 0.0005 {
			t.Errorf("%s: hatched %v m deep, want %v", c.vents, deep, c.deep)
		}
	}
}

// TestTheWayOutOfALowVent: an arrow out through the wall that the vent is in.
func TestTheWayOutOfALowVent(t *testing.T) {
	for _, c := range []struct {
		wall string
		out  []Point // in plan and in the section from the rear, where the door is
	}{{"floor", []Point{{0, 1}}}, {"left", []Point{{0, 1}, {-1, 0}}}, {"right", []Point{{0, -1}, {1, 0}}}, {"rear", []Point{{1, 0}}}, {"front", []Point{{-1, 0}}}} {
		g := lockerOf(t, aBox+`, "door": { "wall": "rear" }, "vents": { "v": { "level": "low", "wall": "`+c.wall+`", "at": ["1.3 m", "0.2 m", "0 m"] } }`, "")
		var out []Point
		for _, a := range groups(g.Marks)["/lockers/k/vents/v"] {
			if strings.HasPrefix(a.Label, "gas drains") {
				p := a.Marks[0].(*Path).Points
				out = append(out, Point{math.Round((p[1].X - p[0].X) / p[0].to(p[1])), math.Round((p[1].Y - p[0].Y) / p[0].to(p[1]))})
			}
		}
		if len(out) != len(c.out) {
			t.Fatalf("%s: arrows %v, want %v", c.wall, out, c.out)
		}
		for i := range out {
			if out[i] != c.out[i] {
				t.Errorf("%s: arrow %d goes %v, want %v", c.wall, i, out[i], c.out[i])
			}
		}
	}
}

// TestFromWhereTheSectionIsSeen: from the door, else from a long side.
func TestFromWhereTheSectionIsSeen(t *testing.T) {
	const deep = `"box": { "from": ["1 m", "0 m", "0 m"], "to": ["1.3 m", "0.5 m", "0.7 m"] }`
	for members, want := range map[string]string{
		aBox + `, "door": { "wall": "left" }`: "left", aBox + `, "door": { "wall": "front" }`: "front",
		aBox + `, "door": { "wall": "ceiling" }`: "right", aBox: "right", deep: "rear",
	} {
		if g := lockerOf(t, members, ""); g.Title != "Locker k: plan and section, seen from the "+want {
			t.Errorf("%s: %q, want from the %s", members, g.Title, want)
		}
	}
}

// TestOnlyWhatIsInTheLocker: its detail holds what the file puts into it and nothing else.
func TestOnlyWhatIsInTheLocker(t *testing.T) {
	g := lockerOf(t, aBox, `, "cylinders": { "A": { "in": "lockers/k", "at": ["1.3 m", "0.25 m", "0 m"], "diameter": "0.3 m", "height": "0.5 m" }, "B": { "in": "open-air", "at": ["1.2 m", "0.2 m", "0 m"] },
		"C": { "in": "lockers/k" } }, "regulators": { "r": { "in": "lockers/k", "at": ["1.1 m", "0.1 m", "0.6 m"] } }`)
	of := groups(g.Marks)
	if len(of["/cylinders/A"]) < 2 || len(of["/regulators/r"]) < 2 || len(of["/cylinders/B"]) > 0 {
		t.Errorf("A %d, r %d, B %d groups", len(of["/cylinders/A"]), len(of["/regulators/r"]), len(of["/cylinders/B"]))
	}
	if !strings.Contains(g.Alt, "cylinder C") || !strings.Contains(g.Alt, "It shows 1 gas locker, 1 cylinder and 1 regulator.") {
		t.Errorf("the words: %s", g.Alt)
	}
}
