package layout

import (
	"slices"
	"strings"
	"testing"

	"lowvent.example/schema/unit"
)

func TestDescribe(t *testing.T) {
	for _, c := range []struct{ pointer, template, begins string }{
		{"", "", "One dwelling's propane installation"},
		{"/format", "/format", "Write the version of the form"},
		{"/lockers", "/lockers", "List every enclosure made for gas cylinders"},
		{"/lockers/side", "/lockers/*", "An enclosure made for gas cylinders"},
		{"/lockers/side/vents/low/gross", "/lockers/*/vents/*/gross", "Measure the whole hole"},
		{"/lockers/vents/vents/vents/cover/open", "/lockers/*/vents/*/cover/open", "Read from its maker's sheet how much"},
		{"/lines/trunk/route/0", "/lines/*/route/*", "Three lengths [x, y, z]"},
		{"/lines/trunk/route/12/2", "/lines/*/route/*/*", "A length with its unit"},
		{"/climate/evidence/coldest/basis", "/climate/evidence/*/basis", "Choose what the value really rests on"},
		{"/climate/note", "/climate/note", "A note for people"},
		{"/spaces/cabin/surveyed/complete/3", "/spaces/*/surveyed/complete/*", "A list that can be stated complete"},
		{"/spaces/cabin/openTo/berth/sill", "/spaces/*/openTo/*/sill", "Measure the height of the step"},
		{"/nothing", "", ""},
		{"/lockers/side/nothing", "", ""},
		{"/lockers/a b", "", ""},
		{"/lockers/", "", ""},
		{"/format/x", "", ""},
		{"/lines/trunk/route/x", "", ""},
		{"/lines/trunk/route/", "", ""},
		{"lockers/side", "", ""},
		{"/lockers/side/vents~1low", "", ""},
	} {
		got := Describe(c.pointer)
		if Template(c.pointer) != c.template || !strings.HasPrefix(got, c.begins) || (c.begins == "") != (got == "") {
			t.Errorf("%q: template %q, description %q", c.pointer, Template(c.pointer), got)
		}
	}
}

// TestEveryTemplateIsItsOwn holds that every key of the Go contract is found
// again in the schema, and has a description.
func TestEveryTemplateIsItsOwn(t *testing.T) {
	all := contractTemplates()
	for _, template := range all {
		pointer := strings.ReplaceAll(template, "*", "some-id")
		if Template(pointer) != template || Describe(pointer) == "" {
			t.Errorf("%s: template %q, description %q", template, Template(pointer), Describe(pointer))
		}
	}
	if len(all) < 500 {
		t.Errorf("only %d keys", len(all))
	}
}

func TestMeaning(t *testing.T) {
	for _, c := range []struct{ pointer, word, begins string }{
		{"/lockers/side/liner/joints", "taped", "Closed with adhesive tape."},
		{"/spaces/cabin/surveyed/complete", "openings", "Every door, window"},
		{"/spaces/cabin/surveyed/complete/0", "openings", "Every door, window"},
		{"/cylinders/A/damage", "burnt", "Scorched paint"},
		{"/lockers/side/liner/joints", "glued", ""},
		{"/lockers/side/liner/thickness", "welded", ""},
		{"/lines/trunk/route", "welded", ""},
		{"/nothing", "welded", ""},
	} {
		got := Meaning(c.pointer, c.word)
		if !strings.HasPrefix(got, c.begins) || (c.begins == "") != (got == "") {
			t.Errorf("%s %q: %q", c.pointer, c.word, got)
		}
	}
}

func TestKindAt(t *testing.T) {
	for _, c := range []struct {
		pointer     string
		kind        unit.Kind
		bare, known bool
	}{
		{"/lockers/side/vents/low/gross", unit.KindArea, false, true},
		{"/combustibles/shelf/box/from/2", unit.KindLength, false, true},
		{"/climate/coldest", unit.KindTemperature, false, true},
		{"/cylinders/A/restraint/points", unit.KindCount, true, true},
		{"/appliances/hob/plate/input", unit.KindPower, false, true},
		{"/lockers/side/vents/low/cover", 0, false, false},
		{"/lockers/side/vents/low/closable", 0, false, false},
		{"/title", 0, false, false},
		{"/lockers/side/gros", 0, false, false},
		{"", 0, false, false},
	} {
		kind, bare, known := KindAt(c.pointer)
		if kind != c.kind || bare != c.bare || known != c.known {
			t.Errorf("%s: %s %t %t, want %s %t %t", c.pointer, kind, bare, known, c.kind, c.bare, c.known)
		}
	}
}

func TestKeysAt(t *testing.T) {
	if got := KeysAt("/lockers/side/vents/low/cover"); !slices.Equal(got, []string{"evidence", "kind", "note", "open"}) {
		t.Errorf("of a cover: %q", got)
	}
	if got := KeysAt(""); !slices.IsSorted(got) || !slices.Contains(got, "lockers") {
		t.Errorf("of a layout: %q", got)
	}
	for _, none := range []string{"/lockers", "/lockers/side/lowestPoint", "/nothing", "/lines/trunk/route"} {
		if got := KeysAt(none); len(got) > 0 {
			t.Errorf("%s: %q", none, got)
		}
	}
}
