package draw

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// symbolAt is the middle of a thing's symbol on a schematic, with its extent.
func symbolAt(t tester, g *Drawing, section, pointer string) (Point, Rectangle) {
	t.Helper()
	of := groups(g.Marks)[pointer]
	if len(of) != 1 {
		t.Fatalf("%s is drawn %d times", pointer, len(of))
	}
	n := len(symbolOf(section, Point{}))
	r, _ := Extent(of[0].Marks[:n])
	middle, _ := Extent(symbolOf(section, Point{}))
	return Point{r.Left - middle.Left, r.Top - middle.Top}, r
}

// tester is a test, or the check of a property.
type tester interface {
	Helper()
	Fatalf(string, ...any)
	Errorf(string, ...any)
}

// followed holds what any schematic must keep: each line goes from the symbol of one thing to
// that of the next, level and upright only, to the right; no two things stand on one
// another; each joint has its ring and its number, each shut-off its sign.
func followed(t tester, name string, l *layout.Layout, g *Drawing) {
	t.Helper()
	var taken []Rectangle
	seen := map[layout.Ref]bool{}
	at := func(ref layout.Ref) Point {
		p, r := symbolAt(t, g, ref.Section(), "/"+string(ref))
		if !seen[ref] {
			for _, other := range taken {
				if r.Overlaps(other) {
					t.Errorf("%s: %s stands on another thing", name, ref)
				}
			}
			seen[ref], taken = true, append(taken, r)
		}
		return p
	}
	numbers := map[string]int{}
	for _, line := range l.Lines.All() {
		of := groups(g.Marks)[line.Spot().Pointer()]
		if len(of) != 1 {
			t.Fatalf("%s: %s is drawn %d times", name, line.Label(), len(of))
		}
		from, _ := line.From.Get()
		to, _ := line.To.Get()
		a, b := at(from), at(to)
		way := of[0].Marks[0].(*Path).Points
		if way[0].to(a) > 0.01 || way[len(way)-1].to(b) > 0.01 || a.X >= b.X {
			t.Errorf("%s: %s goes from %v to %v, its ends stand at %v and %v", name, line.Label(), way[0], way[len(way)-1], a, b)
		}
		for i := 1; i < len(way); i++ {
			if p, q := way[i-1], way[i]; math.Abs(p.X-q.X) > 0.001 && math.Abs(p.Y-q.Y) > 0.001 || q.X < p.X-0.001 {
				t.Errorf("%s: %s goes aslant or back, from %v to %v", name, line.Label(), p, q)
			}
		}
		rings, valves := 0, 0
		for _, m := range of[0].Marks {
			switch m := m.(type) {
			case *Circle:
				rings++
				if !onWay(way, m.Centre) {
					t.Errorf("%s: a joint of %s stands off it, at %v", name, line.Label(), m.Centre)
				}
			case *Path:
				if m.Closed && len(m.Points) == 4 && m.Points[1].X == m.Points[0].X && m.Points[3].X == m.Points[2].X && m.Pen.Width > 0 {
					valves++
				}
			case *Text:
				if _, err := strconv.Atoi(m.Content); err == nil && m.Anchor == Middle {
					numbers[m.Content]++
				}
			}
		}
		if rings != len(line.Joints.All()) || valves != len(line.Shutoffs.All()) {
			t.Errorf("%s: %s has %d joints and %d shut-offs, and %d and %d are drawn", name, line.Label(), len(line.Joints.All()), len(line.Shutoffs.All()), rings, valves)
		}
	}
	for _, j := range Joints(l) {
		if numbers[strconv.Itoa(j.Number)] != 1 {
			t.Errorf("%s: the number %d stands %d times", name, j.Number, numbers[strconv.Itoa(j.Number)])
		}
	}
}

// onWay tells whether a point lies on a way.
func onWay(way []Point, p Point) bool {
	for i := 1; i < len(way); i++ {
		if spanning(way[i-1], way[i]).grown(0.02).nearest(p) == p {
			return true
		}
	}
	return false
}

