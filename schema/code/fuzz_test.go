package code

import (
	"math"
	"testing"
)

// FuzzLoad holds for any bytes: no panic; a whole profile or faults with a
// reason, never both; and a profile that loads answers every term soundly.
func FuzzLoad(f *testing.F) {
	f.Add(mine(f))
	entries, err := files.ReadDir("codes")
	if err != nil {
		f.Fatal(err)
	}
	for _, e := range entries {
		data, err := files.ReadFile("codes/" + e.Name())
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Add([]byte(`{"entries": {"locker.low-vent-area": {"rule": {"allOf": [{"when": [{}], "otherwise": {"perUnit": [{}]}}, {"tableBy": 1}]}}}}`))
	facts := known{FactLockerFloorArea: 0.3, FactDwellingSleeps: 2.0, FactCylinderGas: "propane", FactApplianceKind: "oven", FactSpaceUse: "living"}
	f.Fuzz(func(t *testing.T, data []byte) {
		p, faults := Load("fuzz.json", data)
		if (p == nil) != (len(faults) > 0) {
			t.Fatalf("profile %v with faults %v", p, faults)
		}
		for _, each := range faults {
			if each.What == "" || each.Place.Line() == 0 {
				t.Fatalf("a fault without place or reason: %+v", each)
			}
		}
		if p == nil {
			return
		}
		for _, term := range Terms() {
			for _, with := range []Facts{nil, facts} {
				a := Codes{Profile: p}.Ask(term, with)
				if term.numeric() && (a.State == Answered) != !math.IsNaN(a.SI) {
					t.Fatalf("%s: %v %v", term.ID, a.State, a.SI)
				}
				if a.State == Answered && term.numeric() && worked(t, a) != a.SI {
					t.Fatalf("%s: working %q does not give %v", term.ID, a.Steps, a.SI)
				}
				if a.State == Answered && a.Entry.Provenance == Memory {
					t.Fatalf("%s is judged from memory", term.ID)
				}
			}
		}
	})
}
