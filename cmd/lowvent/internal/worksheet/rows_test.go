package worksheet

import (
	"slices"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/starter"
	"lowvent.example/schema/layout"
	measured "lowvent.example/schema/unit"
)

// inBothSystems has a unit of each system for the quantities that tapes, scales, gauges and
// plates have in both: common practice, no source.
var inBothSystems = map[measured.Kind][2]string{
	measured.KindLength: {"mm", "in"}, measured.KindArea: {"cm2", "in2"}, measured.KindPropaneMass: {"kg", "lb"}, measured.KindMass: {"kg", "lb"},
	measured.KindTemperature: {"degC", "degF"}, measured.KindTemperatureDifference: {"K", "degF"},
	measured.KindGaugePressure: {"mbar", "inH2O"}, measured.KindPower: {"kW", "BTU/h"}, measured.KindGrossPower: {"kW", "BTU/h"},
}

// TestQuantitiesAreAskedInBothSystems: whoever has a tape in inches and whoever has one in
// millimetres finds the unit to write, in the row itself.
func TestQuantitiesAreAskedInBothSystems(t *testing.T) {
	asked := map[measured.Kind]int{}
	for _, scene := range starter.Scenes() {
		rows := rowsOf(t, scene)
		for _, tr := range read(t, scene).named("tr") {
			r, is := rows[tr.named("th")[0].Text]
			if !is || r.asked.Form != layout.FormQuantity {
				continue
			}
			asked[r.asked.Kind]++
			var words []string
			for _, td := range tr.named("td") {
				words = append(words, strings.FieldsFunc(td.Text, func(c rune) bool { return strings.ContainsRune(" ,:()\n", c) })...)
			}
			for _, want := range inBothSystems[r.asked.Kind] {
				if want != "" && !slices.Contains(words, want) {
					t.Errorf("%s %s: the row lacks the unit %s: %q", scene, r.asked.Template, want, tr.Text)
				}
			}
		}
	}
	for _, kind := range []measured.Kind{measured.KindLength, measured.KindArea, measured.KindPropaneMass, measured.KindTemperature, measured.KindTemperatureDifference, measured.KindGaugePressure, measured.KindPower} {
		if asked[kind] == 0 {
			t.Errorf("no %v is asked in any scene: %v", kind, asked)
		}
	}
}

// TestEachKeyOfAThingHasOneBlank: none twice, and the numbers go up through each sheet.
func TestEachKeyOfAThingHasOneBlank(t *testing.T) {
	for _, scene := range starter.Scenes() {
		for _, one := range walked(t, options(scene)) {
			n := 0
			for _, table := range one.tables {
				templates := map[string]bool{}
				for _, r := range table.rows {
					n++
					if templates[r.asked.Template] {
						t.Errorf("%s: two blanks for %s in %q", scene, r.asked.Template, table.caption)
					}
					templates[r.asked.Template] = true
				}
			}
			if n == 0 && len(one.ticks) == 0 {
				t.Errorf("%s: the sheet %s is empty", scene, one.title)
			}
		}
	}
}

// rowsOf are the rows of a scene's sheets, by their numbers.
func rowsOf(t *testing.T, scene string) map[string]row {
	t.Helper()
	rows := map[string]row{}
	for _, one := range walked(t, options(scene)) {
		for _, table := range one.tables {
			for _, r := range table.rows {
				rows[r.code] = r
			}
		}
	}
	return rows
}
