package draw

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/schema/layout"
)

// piped is a layout with nothing but two cylinders, two regulators, two tees, a hob, a
// heater and the given lines: "A>r1 high" is a line from one to the other with its stated
// pressure zone, which may be left out.
func piped(t *testing.T, lines ...string) *layout.Layout {
	t.Helper()
	refs := map[string]string{"A": "cylinders/A", "B": "cylinders/B", "r1": "regulators/r1", "r2": "regulators/r2", "c": "changeovers/c", "d": "changeovers/d",
		"t": "junctions/t", "hob": "appliances/hob", "heater": "appliances/heater"}
	var all, sections []string
	for _, l := range lines {
		way, zone, stated := strings.Cut(l, " ")
		from, to, _ := strings.Cut(way, ">")
		text := `"` + from + "-" + to + `": { "from": "` + refs[from] + `", "to": "` + refs[to] + `"`
		if stated {
			text += `, "pressureClass": "` + zone + `"`
		}
		all = append(all, text+" }")
	}
	for _, section := range [][]string{{"cylinders", "A", "B"}, {"regulators", "r1", "r2"}, {"changeovers", "c", "d"}, {"junctions", "t"}, {"appliances", "hob", "heater"}} {
		var things []string
		for _, id := range section[1:] {
			if used := strings.Join(lines, " ") + " "; strings.Contains(used, ">"+id+" ") || strings.Contains(used, id+">") {
				things = append(things, `"`+id+`": {}`)
			}
		}
		sections = append(sections, `"`+section[0]+`": { `+strings.Join(things, ", ")+` }`)
	}
	return loaded(t, strings.Join(sections, ", ")+`, "lines": { `+strings.Join(all, ", ")+` }`)
}

// TestZoneOfALine: what the file states is never softened, and what stands in a line by
// the way it is joined is never overlooked.
func TestZoneOfALine(t *testing.T) {
	for _, c := range []struct {
		name  string
		lines []string
		want  string
	}{
		{"one regulator", []string{"A>r1", "r1>t", "t>hob", "t>heater"}, "A-r1 high, r1-t low, t-heater low, t-hob low"},
		{"no regulator", []string{"A>t low", "t>hob low"}, "A-t high!, t-hob high!"},
		{"a cylinder that the file calls high has no warning", []string{"A>r1 high", "r1>hob low"}, "A-r1 high, r1-hob low"},
		{"two stages", []string{"A>r1", "r1>t low", "t>r2 low", "r2>hob"}, "A-r1 high, r1-t middle, r2-hob low, t-r2 middle"},
		{"a second cylinder behind the regulator", []string{"A>r1 high", "r1>c low", "B>c high", "c>t low", "t>hob low"}, "A-r1 high, B-c high, c-t high!, r1-c high!, t-hob high!"},
		{"a second cylinder before the regulator", []string{"A>c high", "B>c high", "c>r1 high", "r1>hob"}, "A-c high, B-c high, c-r1 high, r1-hob low"},
		{"a regulator for each cylinder", []string{"A>r1", "B>r2", "r1>c", "r2>c", "c>hob"}, "A-r1 high, B-r2 high, c-hob low, r1-c low, r2-c low"},
		{"a way round the regulator", []string{"A>c", "c>r1", "c>d", "r1>d low", "d>hob low"}, "A-c high!, c-d high!, c-r1 high!, d-hob high!, r1-d high!"},
		{"no cylinder is known to feed it", []string{"r1>t low", "t>hob"}, "r1-t low, t-hob "},
		{"stated harder than derived", []string{"A>r1 high", "r1>hob high"}, "A-r1 high, r1-hob high"},
		{"stated middle behind the last", []string{"A>r1 high", "r1>hob middle"}, "A-r1 high, r1-hob middle"},
	} {
		l := piped(t, c.lines...)
		z := zonesOf(l)
		var got []string
		for _, line := range l.Lines.All() {
			sign := ""
			if z.worsened(line) {
				sign = "!"
			}
			got = append(got, line.ID()+" "+string(z.of(line))+sign)
		}
		if text := strings.Join(got, ", "); text != c.want {
			t.Errorf("%s: %s, want %s", c.name, text, c.want)
		}
	}
}

