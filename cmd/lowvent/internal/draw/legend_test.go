package draw

import (
	"slices"
	"strings"
	"testing"

	"lowvent.example/schema/report"
)

// The two lines that the legend of a plan always has, or has where the origin is on it.
const (
	dashedMeans = "dashed outline: hidden by a floor, a wall or what stands before it"
	originMeans = "where the file's lengths begin: x to the rear, y to the right, z up"
)

const (
	pointAt = `"at": ["1 m", "1 m", "1 m"]`
	boxAt   = `"box": { "from": ["1 m", "1 m", "0 m"], "to": ["2 m", "1.5 m", "1 m"] }`
)

// TestTheLegendHasWhatIsDrawnAndNothingElse: of each kind of thing alone on a drawing, the
// legend explains its sign, and no other; and the schedule of the numbers tells what of it
// the file does not state.
func TestTheLegendHasWhatIsDrawnAndNothingElse(t *testing.T) {
	for _, c := range []struct {
		members string
		legend  []string
		means   string // in the schedule
	}{
		{`"spaces": { "x": { ` + boxAt + ` } }`, []string{"space, its inner faces"}, "space x: use not stated"},
		{`"spaces": { "x": { "use": "hull-void", ` + boxAt + ` } }`, []string{"space, its inner faces"}, "space x: hull void"},
		{`"lockers": { "x": { ` + boxAt + ` } }`, []string{"gas locker, its inner faces"}, "locker x"},
		{`"combustibles": { "x": { ` + boxAt + ` } }`, []string{"something that burns: wall, cabinet, curtain, bedding"}, "combustible x: kind not stated"},
		{`"combustibles": { "x": { "kind": "curtain", ` + pointAt + ` } }`, nil, "combustible x: curtain"},
		{`"stoves": { "x": { ` + boxAt + ` } }`, []string{"stove for solid fuel"}, "stove x: fuel not stated"},
		{`"exhausts": { "x": { "kind": "generator", ` + boxAt + ` } }`, []string{"engine, generator or fuel heater"}, "exhaust x: generator"},
		{`"exhausts": { "x": { "outlet": ["2 m", "1 m", "0 m"], ` + boxAt + ` } }`, []string{"engine, generator or fuel heater", "end of an exhaust"}, "exhaust x: kind not stated"},
		{`"storedGoods": { "x": { ` + boxAt + ` } }`, []string{"stored goods"}, "stored x: kind not stated"},
		{`"appliances": { "x": { ` + boxAt + ` } }`, []string{"gas appliance"}, "appliance x: kind not stated"},
		{`"appliances": { "x": { "kind": "cooktop", "clearances": { "above": "0.5 m" }, ` + boxAt + ` } }`, []string{"gas appliance", "room that an appliance's plate asks to be kept clear of what burns"}, "appliance x: cooktop"},
		{`"appliances": { "x": { "clearances": { "sides": "0.5 m" }, ` + boxAt + ` } }`, []string{"gas appliance"}, "appliance x: kind not stated"}, // which way it faces is not stated
		{`"ignitionSources": { "x": { "kind": "fuse-panel", ` + pointAt + ` } }`, []string{"ignition source"}, "ignition source x: fuse panel"},
		{`"ignitionSources": { "x": { ` + pointAt + ` } }`, []string{"ignition source"}, "ignition source x: kind not stated"},
		{`"fans": { "x": { ` + pointAt + ` } }`, []string{"fan"}, "fan x: direction not stated"},
		{`"alarms": { "x": { ` + pointAt + ` } }`, []string{"alarm, kind not stated"}, "alarm x: kind not stated"},
		{`"alarms": { "x": { "kind": "propane", ` + pointAt + ` } }`, []string{"alarm, propane"}, "alarm x: propane"},
		{`"alarms": { "x": { "kind": "carbon-monoxide", ` + pointAt + ` } }`, []string{"alarm, carbon monoxide"}, "alarm x: carbon monoxide"},
		{`"alarms": { "x": { "kind": "smoke", ` + pointAt + ` } }`, []string{"alarm, smoke"}, "alarm x: smoke"},
		{`"extinguishers": { "x": { ` + pointAt + ` } }`, []string{"extinguisher or fire blanket"}, "extinguisher x"},
		{`"openings": { "x": { "kind": "floor-drain", ` + pointAt + ` } }`, []string{"opening: hatch, drain, cable entry, filler"}, "opening x: floor drain"},
		{`"openings": { "x": { "kind": "window", ` + boxAt + ` } }`, []string{"opening: hatch, drain, cable entry, filler", "door, window or hatch in a wall"}, "opening x: window"},
		{`"fixedVents": { "x": { ` + pointAt + ` } }`, []string{"vent, level not stated"}, "fixed vent x: level not stated, what it ends in is not known"},
		{`"fixedVents": { "x": { "level": "low", "endsIn": { "kind": "open-air" }, ` + pointAt + ` } }`, []string{"vent, low"}, "fixed vent x: low, ends in open air"},
		{`"fixedVents": { "x": { "level": "high", "endsIn": { "kind": "overboard" }, ` + pointAt + ` } }`, []string{"vent, high"}, "fixed vent x: high, ends overboard"},
		{`"lockers": { "k": { "vents": { "x": { "level": "low", ` + pointAt + ` } } } }`, []string{"vent, low"}, "vent x: low, what it ends in is not known"},
		{`"lockers": { "k": { "vents": { "x": { "endsAt": ["1 m", "1 m", "0 m"] } } } }`, []string{"vent, level not stated", "where a locker's vent ends"}, "vent x: level not stated, what it ends in is not known"},
		{`"flues": { "x": { "terminal": { ` + pointAt + ` } } }`, []string{"end of a flue"}, "flue x: kind not stated"},
		{`"flues": { "x": { "kind": "room-sealed", "terminal": { ` + pointAt + ` }, "intake": { ` + pointAt + ` } } }`, []string{"end of a flue", "air intake of a flue"}, "flue x: room sealed"},
		{`"junctions": { "x": { ` + pointAt + ` } }`, []string{"tee, manifold or valve block"}, "junction x: kind not stated"},
		{`"openEnds": { "x": { ` + pointAt + ` } }`, []string{"open end of a gas line"}, "open end x: how it is closed not stated"},
		{`"outdoorOutlets": { "x": { ` + pointAt + ` } }`, []string{"outdoor gas outlet"}, "outdoor outlet x"},
		{`"fillPoints": { "x": { ` + pointAt + ` } }`, []string{"fill point"}, "fill point x"},
		{`"changeovers": { "x": { ` + pointAt + ` } }`, []string{"changeover"}, "changeover x"},
		{`"regulators": { "x": { ` + pointAt + ` } }`, []string{"regulator"}, "regulator x"},
		{`"cylinders": { "x": { ` + pointAt + ` } }`, []string{"gas cylinder"}, "cylinder x: role not stated, its size is not known"},
		{`"cylinders": { "x": { "role": "spare", "diameter": "0.3 m", "height": "0.5 m", ` + pointAt + ` } }`, []string{"gas cylinder"}, "cylinder x: spare"},
		{`"cylinders": { "x": { "diameter": "0.3 m", ` + pointAt + ` } }`, []string{"gas cylinder"}, "cylinder x: role not stated, its size is not known"},
	} {
		l := loaded(t, c.members)
		for _, g := range []*Drawing{Plan(l, nil), Elevation(l, nil)} {
			var got []string
			for _, k := range g.Key {
				if k.Means != dashedMeans && k.Means != originMeans {
					got = append(got, k.Means)
				}
			}
			if !slices.Equal(got, c.legend) {
				t.Errorf("%s, %s: the legend is %q, want %q", c.members, g.ID, got, c.legend)
			}
		}
		if things := sceneOf(l).things; len(things) != 1 || things[0].means != c.means {
			t.Errorf("%s: told as %q, want %q", c.members, things[0].means, c.means)
		}
	}
}

