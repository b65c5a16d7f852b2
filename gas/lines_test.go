package gas_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/schema/report"
)

// ends is one line of a small pipework, and the valve in it, if any.
type ends struct{ from, to, valve string }

const (
	byHand     = `"v": { "kind": "manual-valve", "reachedFrom": "outside" }`
	onCylinder = `"v": { "kind": "cylinder-valve", "reachedFrom": "outside" }`
	stowed     = `"v": { "kind": "manual-valve", "reachedFrom": "blocked" }`
	electric   = `"v": { "kind": "solenoid", "reachedFrom": "outside" }`
)

// pipeworkOf writes a layout of two cylinders, a changeover, two regulators, a tee and
// a hob, joined by the lines.
func pipeworkOf(lines []ends, zone string) string {
	var text []string
	for i, l := range lines {
		text = append(text, fmt.Sprintf(`"l%d": { "from": %q, "to": %q, "pressureClass": %q, "shutoffs": {%s} }`, i, l.from, l.to, zone, l.valve))
	}
	return `{ "format": "lowvent-layout/1", "surveyedBy": { "complete": ["lines"] }, "cylinders": { "a": {}, "b": {} }, "regulators": { "r": {}, "s": {} },
		"changeovers": { "c": {} }, "junctions": { "t": {} }, "appliances": { "hob": {} }, "tests": {}, "lines": {` + strings.Join(text, ",") + `} }`
}

// TestMainShutoffOnEveryWay: a valve that a hand gets to shuts every way, or none is
// there. The code is silent, so that a way that is shut is "not covered, and custom is
// kept".
func TestMainShutoffOnEveryWay(t *testing.T) {
	for _, c := range []struct {
		name    string
		lines   []ends
		outcome report.Outcome
	}{
		{"the cylinder's own", []ends{{"cylinders/a", "regulators/r", onCylinder}, {"regulators/r", "appliances/hob", ""}}, report.NotApplicable},
		{"none", []ends{{"cylinders/a", "regulators/r", ""}, {"regulators/r", "appliances/hob", ""}}, report.NotMet},
		{"only the appliance's own", []ends{{"cylinders/a", "regulators/r", ""}, {"regulators/r", "appliances/hob", byHand}}, report.NotMet},
		{"one line from end to end", []ends{{"cylinders/a", "appliances/hob", onCylinder}}, report.NotApplicable},
		{"stowed away", []ends{{"cylinders/a", "regulators/r", stowed}, {"regulators/r", "appliances/hob", ""}}, report.NotMet},
		{"worked by a switch", []ends{{"cylinders/a", "regulators/r", electric}, {"regulators/r", "appliances/hob", ""}}, report.NotMet},
		{"one of two cylinders", []ends{{"cylinders/a", "changeovers/c", onCylinder}, {"cylinders/b", "changeovers/c", ""}, {"changeovers/c", "appliances/hob", ""}}, report.NotMet},
		{"both cylinders", []ends{{"cylinders/a", "changeovers/c", onCylinder}, {"cylinders/b", "changeovers/c", byHand}, {"changeovers/c", "appliances/hob", ""}}, report.NotApplicable},
		{"after the changeover", []ends{{"cylinders/a", "changeovers/c", ""}, {"cylinders/b", "changeovers/c", ""}, {"changeovers/c", "junctions/t", byHand}, {"junctions/t", "appliances/hob", ""}}, report.NotApplicable},
		{"from nowhere", []ends{{"regulators/r", "appliances/hob", ""}}, report.NotKnown},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := judgedLines(t, pipeworkOf(c.lines, "low"))["line.main-shutoff /appliances/hob"]
			if f.Outcome != c.outcome || c.outcome == report.NotApplicable && f.Reason != report.NotCovered {
				t.Errorf("%s %s, want %s: %+v", f.Outcome, f.Reason, c.outcome, f.Parts)
			}
		})
	}
}

// TestNoValveIsGainedByOneLess: in any pipework, taking a valve out of a way that is
// not shut never makes it shut.
func TestNoValveIsGainedByOneLess(t *testing.T) {
	valves := rapid.SampledFrom([]string{"", byHand, onCylinder, stowed, electric})
	rapid.Check(t, func(rt *rapid.T) {
		lines := []ends{{"cylinders/a", "changeovers/c", valves.Draw(rt, "a")}, {"cylinders/b", "changeovers/c", valves.Draw(rt, "b")},
			{"changeovers/c", "regulators/r", valves.Draw(rt, "c")}, {"regulators/r", "junctions/t", valves.Draw(rt, "t")}, {"junctions/t", "appliances/hob", valves.Draw(rt, "hob")}}
		shut := func(lines []ends) bool {
			return judgedLines(t, pipeworkOf(lines, "low"))["line.main-shutoff /appliances/hob"].Outcome != report.NotMet
		}
		reached := func(valve string) bool { return valve == byHand || valve == onCylinder }
		want := reached(lines[2].valve) || reached(lines[3].valve) || reached(lines[0].valve) && reached(lines[1].valve)
		if got := shut(lines); got != want {
			rt.Fatalf("%v is shut: %v, want %v", lines, got, want)
		}
		fewer := slices.Clone(lines)
		fewer[rapid.IntRange(0, 4).Draw(rt, "which")].valve = ""
		if !want && shut(fewer) {
			rt.Fatalf("%v is shut, and %v is not", fewer, lines)
		}
	})
}

// TestHighSideByWhereItSits: what some cylinder feeds without a regulator is at its
// pressure, whatever the file states, and needs the test; the rest does not.
func TestHighSideByWhereItSits(t *testing.T) {
	lines := []ends{{"cylinders/a", "regulators/r", ""}, {"regulators/r", "changeovers/c", ""}, {"cylinders/b", "changeovers/c", ""},
		{"changeovers/c", "regulators/s", ""}, {"regulators/s", "junctions/t", ""}, {"junctions/t", "appliances/hob", ""}}
	found := judgedLines(t, pipeworkOf(lines, "low"))
	for line, high := range []bool{true, false, true, true, false, false} { // behind c the second cylinder is bare
		want := report.NotApplicable
		if high {
			want = report.NotMet
		}
		if f := found[fmt.Sprintf("test.high-side /lines/l%d", line)]; f.Outcome != want {
			t.Errorf("line %d from %s is %s, want %s", line, lines[line].from, f.Outcome, want)
		}
	}
	for pair, f := range judgedLines(t, pipeworkOf(lines, "high")) {
		if strings.HasPrefix(pair, "test.high-side") && f.Outcome != report.NotMet {
			t.Errorf("%s is %s, and the file says that it is at cylinder pressure", pair, f.Outcome)
		}
	}
}
