package vent_test

import (
	"fmt"
	"strings"
	"testing"

	"lowvent.example/gas"
	"lowvent.example/schema/check"
	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/vent"
)

// TestAgainstPublishedText holds whole checks, from the file's bytes to the
// finding, against figures worked by hand from published text. Each row is at its
// limit; the second patch is just past it.
func TestAgainstPublishedText(t *testing.T) {
	const vents = "/lockers/skirt/vents = " +
		`{ "low": { "level": "low", "gross": "%s", "cover": { "kind": "none" }, "lowerEdgeOverLowest": "0 mm", "closable": false, "coveredByCylinder": false }, ` +
		`"high": { "level": "high", "gross": "%s", "cover": { "kind": "none" }, "lowerEdgeBelowCeiling": "%s", "closable": false, "coveredByCylinder": false } }` +
		"\n/lockers/skirt/box = " + `{ "from": ["0 m", "0 m", "0 m"], "to": %s }`
	for _, c := range []struct{ source, check, subject, at, past string }{
		{"675 IAC 15-2-74(c)(2): two vents, at least 2 % of the floor, half low and half high. 24 in by 18 in is 432 in2; 2 % is 8.64 in2, half is 4.32 in2",
			"locker.low-vent", "lockers/skirt", fmt.Sprintf(vents, "4.32 in2", "4.32 in2", "12 in", `["24 in", "18 in", "20 in"]`), fmt.Sprintf(vents, "4.31 in2", "4.32 in2", "12 in", `["24 in", "18 in", "20 in"]`)},
		{"the same. 0.75 m by 0.40 m is 0.30 m2; 2 % is 60 cm2, half is 30 cm2",
			"locker.low-vent", "lockers/skirt", fmt.Sprintf(vents, "30 cm2", "30 cm2", "100 mm", `["0.75 m", "0.40 m", "0.72 m"]`), fmt.Sprintf(vents, "29.9 cm2", "30 cm2", "100 mm", `["0.75 m", "0.40 m", "0.72 m"]`)},
		{"the same. 1.20 m by 0.80 m is 0.96 m2; 2 % is 192 cm2, half is 96 cm2",
			"locker.high-vent", "lockers/skirt", fmt.Sprintf(vents, "96 cm2", "96 cm2", "100 mm", `["1.20 m", "0.80 m", "0.72 m"]`), fmt.Sprintf(vents, "96 cm2", "95.9 cm2", "100 mm", `["1.20 m", "0.80 m", "0.72 m"]`)},
		{"675 IAC 15-2-74(c)(2): the bottom of the upper vent at most 12 in below the ceiling; 12 in is 304.8 mm",
			"locker.high-vent", "lockers/skirt", fmt.Sprintf(vents, "30 cm2", "30 cm2", "304.8 mm", `["0.75 m", "0.40 m", "0.72 m"]`), fmt.Sprintf(vents, "30 cm2", "30 cm2", "305 mm", `["0.75 m", "0.40 m", "0.72 m"]`)},
		{"24 CFR 3280.704(a)(2): at most 14 in of water column, 3.487 kPa",
			"regulator.outlet", "regulators/main", everyPlate("14 inH2O", "14 inH2O"), everyPlate("14.1 inH2O", "15 inH2O")},
		{"24 CFR 3280.204(a): 24 in from the cooktop to a cabinet above it. A counter is 34 in high (common practice, no source), so that cabinet hangs no lower than 58 in",
			"clearance.above", "appliances/hob", counter("58 in"), counter("57 15/16 in")},
		{"49 CFR 173.304a(d)(1): 42 % of the water capacity; 47.6 lb of water gives 19.992 lb (the published cylinder table rounds it to 20)",
			"cylinder.fill", "cylinders/A", "/cylinders/A/waterCapacity = \"47.6 lb\"\n/cylinders/A/propane = \"19.992 lb\"", "/cylinders/A/waterCapacity = \"47.6 lb\"\n/cylinders/A/propane = \"20 lb\""},
		{"the same. 105 lb of water, the largest cylinder of 24 CFR 3280.704(b)(1), gives 44.1 lb",
			"cylinder.fill", "cylinders/A", "/cylinders/A/waterCapacity = \"105 lb\"\n/cylinders/A/propane = \"44.1 lb\"", "/cylinders/A/waterCapacity = \"105 lb\"\n/cylinders/A/propane = \"44.2 lb\""},
	} {
		t.Run(c.check, func(t *testing.T) {
			if got := outcome(t, c.check, c.subject, c.at); got != report.Within {
				t.Errorf("at the limit: %s\n%s", got, c.source)
			}
			if got := outcome(t, c.check, c.subject, c.past); got != report.NotMet {
				t.Errorf("just past the limit: %s\n%s", got, c.source)
			}
		})
	}
}

// everyPlate sets the regulator's outlet, and lets every appliance take up to most.
func everyPlate(outlet, most string) string {
	lines := []string{fmt.Sprintf("/regulators/main/outlet = %q", outlet)}
	for _, appliance := range []string{"fridge", "heater", "hob", "water"} {
		lines = append(lines, fmt.Sprintf("/appliances/%s/plate/mostInlet = %q", appliance, most))
	}
	return strings.Join(lines, "\n")
}

// counter puts the hob's top at 34 in and the lowest thing over it at a height.
func counter(cabinet string) string {
	return "delete /tapeMeasures/hob-to-rack\n/appliances/hob/box/from/2 = \"32 in\"\n/appliances/hob/box/to/2 = \"34 in\"\n/combustibles/spice-rack/box/from/2 = \"" + cabinet + "\""
}

func outcome(t *testing.T, id, subject, patch string) report.Outcome {
	t.Helper()
	var edits []source.Edit
	for line := range strings.Lines(patch) {
		edit, err := source.ParseEdit(strings.TrimSpace(line))
		if err != nil {
			t.Fatal(err)
		}
		edits = append(edits, edit)
	}
	l, err := bench(t).Layout("testdata/layouts/sorrel.json", edits)
	if err != nil {
		t.Fatal(err)
	}
	codes, err := bench(t).Codes("us-mobile-structure")
	if err != nil {
		t.Fatal(err)
	}
	findings, err := checktest.Judge(check.Join(gas.Checks(), vent.Checks()), id, l, codes)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range findings {
		if checktest.Of(f).Subject == subject {
			return f.Outcome
		}
	}
	t.Fatalf("%s says nothing of %s", id, subject)
	return ""
}