func TestTheSchematicFollowsTheGas(t *testing.T) {
	drawn := 0
	for _, d := range demos.All(t) {
		if g := Schematic(d.Layout, d.Report); g != nil {
			drawn++
			followed(t, d.Name, d.Layout, g)
		}
	}
	if drawn < 5 {
		t.Errorf("%d schematics: the test says little", drawn)
	}
}

// TestAnySchematicFollowsTheGas: of trees of lines of any shape, with joints and shut-offs.
func TestAnySchematicFollowsTheGas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := aTree(t)
		g := Schematic(l, &report.FileReport{})
		if g == nil {
			t.Fatalf("no schematic")
		}
		followed(t, "a tree", l, g)
		if r, _ := Extent(g.Marks); !r.Within(Rectangle{0, 0, g.Width, g.Height}) {
			t.Fatalf("marks reach over %v of %v by %v", r, g.Width, g.Height)
		}
		noTwoTextsOverlap(t, g)
		for _, line := range l.Lines.All() {
			if !strings.Contains(g.Alt, line.ID()+", ") {
				t.Fatalf("the words do not tell of %s: %s", line.Label(), g.Alt)
			}
		}
	})
}

// aTree is cylinders joined by a changeover, or one alone, a regulator, and a tree of
// junctions that ends in appliances.
func aTree(t *rapid.T) *layout.Layout {
	var lines []string
	sections := map[string][]string{}
	thing := func(section string) string {
		id := fmt.Sprint("t", len(sections[section]))
		sections[section] = append(sections[section], `"`+id+`": {}`)
		return section + "/" + id
	}
	join := func(from, to string) {
		var parts []string
		for i := range rapid.IntRange(0, 3).Draw(t, "joints") {
			parts = append(parts, fmt.Sprintf(`"j%d": {}`, i))
		}
		text := fmt.Sprintf(`"l%d": { "from": %q, "to": %q, "joints": { %s }`, len(lines), from, to, strings.Join(parts, ", "))
		if rapid.Bool().Draw(t, "shut-off") {
			text += `, "shutoffs": { "v": { "kind": "manual-valve" } }`
		}
		lines = append(lines, text+" }")
	}
	supply := thing("cylinders")
	if more := rapid.IntRange(0, 2).Draw(t, "more cylinders"); more > 0 {
		changeover := thing("changeovers")
		join(supply, changeover)
		for range more {
			join(thing("cylinders"), changeover)
		}
		supply = changeover
	}
	regulator := thing("regulators")
	join(supply, regulator)
	var grow func(string, int)
	grow = func(from string, deep int) {
		if deep == 0 || rapid.IntRange(0, 2).Draw(t, "ends") == 0 {
			join(from, thing("appliances"))
			return
		}
		junction := thing("junctions")
		join(from, junction)
		for range rapid.IntRange(1, 3).Draw(t, "parts") {
			grow(junction, deep-1)
		}
	}
	grow(regulator, 3)
	var members []string
	for _, section := range []string{"cylinders", "changeovers", "regulators", "junctions", "appliances"} {
		if len(sections[section]) > 0 {
			members = append(members, fmt.Sprintf("%q: { %s }", section, strings.Join(sections[section], ", ")))
		}
	}
	return loadedIn(t, strings.Join(append(members, `"lines": { `+strings.Join(lines, ", ")+` }`), ", "))
}

