package gas_test

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"lowvent.example/gas"
	"lowvent.example/schema/check"
	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// judgedLines judges a file that has little but lines in it.
func judgedLines(t *testing.T, text string) map[string]report.Finding {
	t.Helper()
	l, faults := layout.Load(source.NewFile("lines.json", []byte(text)))
	if faults != nil {
		t.Fatal(faults)
	}
	codes, err := code.Use(checktest.DefaultCode)
	if err != nil {
		t.Fatal(err)
	}
	r, err := check.Run(context.Background(), gas.Checks(), l, codes, check.Options{On: checktest.Day})
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]report.Finding{}
	for _, f := range r.Findings {
		found[f.Check+" "+f.Subject] = f
	}
	return found
}

// TestManyWaysAreWalkedOnce: fifty changeovers in a row, each joined to the next by
// two lines, make more ways from the cylinder to the hob than could ever be walked one
// by one. A hob that many ways lead to counts once in the load.
func TestManyWaysAreWalkedOnce(t *testing.T) {
	const n = 50
	var changeovers, lines []string
	from := "regulators/main"
	for i := range n {
		to := fmt.Sprintf("changeovers/c%02d", i)
		changeovers = append(changeovers, fmt.Sprintf(`"c%02d": { "in": "open-air" }`, i))
		for _, side := range []string{"left", "right"} {
			lines = append(lines, fmt.Sprintf(`"%s-%02d": { "from": %q, "to": %q, "shutoffs": {} }`, side, i, from, to))
		}
		from = to
	}
	found := judgedLines(t, `{ "format": "lowvent-layout/1",
		"surveyedBy": { "complete": ["lines", "appliances", "cylinders"] },
		"cylinders": { "a": { "in": "open-air" } },
		"regulators": { "main": { "in": "open-air", "capacity": "9000 BTU/h" } },
		"changeovers": {`+strings.Join(changeovers, ",")+`},
		"appliances": { "hob": { "in": "open-air", "ownRegulator": false, "plate": { "input": "9000 BTU/h", "basis": "gross" } } },
		"lines": { "tail": { "from": "cylinders/a", "to": "regulators/main", "shutoffs": { "valve": { "kind": "cylinder-valve", "reachedFrom": "outside" } } },
			`+strings.Join(lines, ",")+`, "last": { "from": "`+from+`", "to": "appliances/hob", "shutoffs": {} } } }`)
	for pair, want := range map[string]report.Outcome{
		"regulator.present /appliances/hob":   report.Within,
		"regulator.capacity /regulators/main": report.Within,
		"line.main-shutoff /appliances/hob":   report.NotApplicable, // the code is silent, and custom is kept
	} {
		if f := found[pair]; f.Outcome != want {
			t.Errorf("%s is %s %s, want %s", pair, f.Outcome, f.Reason, want)
		}
	}
}

// TestWaysToAnAppliance: what stands on each way from a cylinder to the hob, and what
// regulator.present makes of it.
func TestWaysToAnAppliance(t *testing.T) {
	for _, c := range []struct {
		name    string
		own     bool
		lines   [][2]string
		outcome report.Outcome
	}{
		{"through a regulator", false, [][2]string{{"cylinders/a", "regulators/r"}, {"regulators/r", "appliances/hob"}}, report.Within},
		{"straight", false, [][2]string{{"cylinders/a", "appliances/hob"}}, report.NotMet},
		{"straight, to a regulator of its own", true, [][2]string{{"cylinders/a", "appliances/hob"}}, report.Within},
		{"regulated twice", true, [][2]string{{"cylinders/a", "regulators/r"}, {"regulators/r", "appliances/hob"}}, report.NotMet},
		{"two stages in line", false, [][2]string{{"cylinders/a", "regulators/r"}, {"regulators/r", "regulators/s"}, {"regulators/s", "appliances/hob"}}, report.Within},
		{"one of two ways bare", false, [][2]string{{"cylinders/a", "regulators/r"}, {"regulators/r", "changeovers/c"}, {"cylinders/b", "changeovers/c"}, {"changeovers/c", "appliances/hob"}}, report.NotMet},
		{"both through the changeover", false, [][2]string{{"cylinders/a", "changeovers/c"}, {"cylinders/b", "changeovers/c"}, {"changeovers/c", "regulators/r"}, {"regulators/r", "appliances/hob"}}, report.Within},
		{"both, each through a regulator", false, [][2]string{{"cylinders/a", "regulators/r"}, {"cylinders/b", "regulators/s"}, {"regulators/r", "changeovers/c"}, {"regulators/s", "changeovers/c"}, {"changeovers/c", "appliances/hob"}}, report.Within},
		{"from nowhere", false, [][2]string{{"regulators/r", "appliances/hob"}}, report.NotKnown},
		{"no line at all", false, nil, report.NotKnown},
	} {
		t.Run(c.name, func(t *testing.T) {
			var lines []string
			for i, ends := range c.lines {
				lines = append(lines, fmt.Sprintf(`"l%d": { "from": %q, "to": %q }`, i, ends[0], ends[1]))
			}
			found := judgedLines(t, fmt.Sprintf(`{ "format": "lowvent-layout/1", "surveyedBy": { "complete": ["lines"] },
				"cylinders": { "a": { "in": "open-air" }, "b": { "in": "open-air" } }, "regulators": { "r": { "in": "open-air" }, "s": { "in": "open-air" } },
				"changeovers": { "c": { "in": "open-air" } }, "appliances": { "hob": { "in": "open-air", "ownRegulator": %v } }, "lines": {%s} }`, c.own, strings.Join(lines, ",")))
			if f := found["regulator.present /appliances/hob"]; f.Outcome != c.outcome {
				t.Errorf("%s, want %s: %+v", f.Outcome, c.outcome, f.Parts)
			}
		})
	}
}