// TestNothingStatedSoftensAZone: whatever the file claims of the pressure in its lines, the
// same lines are at cylinder pressure, and the same appliances can be reached by it.
func TestNothingStatedSoftensAZone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		var bare, claimed []string
		for _, way := range []string{"A>r1", "r1>c", "B>c", "c>t", "t>hob", "t>r2", "r2>heater"} {
			bare = append(bare, way)
			if zone := rapid.SampledFrom([]string{"", "low", "middle", "high"}).Draw(rt, way); zone != "" {
				way += " " + zone
			}
			claimed = append(claimed, way)
		}
		l, m := piped(t, bare...), piped(t, claimed...)
		y, z := zonesOf(l), zonesOf(m)
		for i, line := range m.Lines.All() {
			plain, stated := y.of(l.Lines.All()[i]), z.of(line)
			if claim, _ := line.Zone.Get(); harder(plain, stated) || harder(claim, stated) {
				rt.Fatalf("%s: %q without a claim, %q with the claim %q", line.ID(), plain, stated, claim)
			}
		}
		if got := Unregulated(m); !slices.Equal(got, []layout.Ref{"appliances/hob"}) {
			rt.Fatalf("reached by cylinder pressure: %v", got)
		}
	})
}

// TestFaultyDrawingsWarn: in the layout with a cylinder behind its regulator, every drawing
// that shows such a line says so on the paper and in the words.
func TestFaultyDrawingsWarn(t *testing.T) {
	d := demos.One(t, "sorrel-faulty")
	why := "cylinder B joins behind regulator main"
	all := append(drawings(d), Schematic(d.Layout, d.Report))
	for _, g := range all {
		if !strings.Contains(g.Alt, reachesHere) || !strings.Contains(g.Alt, why) {
			t.Errorf("%s: the words do not warn: %s", g.ID, g.Alt)
		}
		if text := textOn(g); !strings.Contains(text, reachesHere) || !strings.Contains(text, why) || !strings.Contains(text, "DANGER") {
			t.Errorf("%s: the paper does not warn", g.ID)
		}
	}
	z := zonesOf(d.Layout)
	for _, id := range []string{"trunk", "y-to-block", "to-hob", "to-water", "to-fridge", "to-heater", "to-old-oven"} {
		line := d.Layout.Lines.Get(id)
		if z.of(line) != layout.PressureZoneHigh || !z.worsened(line) {
			t.Errorf("%s: %q", id, z.of(line))
		}
	}
	if got := Unregulated(d.Layout); len(got) != 4 {
		t.Errorf("reached by cylinder pressure: %v", got)
	}
	sound := demos.One(t, "sorrel")
	if len(zonesOf(sound.Layout).warned()) > 0 || len(Unregulated(sound.Layout)) > 0 {
		t.Error("the sound demonstration is warned of")
	}
}

// TestNoPressureIsDrawnWhereNoneHolds: behind a regulator that cylinder pressure can get
// round there is no curve, and the reason is told.
func TestNoPressureIsDrawnWhereNoneHolds(t *testing.T) {
	demo := demos.One(t, "sorrel-faulty")
	drawn, why := Pressures(demo.Layout, demo.Report)
	want := "Not drawn for regulator main: gas at cylinder pressure can reach the lines behind it, so no figure behind it holds."
	if len(drawn) > 0 || !slices.Equal(why, []string{want}) {
		t.Errorf("%d drawings, %q", len(drawn), why)
	}
}

// TestZonesDifferWithoutWidth: what tells high from low is a pattern: cross ticks that no
// other line has, however short the line.
func TestZonesDifferWithoutWidth(t *testing.T) {
	for _, long := range []float64{1, 2, 5, 40} {
		high, low := zoneLine(layout.PressureZoneHigh, Point{0, 0}, Point{long, 0}), zoneLine(layout.PressureZoneLow, Point{0, 0}, Point{long, 0})
		if len(high) < 2 || len(low) != 1 {
			t.Errorf("%g mm: %d marks at cylinder pressure, %d at low", long, len(high), len(low))
		}
	}
	if n := len(zoneLine(layout.PressureZoneHigh, Point{1, 1}, Point{1, 1})); n != 1 {
		t.Errorf("a line without length has %d marks", n)
	}
}