// TestWhatStandsByThingsAndLines: what the file states, in both systems of units, and for
// all that it leaves out that it is not known.
func TestWhatStandsByThingsAndLines(t *testing.T) {
	for _, c := range []struct{ things, line, want string }{
		{`"cylinders": { "a": {} }`, "", "propane not known"},
		{`"cylinders": { "a": { "propane": "20 lb" } }`, "", "propane 9.1 kg (20 lb)"},
		{`"cylinders": { "a": {} }, "regulators": { "r": {} }`, "regulators/r", "outlet not known"},
		{`"cylinders": { "a": {} }, "regulators": { "r": { "outlet": "30 mbar" } }`, "regulators/r", "outlet 3 kPa (12 inH2O)"},
		{`"cylinders": { "a": {} }, "regulators": { "r": {} }`, "regulators/r", "passes not known"},
		{`"cylinders": { "a": {} }, "regulators": { "r": { "capacity": "15 kW" } }`, "regulators/r", "passes 15 kW"},
		{`"cylinders": { "a": {} }, "regulators": { "r": { "capacityByMass": "1.5 kg/h" } }`, "regulators/r", "passes 1.5 kg/h"},
		{`"appliances": { "hob": {} }`, "", "not known, burns not known"},
		{`"appliances": { "hob": {} }`, "", "no line to it is stated"},
		{`"appliances": { "hob": { "kind": "space-heater", "plate": { "input": "2.2 kW" } } }`, "", "space heater, 2.2 kW"},
		{`"appliances": { "hob": { "kind": "cooktop", "plate": { "consumption": "160 g/h" } } }`, "", "cooktop, burns 160 g/h"},
		{`"cylinders": { "a": {} }, "openEnds": { "e": { "end": "cap" } }`, "openEnds/e", "end: cap"},
		{`"cylinders": { "a": {} }, "openEnds": { "e": {} }`, "openEnds/e", "end: not known"},
	} {
		members := c.things
		if c.line != "" {
			members += `, "appliances": { "z": {} }, "lines": { "x": { "from": "cylinders/a", "to": "` + c.line + `" }`
			if strings.HasPrefix(c.line, "regulators/") {
				members += `, "y": { "from": "` + c.line + `", "to": "appliances/z" }`
			}
			members += " }"
		}
		g := Schematic(loaded(t, members), &report.FileReport{})
		if !strings.Contains(textOn(g), c.want) {
			t.Errorf("%s: %q does not stand on the schematic:\n%s", c.things, c.want, textOn(g))
		}
	}
	for line, want := range map[string][]string{
		``:                       {"x", "kind not known, size not known", "length not known"},
		`, "kind": "direct"`:     {"x", "screwed together"},
		`, "kind": "steel-pipe"`: {"steel pipe, size not known"},
		`, "kind": "copper", "outside": "3/8 in"`: {"copper, outside 3/8 in"},
		`, "nominal": "1/2"`:                      {"kind not known, nominal 1/2"},
		`, "length": "8 ft 6 in"`:                 {"length 8 ft 6 in"},
	} {
		g := Schematic(loaded(t, `"cylinders": { "a": {} }, "regulators": { "r": {} }, "appliances": { "z": {} }, "lines": { "x": { "from": "cylinders/a", "to": "regulators/r"`+line+` }, "y": { "from": "regulators/r", "to": "appliances/z" } }`), &report.FileReport{})
		var beside []string
		for _, text := range textsOf(groups(g.Marks)["/lines/x"][0].Marks) {
			beside = append(beside, text.Content)
		}
		for _, each := range want {
			if !slices.Contains(beside, each) {
				t.Errorf("%s: %q does not stand beside the line: %q", line, each, beside)
			}
		}
	}
}

// TestTheReportsFiguresStandOnTheSchematic: the load of a line and the pressure that an
// appliance gets, each of its own subject and of no other.
func TestTheReportsFiguresStandOnTheSchematic(t *testing.T) {
	l := loaded(t, `"cylinders": { "a": {} }, "regulators": { "r": {} }, "appliances": { "z": {} }, "lines": { "x": { "from": "cylinders/a", "to": "regulators/r" }, "y": { "from": "regulators/r", "to": "appliances/z" } }`)
	figure := func(id, subject, text string) report.Figure {
		return report.Figure{ID: id, Subject: subject, Value: &report.Amount{Text: text}}
	}
	g := Schematic(l, &report.FileReport{Figures: []report.Figure{figure("line.load", "/lines/x", "7 kW"), figure("line.load", "/lines/elsewhere", "8 kW"),
		figure("appliance.running-pressure", "/appliances/z", "27 mbar"), figure("other", "/appliances/z", "9 kW"), {ID: "line.load", Subject: "/lines/y"}}})
	text := textOn(g)
	for want, stands := range map[string]bool{"load 7 kW": true, "load 8 kW": false, "all on 27 mbar": true, "9 kW": false} {
		if strings.Contains(text, want) != stands {
			t.Errorf("%q stands on it: %v:\n%s", want, !stands, text)
		}
	}
	if beside := textOn(&Drawing{Marks: groups(g.Marks)["/lines/y"][0].Marks}); strings.Contains(beside, "load") {
		t.Errorf("a load that was not reckoned: %s", beside)
	}
}

