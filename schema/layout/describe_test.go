package layout

import (
	"strings"
	"testing"
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