// TestEachHalfOfTheQuestionRestsOnTheLines: that every way is regulated, and that no
// part before the regulator is indoors, are told of the lines that are listed, each by
// itself.
func TestEachHalfOfTheQuestionRestsOnTheLines(t *testing.T) {
	f := judgedLines(t, `{ "format": "lowvent-layout/1", "surveyedBy": { "complete": ["lines"] }, "cylinders": { "a": { "in": "open-air" } }, "regulators": { "r": { "in": "open-air" } },
		"appliances": { "hob": { "in": "open-air", "ownRegulator": false } },
		"lines": { "1": { "from": "cylinders/a", "to": "regulators/r" }, "2": { "from": "regulators/r", "to": "appliances/hob" } } }`)["regulator.present /appliances/hob"]
	half := map[bool]int{} // by whether it is the first half
	for _, p := range f.Parts {
		rests := slices.ContainsFunc(p.Inputs, func(in report.Input) bool { return in.Pointer == "/lines" }) && slices.Contains(p.Surveys, "/surveyedBy/complete#lines")
		if rests {
			half[strings.Contains(p.Found.Text, "regulator")]++
		}
	}
	if f.Outcome != report.Within || half[true] != 1 || half[false] != 1 {
		t.Errorf("%s, of parts that rest on the list of lines %v: %+v", f.Outcome, half, f.Parts)
	}
}

// TestHighPressureParts: only what is before the first regulator holds
// cylinder pressure; each such part is asked for, and its place named.
func TestHighPressureParts(t *testing.T) {
	for _, c := range []struct {
		name, inside string // what stands in the room
		own          bool
		outcome      report.Outcome
	}{
		{"nothing inside", "", false, report.Within},
		{"the second stage inside", "regulators/s", false, report.Within},
		{"a tee after the first stage inside", "junctions/after", false, report.Within},
		{"the first stage inside", "regulators/r", false, report.NotMet},
		{"a tee before it inside", "junctions/before", false, report.NotMet},
		{"the cylinder inside", "cylinders/a", false, report.NotMet},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := func(thing string) string {
				if thing == c.inside {
					return "spaces/room"
				}
				return "open-air"
			}
			found := judgedLines(t, fmt.Sprintf(`{ "format": "lowvent-layout/1", "surveyedBy": { "complete": ["lines"] }, "spaces": { "room": {} },
				"cylinders": { "a": { "in": %q } }, "regulators": { "r": { "in": %q }, "s": { "in": %q } },
				"junctions": { "before": { "in": %q }, "after": { "in": %q } }, "appliances": { "hob": { "in": "spaces/room", "ownRegulator": false } },
				"lines": { "1": { "from": "cylinders/a", "to": "junctions/before" }, "2": { "from": "junctions/before", "to": "regulators/r" },
					"3": { "from": "regulators/r", "to": "junctions/after" }, "4": { "from": "junctions/after", "to": "regulators/s" }, "5": { "from": "regulators/s", "to": "appliances/hob" } } }`,
				in("cylinders/a"), in("regulators/r"), in("regulators/s"), in("junctions/before"), in("junctions/after")))
			f := found["regulator.present /appliances/hob"]
			if f.Outcome != c.outcome {
				t.Errorf("%s, want %s: %+v", f.Outcome, c.outcome, f.Parts)
			}
			about := map[string]bool{}
			for _, p := range f.Parts {
				about[p.About] = true
			}
			for thing, want := range map[string]bool{"cylinder a": true, "regulator r": true, "junction before": true, "regulator s": false, "junction after": false, "appliance hob": false} {
				if about[thing] != want {
					t.Errorf("asked of %s: %v, want %v", thing, about[thing], want)
				}
			}
		})
	}
}