// TestTheOrderOfFittingsAlongALine: the first joint at its beginning, then the shut-offs,
// then the other joints to its end.
func TestTheOrderOfFittingsAlongALine(t *testing.T) {
	for _, c := range []struct{ joints, valves string }{{"", ""}, {`"a": {}`, ""}, {`"a": {}, "b": {}, "c": {}`, `"v": { "kind": "manual-valve" }, "w": { "kind": "solenoid" }`}, {"", `"v": {}`}, {`"a": {}`, `"v": {}`}} {
		g := Schematic(loaded(t, `"cylinders": { "a": {} }, "appliances": { "z": {} }, "lines": { "x": { "from": "cylinders/a", "to": "appliances/z", "joints": { `+c.joints+` }, "shutoffs": { `+c.valves+` } } }`), &report.FileReport{})
		var order []string
		last := math.Inf(-1)
		marks := groups(g.Marks)["/lines/x"][0].Marks
		along := map[float64]string{}
		for _, m := range marks {
			switch m := m.(type) {
			case *Circle:
				along[m.Centre.X] += "joint"
			case *Path:
				if m.Closed && len(m.Points) == 4 && m.Points[1].X == m.Points[0].X && m.Pen.Width > 0 {
					along[(m.Points[0].X+m.Points[2].X)/2] += "valve"
				}
			}
		}
		var xs []float64
		for x := range along {
			xs = append(xs, x)
		}
		slices.Sort(xs)
		for _, x := range xs {
			order = append(order, along[x])
			if x-last < 2 {
				t.Errorf("%s, %s: two fittings %v mm apart", c.joints, c.valves, x-last)
			}
			last = x
		}
		joints, valves := strings.Count(c.joints, "{"), strings.Count(c.valves, "{")
		var want []string
		for i := range joints {
			want = append(want, "joint")
			if i == 0 {
				want = append(want, slices.Repeat([]string{"valve"}, valves)...)
			}
		}
		if joints == 0 {
			want = slices.Repeat([]string{"valve"}, valves)
		}
		if !slices.Equal(order, want) {
			t.Errorf("%s, %s: %q, want %q", c.joints, c.valves, order, want)
		}
	}
}

// TestWordsStandByTheirThing: what is told of the thing where the gas ends stands to its
// right, about its height; of all others over it. None lies on a symbol.
func TestWordsStandByTheirThing(t *testing.T) {
	for _, d := range demos.All(t) {
		g := Schematic(d.Layout, d.Report)
		if g == nil {
			continue
		}
		for _, line := range d.Layout.Lines.All() {
			to, _ := line.To.Get()
			at, r := symbolAt(t, g, to.Section(), "/"+string(to))
			for _, text := range textsOf(groups(g.Marks)["/"+string(to)][0].Marks) {
				b := text.Bounds()
				if b.Overlaps(r) {
					t.Errorf("%s: %q lies on the symbol of %s", d.Name, text.Content, to)
				}
				switch last := len(d.Layout.LeadsTo(to)) == 0; {
				case last && (b.Left < r.Right || math.Abs(b.centre().Y-at.Y) > 3*schematicLead):
					t.Errorf("%s: %q stands at %v, its thing ends the gas at %v", d.Name, text.Content, b, at)
				case !last && b.Bottom > r.Top+0.5:
					t.Errorf("%s: %q stands at %v, and not over %v", d.Name, text.Content, b, r)
				}
			}
		}
	}
}
