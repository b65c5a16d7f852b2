package vent_test

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/gas"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
	"lowvent.example/vent"
	"lowvent.example/vent/box"
)

var update = flag.Bool("update", false, "rewrite the expected verdicts beside the demos and in the hazards; read the changes before you keep them")

const (
	layoutsFolder = "../testdata/layouts/"
	sorrelFile    = layoutsFolder + "sorrel.json"
	tealFile      = layoutsFolder + "teal.json"
	faultyFile    = layoutsFolder + "sorrel-faulty.json"
)

func allChecks() check.Set { return check.Join(gas.Checks(), vent.Checks()) }

func readDemo(t testing.TB, path string) *layout.Layout {
	t.Helper()
	l, faults := layout.ReadFile(path)
	if faults != nil {
		t.Fatal(faults)
	}
	return l
}

// judged runs every check over a layout by the code that it names, on the day
// that its papers were made for.
func judged(t testing.TB, l *layout.Layout) check.Result {
	t.Helper()
	name, _ := l.Where.Code.Get()
	codes, err := code.Use(name)
	if err != nil {
		t.Fatal(err)
	}
	day, err := unit.ParseDate("2026-11-25")
	if err != nil {
		t.Fatal(err)
	}
	result, err := check.Run(context.Background(), allChecks().WithoutDetail(), l, codes, check.Options{On: day, Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	return result
}

// subjectOf writes a finding's subject as the hazards and goldens do.
func subjectOf(f report.Finding) string {
	if f.Subject == "" {
		return "dwelling"
	}
	return strings.TrimPrefix(f.Subject, "/")
}

// verdict is a finding in one line, without the words and figures that may be
// put better one day.
func verdict(f report.Finding) string {
	return strings.TrimSpace(fmt.Sprintf("%s %s %s %s", f.Check, subjectOf(f), f.Outcome, f.Reason))
}

func verdicts(r check.Result) []string {
	var lines []string
	for _, f := range r.Findings {
		lines = append(lines, verdict(f))
	}
	slices.Sort(lines)
	return lines
}

// Nothing that could hurt anybody may be found in a good demo, and nothing in it
// may be left open: else no hazard patched onto it could be told apart.
func TestGoodDemosHaveNothingAmiss(t *testing.T) {
	for _, path := range []string{sorrelFile, tealFile} {
		t.Run(filepath.Base(path), func(t *testing.T) {
			toProve := 0
			for _, f := range judged(t, readDemo(t, path)).Findings {
				switch {
				case f.Outcome == report.NotKnown:
					t.Errorf("not known: %s, missing %v", verdict(f), f.Parts[0].Missing)
				case f.Counts(report.Warning):
					t.Errorf("counts towards the exit status: %s", verdict(f))
				case f.Outcome == report.NotMet && f.Waiver == nil:
					t.Errorf("not met and not waived: %s", verdict(f))
				case f.Reason == report.ToProve:
					toProve++
				}
			}
			if toProve < 5 {
				t.Errorf("%d findings for the fitter to prove; a demo in which hardly anything rests on a fitter's proof shows the wrong thing", toProve)
			}
		})
	}
}

// Each check must have something to say of Sorrel, so that a change in any of
// them shows in the golden.
func TestSorrelIsAskedEveryCheck(t *testing.T) {
	answered := map[string]bool{}
	for _, f := range judged(t, readDemo(t, sorrelFile)).Findings {
		asked := f.Reason != report.NoSubject
		answered[f.Check] = answered[f.Check] || asked
	}
	silent := map[string]string{"line.open-end": "Sorrel has no open end; Teal has a capped one", "outdoor-outlet.place": "Sorrel has no outlet outside; Teal has one",
		"fill-point.place": "Sorrel has no fill point; Teal has one", "room.solid-fuel": "Sorrel has no stove; Teal has one"}
	for _, c := range allChecks().Checks {
		if !answered[c.ID] && silent[c.ID] == "" {
			t.Errorf("%s says nothing of any thing of Sorrel", c.ID)
		}
	}
}

func TestTealsWaiverIsInForce(t *testing.T) {
	result := judged(t, readDemo(t, tealFile))
	var states []string
	for _, w := range result.Waivers {
		states = append(states, w.ID+" "+w.State)
	}
	if diff := cmp.Diff([]string{"range-sum " + report.WaiverInForce}, states); diff != "" {
		t.Error(diff)
	}
}

func TestDemoVerdicts(t *testing.T) {
	for _, path := range []string{sorrelFile, tealFile, faultyFile} {
		t.Run(filepath.Base(path), func(t *testing.T) {
			got := strings.Join(verdicts(judged(t, readDemo(t, path))), "\n") + "\n"
			golden := strings.TrimSuffix(path, ".json") + ".want"
			if *update {
				if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(golden)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); diff != "" {
				t.Errorf("verdicts (-want +got):\n%s", diff)
			}
		})
	}
}

// TestFaultyDemoIsFoundOut names each fault that was built in and the finding
// that must speak of it, whatever else is found.
func TestFaultyDemoIsFoundOut(t *testing.T) {
	found := verdicts(judged(t, readDemo(t, faultyFile)))
	for fault, want := range map[string]string{
		"a spare cylinder in the galley cupboard":     "cylinder.outside-living cylinders/spare not-met",
		"a cylinder in service in an underfloor bay":  "cylinder.in-locker cylinders/B not-met",
		"a cylinder filled until no more would go in": "cylinder.fill cylinders/A not-met",
		"a low vent too small, over a mat":            "locker.low-vent lockers/skirt not-met",
		"a slide in the high vent":                    "locker.high-vent lockers/skirt not-met",
		"a conduit from the locker into the bay":      "locker.sealed lockers/skirt not-met",
		"the pipe through a rubber ring":              "locker.penetrations lockers/skirt not-met",
		"a cordless drill kept beside the cylinder":   "ignition.near-gas cylinders/A not-met",
		"a cable hole below the high vent":            "locker.vent-clear lockers/skirt not-met",
		"a second cylinder past the regulator":        "regulator.present appliances/fridge not-met",
		"a Y of two supplies that names one cylinder": "changeover.no-return changeovers/y-piece not-met",
		"a regulator for less than what hangs on it":  "regulator.capacity regulators/main not-met",
		"more pressure than the hob's plate allows":   "regulator.outlet regulators/main not-met",
		"a household hob made for mains gas":          "appliance.gas-kind appliances/hob not-met",
		"a water heater without a flue":               "appliance.room-sealed appliances/water not-met",
		"that hob in a bus":                           "appliance.listed appliances/hob not-met",
		"a burner that lets its gas run on":           "appliance.flame-guard appliances/hob not-met",
		"a water heater made for outdoors":            "appliance.outdoor-only appliances/water not-met",
		"a taped pipe end behind the drawers":         "line.open-end openEnds/old-oven not-met",
		"a wooden rack 45 cm over the hob":            "clearance.above appliances/hob not-met",
		"no carbon monoxide alarm where people sleep": "alarm.co spaces/berth not-met",
		"a propane alarm past its date":               "alarm.gas spaces/berth not-met",
		"a propane alarm at the height of a nose":     "alarm.gas spaces/studio not-met",
		"nobody looked below the bed":                 "survey.complete spaces/berth not-met",
		"a bay that nobody surveyed":                  "survey.complete spaces/tonewood-bay not-known missing-input",
		"a ring where a flare belongs":                "line.joints lines/trunk not-met",
		"a pipe bare in the hole of the floor":        "line.route lines/to-old-oven not-met",
		"a hose whose joints nobody tested":           "test.high-side lines/tail-A not-met",
		"pipes that no test covers":                   "test.pressure lines/to-hob not-met",
		"no certificate at all":                       "inspection.current dwelling not-met",
		"a spark in the same bay as the spare":        "ignition.near-gas cylinders/spare not-met",
	} {
		if !slices.Contains(found, want) {
			t.Errorf("%s: no finding %q", fault, want)
		}
	}
}

// TestTheYPieceIsLeftToTheFitter: where regulated gas and cylinder pressure meet, no
// finding on the piece offers an edit or leaves it to the owner, who would tidy the file
// and have the hazard gone from it.
func TestTheYPieceIsLeftToTheFitter(t *testing.T) {
	asked := map[string]bool{}
	for _, f := range judged(t, readDemo(t, faultyFile)).Findings {
		if f.Subject != "/changeovers/y-piece" || f.Outcome != report.NotMet {
			continue
		}
		asked[f.Check] = true
		if m := f.Parts[0].Mend; f.MayAct != report.LicensedFitter || m.Text != gas.PartSupplies || len(m.Set) != 0 {
			t.Errorf("%s: %s may act, by %+v", f.Check, f.MayAct, m)
		}
	}
	if diff := cmp.Diff(map[string]bool{"changeover.no-return": true, "layout.consistent": true}, asked); diff != "" {
		t.Error(diff)
	}
}

// TestNoTestIsNoReading: a line that no test covers is shown as that, not as one that
// held nothing at all.
func TestNoTestIsNoReading(t *testing.T) {
	n := 0
	for _, f := range judged(t, readDemo(t, faultyFile)).Findings {
		if (f.Check == "test.pressure" || f.Check == "test.tightness") && f.Outcome == report.NotMet {
			n++
			if p := f.Parts[0]; p.Found.Text != "no such test in the file" || p.Found.SI != nil || p.Short != nil || p.Needed.SI == nil {
				t.Errorf("%s: found %+v, needed %+v, short by %+v", verdict(f), p.Found, p.Needed, p.Short)
			}
		}
	}
	if n < 8 {
		t.Errorf("%d lines that no test covers; the demo has more", n)
	}
}

// onlyInTeal are the keys that Sorrel can't have as a good dwelling, and why.
var onlyInTeal = map[string]string{
	"dwelling.waterline":       "it does not float",
	"dwelling.heel":            "it does not float",
	"locker.aboveWaterline":    "it does not float",
	"ventEnd.overWaterline":    "it does not float",
	"lockerVent.bore":          "its vents are plain holes, without a pipe",
	"line.slackOverTravel":     "none of its lines is fixed to a part that moves",
	"regulator.capacityByMass": "its regulator's plate gives heat, and a plate gives one of the two",
	"layout.openEnds/*":        "it has no open end",
	"layout.outdoorOutlets/*":  "it has no outlet outside",
	"layout.stoves/*":          "it has no stove",
	"layout.fillPoints/*":      "it has no fill point",
	"layout.waivers/*":         "nothing in it needs to be waived",
	"openEnd.place":            "it has no open end",
	"openEnd.in":               "it has no open end",
	"openEnd.end":              "it has no open end",
	"outlet.place":             "it has no outlet outside",
	"outlet.shutoff":           "it has no outlet outside",
	"outlet.capped":            "it has no outlet outside",
	"outlet.pressure":          "it has no outlet outside",
	"stove.place":              "it has no stove",
	"stove.in":                 "it has no stove",
	"stove.fuel":               "it has no stove",
	"stove.output":             "it has no stove",
	"fillPoint.place":          "it has no fill point",
	"fillPoint.in":             "it has no fill point",
	"fillPoint.capped":         "it has no fill point",
	"fillPoint.nonReturn":      "it has no fill point",
	"fillPoint.overfillStop":   "it has no fill point",
	"waiver.check":             "nothing in it needs to be waived",
	"waiver.subject":           "nothing in it needs to be waived",
	"waiver.reason":            "nothing in it needs to be waived",
	"waiver.decidedBy":         "nothing in it needs to be waived",
	"waiver.until":             "nothing in it needs to be waived",
}

// The two good demos use every key of the contract, so that no key goes untried.
// A thing has a point or a box, which count as one; notes and evidence count once
// for all objects.
func TestDemosUseEveryKey(t *testing.T) {
	s := readSchema(t)
	all, sorrel, teal := s.every(), s.usedIn(t, sorrelFile), s.usedIn(t, tealFile)
	for key := range all {
		reason := onlyInTeal[key]
		switch {
		case !sorrel[key] && reason == "":
			t.Errorf("Sorrel does not use %s", key)
		case sorrel[key] && reason != "":
			t.Errorf("Sorrel uses %s, of which onlyInTeal says: %s", key, reason)
		case !sorrel[key] && !teal[key]:
			t.Errorf("neither demo uses %s", key)
		}
	}
	for key := range onlyInTeal {
		if !all[key] {
			t.Errorf("onlyInTeal names %s, which the contract does not have", key)
		}
	}
}

// contract is the published schema as far as it takes to tell which keys are used.
type contract struct{ root map[string]any }

func readSchema(t *testing.T) contract {
	t.Helper()
	var root map[string]any
	if err := json.Unmarshal(layout.Schema(), &root); err != nil {
		t.Fatal(err)
	}
	return contract{root}
}

// part is one object type of the contract under its name.
type part struct {
	name   string
	schema map[string]any
}

func (c contract) definition(name string) part {
	return part{name, c.root["$defs"].(map[string]any)[name].(map[string]any)}
}

func (c contract) resolve(home string, schema map[string]any) part {
	if ref, ok := schema["$ref"].(string); ok {
		return c.definition(strings.TrimPrefix(ref, "#/$defs/"))
	}
	return part{home, schema}
}

func properties(schema map[string]any) map[string]any {
	found, _ := schema["properties"].(map[string]any)
	return found
}

// named is the name under which a key counts.
func (p part) named(key string) string {
	_, hasPoint := properties(p.schema)["at"]
	_, hasBox := properties(p.schema)["box"]
	switch {
	case p.name == "evidence" || key == "note" || key == "evidence":
		return "any object." + key
	case hasPoint && hasBox && (key == "at" || key == "box"):
		return p.name + ".place"
	}
	return p.name + "." + key
}

// every lists the keys of the contract. A key that holds things by id counts a
// second time, with "/*", for a thing listed there.
func (c contract) every() map[string]bool {
	all := map[string]bool{}
	add := func(p part) {
		for key, value := range properties(p.schema) {
			all[p.named(key)] = true
			if c.listSchema(value.(map[string]any)) != nil && key != "evidence" {
				all[p.named(key)+"/*"] = true
			}
		}
	}
	add(part{"layout", c.root})
	for name := range c.root["$defs"].(map[string]any) {
		add(c.definition(name))
	}
	return all
}

// listSchema is the schema of the things that a key holds by id, or nil.
func (c contract) listSchema(schema map[string]any) map[string]any {
	for _, each := range asObject(c.resolve("", schema).schema["patternProperties"]) {
		return each.(map[string]any)
	}
	return nil
}

func asObject(v any) map[string]any {
	o, _ := v.(map[string]any)
	return o
}

func (c contract) usedIn(t *testing.T, path string) map[string]bool {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var file map[string]any
	if err := json.Unmarshal(data, &file); err != nil {
		t.Fatal(err)
	}
	used := map[string]bool{}
	c.walk(part{"layout", c.root}, file, used)
	return used
}

func (c contract) walk(p part, object map[string]any, used map[string]bool) {
	for key, value := range object {
		schema := asObject(properties(p.schema)[key])
		used[p.named(key)] = true
		things := c.listSchema(schema)
		for _, thing := range asObject(value) {
			if things != nil {
				used[p.named(key)+"/*"] = true
				c.walk(c.resolve(key, things), asObject(thing), used)
			}
		}
		if things == nil {
			c.walk(c.resolve(key, schema), asObject(value), used)
		}
	}
}

// wall is how far beyond the inner faces of its space a thing may be drawn: in
// the thickness of a wall or on its outer face.
const wall = 0.15

// TestDemosAreDrawnTrue holds the geometry of the demos together: no two
// enclosures overlap, and everything lies where it is said to be.
func TestDemosAreDrawnTrue(t *testing.T) {
	for _, path := range []string{sorrelFile, tealFile, faultyFile} {
		t.Run(filepath.Base(path), func(t *testing.T) {
			l := readDemo(t, path)
			rooms := enclosures(t, l)
			apart(t, rooms)
			for _, thing := range positionedThings(l) {
				if ref, known := thing.in.Get(); known && ref != layout.OpenAir {
					holds(t, rooms[ref], ref, thing)
				}
			}
			for _, line := range l.Lines.All() {
				routed(t, l, line)
			}
		})
	}
}

func enclosures(t *testing.T, l *layout.Layout) map[layout.Ref]box.Box {
	t.Helper()
	rooms := map[layout.Ref]box.Box{}
	for _, s := range l.Spaces.All() {
		rooms[s.Ref()] = cornersOf(t, s.Label(), &s.Box)
	}
	for _, k := range l.Lockers.All() {
		rooms[k.Ref()] = cornersOf(t, k.Label(), &k.Box)
	}
	return rooms
}

func cornersOf(t *testing.T, label string, b *layout.Box) box.Box {
	t.Helper()
	from, known := b.From.Get()
	to, both := b.To.Get()
	if !known || !both {
		t.Fatalf("%s has no box", label)
	}
	return between(from, to)
}

func between(from, to layout.Point) box.Box {
	return box.Box{From: box.Point{X: from[0], Y: from[1], Z: from[2]}, To: box.Point{X: to[0], Y: to[1], Z: to[2]}}
}

func apart(t *testing.T, rooms map[layout.Ref]box.Box) {
	t.Helper()
	for a, one := range rooms {
		for b, other := range rooms {
			if a < b && box.Overlap(one, other).High > 0 {
				t.Errorf("%s and %s overlap", a, b)
			}
		}
	}
}

// located is a thing with the key that says what it stands in.
type located struct {
	item layout.Item
	in   *layout.Given[layout.Ref]
	at   *layout.Position
}

func positionedThings(l *layout.Layout) []located {
	var things []located
	add := func(item layout.Item, in *layout.Given[layout.Ref], at *layout.Position) {
		things = append(things, located{item, in, at})
	}
	for _, x := range l.Cylinders.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Regulators.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Changeovers.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.OpenEnds.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Appliances.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Stoves.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Exhausts.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Openings.All() {
		add(x, &x.Of, &x.Position)
	}
	for _, x := range l.FixedVents.All() {
		add(x, &x.Of, &layout.Position{At: x.At})
	}
	for _, x := range l.Fans.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.IgnitionSources.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Combustibles.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Stored.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Alarms.All() {
		add(x, &x.In, &x.Position)
	}
	for _, x := range l.Extinguishers.All() {
		add(x, &x.In, &x.Position)
	}
	return things
}

func holds(t *testing.T, room box.Box, ref layout.Ref, thing located) {
	t.Helper()
	from, to, known := thing.at.Corners()
	if !known {
		t.Errorf("%s has no place", thing.item.Label())
		return
	}
	for _, axis := range []*unit.Value[unit.Length]{&room.From.X, &room.From.Y, &room.From.Z} {
		*axis = unit.Exactly(axis.Nominal - wall)
	}
	for _, axis := range []*unit.Value[unit.Length]{&room.To.X, &room.To.Y, &room.To.Z} {
		*axis = unit.Exactly(axis.Nominal + wall)
	}
	if box.Encloses(room, between(from, to)) != box.Yes {
		t.Errorf("%s lies outside %s, in which it is said to be", thing.item.Label(), ref)
	}
}

// routed asks that a line begins and ends at the things that it joins, and is
// about as long as its route.
func routed(t *testing.T, l *layout.Layout, line *layout.Line) {
	t.Helper()
	route, known := line.Route.Get()
	if !known {
		return
	}
	const reach = 0.30
	for end, point := range map[*layout.Given[layout.Ref]]layout.Point{&line.From: route[0], &line.To: route[len(route)-1]} {
		ref, _ := end.Get()
		from, to, placed := layout.PositionOf(l.Find(ref)).Corners()
		if !placed || box.Gap(between(from, to), between(point, point)).Nominal > reach {
			t.Errorf("%s has an end that is not at %s", line.Label(), ref)
		}
	}
	var along float64
	for i := range route[1:] {
		var square float64
		for axis := range route[i] {
			square += math.Pow(float64(route[i+1][axis].Nominal-route[i][axis].Nominal), 2)
		}
		along += math.Sqrt(square)
	}
	length, stated := line.Length.Get()
	if !stated || math.Abs(float64(length.Nominal)-along) > 0.05+0.10*along {
		t.Errorf("%s is stated %v long, and its route is %.2f m", line.Label(), length.Written, along)
	}
}

// Demos are read by people: they stay within a screen's width and end in one
// line feed.
func TestDemosReadWell(t *testing.T) {
	const widest = 190
	for _, path := range []string{sorrelFile, tealFile, faultyFile} {
		file, fault := source.ReadPath(path, source.DefaultLimits())
		if fault != nil {
			t.Fatal(fault)
		}
		text := string(file.Data)
		for i, line := range strings.Split(text, "\n") {
			if n := len([]rune(line)); n > widest && !strings.Contains(line, `"note"`) {
				t.Errorf("%s:%d: %d columns", path, i+1, n)
			}
			if strings.ContainsAny(line, "\t\r") || strings.TrimRight(line, " ") != line {
				t.Errorf("%s:%d: a tab or blanks at the end", path, i+1)
			}
		}
		if !strings.HasSuffix(text, "}\n") || strings.HasSuffix(text, "\n\n") {
			t.Errorf("%s does not end in one line feed", path)
		}
		if title, _ := readDemo(t, path).Title.Get(); !strings.Contains(title, "invented") {
			t.Errorf("%s: the title does not say that it is invented", path)
		}
	}
}