// TestALoadCountsWhatHangsBehind a regulator, and nothing else; a thing that the lines
// reach from no cylinder may hang behind any of them.
func TestALoadCountsWhatHangsBehind(t *testing.T) {
	file := func(extra string) string {
		return `{ "format": "lowvent-layout/1", "surveyedBy": { "complete": ["lines", "appliances"] }, "cylinders": { "a": {}, "b": {} },
			"regulators": { "small": { "capacity": "1 kW" }, "large": { "capacity": "10 kW" } }, "junctions": { "tee": {} },
			"appliances": { "lamp": { "plate": { "input": "1 kW", "basis": "gross" } }, "hob": { "plate": { "input": "6 kW", "basis": "gross" } }, "oven": { "plate": { "input": "4 kW", "basis": "gross" } }` + extra + ` },
			"lines": { "1": { "from": "cylinders/a", "to": "regulators/small" }, "2": { "from": "regulators/small", "to": "appliances/lamp" },
				"3": { "from": "cylinders/b", "to": "regulators/large" }, "4": { "from": "regulators/large", "to": "junctions/tee" },
				"5": { "from": "junctions/tee", "to": "appliances/hob" }, "6": { "from": "junctions/tee", "to": "appliances/oven" } } }`
	}
	found := judgedLines(t, file(""))
	for regulator, load := range map[string]float64{"small": 1000, "large": 10000} {
		f := found["regulator.capacity /regulators/"+regulator]
		if f.Outcome != report.Within || *f.Parts[0].Needed.SI != load {
			t.Errorf("%s is %s for a load of %v, want %v", regulator, f.Outcome, *f.Parts[0].Needed.SI, load)
		}
	}
	for regulator, f := range judgedLines(t, file(`, "loose": { "plate": { "input": "1 W", "basis": "gross" } }`)) {
		if strings.HasPrefix(regulator, "regulator.capacity") && f.Outcome != report.NotKnown {
			t.Errorf("%s is %s, with an appliance that no line brings gas to", regulator, f.Outcome)
		}
	}
}

// TestTestVolumes: what is behind a further regulator is tested apart, and a file that
// lists no lines tells of no volume.
func TestTestVolumes(t *testing.T) {
	main, second := "regulator.test-volume /regulators/main", "regulator.test-volume /regulators/second"
	whole := value(t, figuresOf(t), main)
	parts := figuresOf(t, `/regulators/second = { "in": "open-air", "gas": "propane", "outlet": "11 inH2O" }`, `/lines/to-water/from = "regulators/second"`,
		`/lines/between = { "from": "junctions/block", "to": "regulators/second", "kind": "direct" }`)
	if first, behind := value(t, parts, main), value(t, parts, second); behind <= 0 || math.Abs(first+behind-whole) > 1e-12 {
		t.Errorf("%v m3 before and %v m3 behind it, %v m3 without it", first, behind, whole)
	}
	l, faults := layout.Load(source.NewFile("lines.json", []byte(`{ "format": "lowvent-layout/1", "regulators": { "main": { "in": "open-air" } } }`)))
	if faults != nil {
		t.Fatal(faults)
	}
	codes, err := code.Use(checktest.DefaultCode)
	if err != nil {
		t.Fatal(err)
	}
	r, err := check.Run(context.Background(), check.Set{Figures: gas.Checks().Figures}, l, codes, check.Options{On: checktest.Day})
	if err != nil {
		t.Fatal(err)
	}
	at := slices.IndexFunc(r.Figures, func(f report.Figure) bool { return f.ID+" "+f.Subject == main })
	if at < 0 || r.Figures[at].Value != nil || len(r.Figures[at].Missing) == 0 {
		t.Errorf("without a list of lines: %+v", r.Figures)
	}
}
