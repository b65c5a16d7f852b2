package layout

import (
	"fmt"
	"strings"
	"testing"
)

// TestIdeasCanBeSaid holds what a builder must be able to say, be it good or
// bad news. Each is a piece of a file that has no fault of form: judging it is
// for the checks.
func TestIdeasCanBeSaid(t *testing.T) {
	for idea, text := range map[string]string{
		"nothing at all is known yet":                    `"title": "x"`,
		"there is no gas at all":                         `"cylinders": {}, "lines": {}, "appliances": {}, "openEnds": {}`,
		"a spare cylinder lies in an underfloor bay":     `"spaces": { "bay": { "use": "underfloor" } }, "cylinders": { "B": { "in": "spaces/bay", "role": "spare", "upright": false } }`,
		"a cylinder stands in the open":                  `"cylinders": { "A": { "in": "open-air" } }`,
		"a pipe was crimped where an appliance was":      `"cylinders": { "A": {} }, "openEnds": { "old": { "end": "crimped" } }, "lines": { "stub": { "from": "cylinders/A", "to": "openEnds/old" } }`,
		"a regulator sits straight on a cylinder":        `"cylinders": { "A": {} }, "regulators": { "r": { "mounted": "cylinder-valve" } }, "appliances": { "hob": {} }, "lines": { "a": { "from": "cylinders/A", "to": "regulators/r", "kind": "direct" }, "b": { "from": "regulators/r", "to": "appliances/hob" } }`,
		"two regulators stand one after the other":       `"cylinders": { "A": {} }, "regulators": { "r": {}, "s": {} }, "appliances": { "hob": {} }, "lines": { "a": { "from": "cylinders/A", "to": "regulators/r" }, "b": { "from": "regulators/r", "to": "regulators/s" }, "c": { "from": "regulators/s", "to": "appliances/hob" } }`,
		"cylinder pressure reaches an appliance":         `"cylinders": { "A": {} }, "appliances": { "grill": { "ownRegulator": false } }, "lines": { "a": { "from": "cylinders/A", "to": "appliances/grill", "kind": "hose", "pressureClass": "high" } }`,
		"a second cylinder has no hose to the fitting":   `"cylinders": { "A": {}, "B": {} }, "changeovers": { "c": { "connects": ["cylinders/A", "cylinders/B"] } }, "appliances": { "hob": {} }, "lines": { "a": { "from": "cylinders/A", "to": "changeovers/c" }, "b": { "from": "changeovers/c", "to": "appliances/hob" } }`,
		"the low vent ends behind a skirt":               `"lockers": { "k": { "vents": { "low": { "endsIn": { "kind": "skirted-bay", "openSides": 0 } } } } }`,
		"a cable goes through the locker's inner wall":   `"spaces": { "cabin": {} }, "lockers": { "k": { "penetrations": { "cable": { "of": "battery cable", "to": "spaces/cabin", "gland": "grommet" } } } }`,
		"only some lists of a space were gone through":   `"openings": {}, "spaces": { "cabin": { "surveyed": { "on": "2026-11-20", "complete": ["openings"] } } }`,
		"a seal is claimed, and a fitter's test proved":  `"spaces": { "cabin": {} }, "tests": { "smoke": { "kind": "locker-seal" } }, "lockers": { "k": { "sealedFrom": { "cabin": { "seal": "gas-tight", "evidence": { "seal": { "basis": "proved", "by": "tests/smoke" } } } } } }`,
		"the hob was made for mains gas":                 `"appliances": { "hob": { "plate": { "gas": "natural-gas", "jetsFittedFor": "natural-gas" } } }`,
		"a plate in kilowatts does not say gross or net": `"appliances": { "heater": { "plate": { "input": "3.5 kW" } } }`,
		"the gas is half butane":                         `"gas": { "kind": "mix", "propaneShare": "50 % to 60 %" }`,
		"a wood stove burns beside the bed":              `"spaces": { "berth": { "use": "sleeping" } }, "stoves": { "s": { "in": "spaces/berth", "fuel": "wood" } }`,
		"the alarm is dead when parked":                  `"alarms": { "gas": { "kind": "propane", "liveWhenIsolated": false } }`,
		"a vent below the floor, the boat heeling":       `"dwelling": { "kind": "boat", "waterline": "-0.35 m", "heel": "15 deg" }, "lockers": { "k": { "vents": { "drain": { "at": ["1 m", "2 m", "-0.20 m"], "bore": "19 mm", "endsIn": { "overWaterline": "-2 cm" } } } } }`,
		"a distance was taken with a tape":               `"openings": { "door": {} }, "lockers": { "k": { "vents": { "low": {} } } }, "tapeMeasures": { "t": { "from": "lockers/k/vents/low", "to": "openings/door", "is": "1.32 m ± 2 cm" } }`,
		"a fitter set a finding aside for a while":       `"cylinders": { "A": {} }, "waivers": { "w": { "check": "cylinder.condition", "subject": "cylinders/A", "reason": "swapped on Friday", "decidedBy": "a fitter", "until": "2026-12-04" } }`,
		"a window, flat in its wall":                     `"openings": { "w": { "kind": "window", "box": { "from": ["1 m", "2.25 m", "1 m"], "to": ["2 m", "2.25 m", "1.4 m"] } } }`,
		"the cylinder is over-filled":                    `"cylinders": { "A": { "propane": "12 kg", "waterCapacity": "21.6 L", "gaugeAfterFill": "95 %" } }`,
		"a stamp shows the year only":                    `"regulators": { "r": { "made": "2014" } }`,
	} {
		if _, faults := loadText(`{ "format": "lowvent-layout/1", ` + text + ` }`); len(faults) > 0 {
			t.Errorf("%s:\n%v", idea, faults)
		}
	}
}

// TestLongLists holds that a list of many references is read in a moment.
func TestLongLists(t *testing.T) {
	var cylinders, all strings.Builder
	for i := range 15_000 {
		fmt.Fprintf(&cylinders, `"c%d": {},`, i)
		fmt.Fprintf(&all, `"cylinders/c%d",`, i)
	}
	l := mustLoad(t, `{ "format": "lowvent-layout/1", "cylinders": { `+cylinders.String()+`"last": {} }, "changeovers": { "c": { "connects": [`+all.String()+`"cylinders/last"] } } }`)
	if refs, _ := l.Changeovers.Get("c").Connects.Get(); len(refs) != 15_001 {
		t.Errorf("%d cylinders", len(refs))
	}
}