// TestTheLegendOfLines: each pressure zone that occurs has its pattern in the legend, the
// one that is not known too.
func TestTheLegendOfLines(t *testing.T) {
	line := func(id, from, to, more string) string {
		return `"` + id + `": { "from": "` + from + `", "to": "` + to + `", "route": [["0 m", "0 m", "0 m"], ["1 m", "0 m", "0 m"]]` + more + ` }`
	}
	const things = `"cylinders": { "a": {} }, "regulators": { "r": {} }, "appliances": { "hob": {} }, "junctions": { "j": {} }, "lines": { `
	for _, c := range []struct {
		lines string
		want  []string
	}{
		{line("x", "junctions/j", "appliances/hob", ""), []string{zoneMeans("")}},
		{line("x", "cylinders/a", "appliances/hob", ""), []string{zoneMeans("high")}},
		{line("x", "cylinders/a", "regulators/r", "") + ", " + line("y", "regulators/r", "appliances/hob", ""), []string{zoneMeans("high"), zoneMeans("low")}},
		{line("x", "junctions/j", "appliances/hob", `, "pressureClass": "middle"`), []string{zoneMeans("middle")}},
	} {
		g := Plan(loaded(t, things+c.lines+" }"), nil)
		var got []string
		for _, k := range g.Key {
			for _, zone := range []string{"high", "middle", "low", ""} {
				if k.Means == zoneMeans(zoneOf(zone)) {
					got = append(got, k.Means)
				}
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: the legend has %q, want %q", c.lines, got, c.want)
		}
	}
}

// TestTheLegendOfDistances: where one is dimensioned the legend explains it, and the sloping
// one, and the box about a cylinder in the plan alone; else none of them.
func TestTheLegendOfDistances(t *testing.T) {
	const members = `"cylinders": { "a": { "diameter": "0.3 m", "height": "0.5 m", "at": ["0 m", "0 m", "0 m"] } }, "ignitionSources": { "s": { "at": ["1 m", "0 m", "0 m"] } }`
	metres, needed := 0.85, 1.5
	amount := func(v *float64) *report.Amount { return &report.Amount{Kind: "length", SI: v, Text: "that far"} }
	f := &report.FileReport{Findings: []report.Finding{{Check: "c", Subject: "/ignitionSources/s", Word: report.Warning, Outcome: report.NotMet,
		Parts: []report.Part{{Outcome: report.NotMet, Found: amount(&metres), Needed: amount(&needed),
			Inputs: []report.Input{{Pointer: "/cylinders/a/at"}, {Pointer: "/ignitionSources/s/at"}}}}}}}
	l := loaded(t, members)
	const about = "box round a cylinder, to which distances are taken"
	for _, c := range []struct {
		g    *Drawing
		want []string
	}{
		{Plan(l, f), []string{"distance that is not as needed", "the same, sloping: not seen at its true length", about}},
		{Elevation(l, f), nil}, {Plan(l, nil), nil},
	} {
		var got []string
		for _, k := range c.g.Key {
			if strings.Contains(k.Means, "distance") || strings.Contains(k.Means, "sloping") {
				got = append(got, k.Means)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.g.ID, got, c.want)
		}
	}
	boxes := 0
	for _, m := range groups(Plan(l, f).Marks)["/ignitionSources/s"] {
		for _, p := range m.Marks {
			if path, is := p.(*Path); is && path.Pen.Dash == Dotted && path.Closed {
				boxes++
			}
		}
	}
	if boxes != 1 {
		t.Errorf("%d boxes about the one cylinder that a distance goes to", boxes)
	}
}
