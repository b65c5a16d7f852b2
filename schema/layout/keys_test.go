package layout

import (
	"encoding/json"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/unit"
)

func TestKeys(t *testing.T) {
	for _, tt := range []struct {
		template string
		want     Key
	}{
		{"", Key{Name: "lockers", Form: FormThings}},
		{"", Key{Name: "format", Form: FormWord, Words: []string{Format}, Must: true}},
		{"/gas", Key{Name: "connected", Form: FormYesNo}},
		{"/dwelling", Key{Name: "sleeps", Form: FormCount}},
		{"/spaces/*", Key{Name: "box", Form: FormObject}},
		{"/spaces/*/box", Key{Name: "from", Form: FormPoint, Must: true}},
		{"/lockers/*/vents/*", Key{Name: "gross", Form: FormQuantity, Kind: unit.KindArea}},
		{"/lockers/side/vents/low", Key{Name: "level", Form: FormWord, Words: []string{"low", "high"}}},
		{"/lines/*", Key{Name: "route", Form: FormPoints}},
		{"/lines/*", Key{Name: "to", Form: FormRef, Refs: []string{"changeovers", "regulators", "junctions", "appliances", "openEnds", "outdoorOutlets"}, Must: true}},
		{"/changeovers/*", Key{Name: "connects", Form: FormRefs, Refs: []string{"cylinders"}}},
		{"/alarms/*", Key{Name: "replaceBy", Form: FormDate}},
		{"/appliances/*/use/*", Key{Name: "at", Form: FormClock}},
		{"/appliances/*/plate", Key{Name: "serial", Form: FormText}},
		{"/outside/surveyed", Key{Name: "complete", Form: FormWords, Words: SurveyList("").Choices()}},
	} {
		keys := Keys(tt.template)
		i := slices.IndexFunc(keys, func(k Key) bool { return k.Name == tt.want.Name })
		if i < 0 {
			t.Errorf("%q has no key %s", tt.template, tt.want.Name)
			continue
		}
		if diff := cmp.Diff(tt.want, keys[i]); diff != "" {
			t.Errorf("%q: %s", tt.template, diff)
		}
	}
}

func TestNoKeysWhereNoObjectIs(t *testing.T) {
	for _, at := range []string{"/nothing", "/title", "/lockers", "/lockers/*/box/from", "/where/code/x"} {
		if got := Keys(at); got != nil {
			t.Errorf("Keys(%q) = %v", at, got)
		}
	}
}

// formsOfSchema are the published schema's own words for each form.
var formsOfSchema = map[Form][]string{
	FormYesNo: {"boolean"}, FormCount: {"count"}, FormText: {"text"}, FormDate: {"date"}, FormClock: {"clock"},
	FormPoint: {"point"}, FormPoints: {"points"}, FormRef: {"string"}, FormWords: {"array"}, FormRefs: {"array"},
}

// TestKeysAgreeWithTheSchema holds every key's form to what the published schema says
// of it, so that nobody is asked for a value that no file may have.
func TestKeysAgreeWithTheSchema(t *testing.T) {
	var schema struct {
		Defs map[string]struct {
			OneOf []any `json:"oneOf"`
		} `json:"$defs"`
	}
	if err := json.Unmarshal(Schema(), &schema); err != nil {
		t.Fatal(err)
	}
	walkContract(reflect.TypeFor[Layout](), "", func(_ reflect.Type, at string) bool {
		if strings.HasSuffix(at, "/evidence/*") {
			return false
		}
		_, node := schemaAt(strings.ReplaceAll(at, "*", "x"))
		properties := slices.Sorted(maps.Keys(node.target().Properties))
		var names []string
		for _, key := range Keys(at) {
			names = append(names, key.Name)
			child := node.target().Properties[key.Name]
			kind := typeOfSchema(t, child)
			switch {
			case key.Form == FormQuantity && kind == key.Kind.String(), key.Form == FormWord && len(schema.Defs[kind].OneOf) == len(key.Words):
			case key.Form == FormThings && len(child.PatternProperties) == 1, key.Form == FormObject && len(child.target().Properties) > 0:
			case slices.Contains(formsOfSchema[key.Form], kind):
			default:
				t.Errorf("%s/%s is %s by the contract and %q by the schema", at, key.Name, key.Form, kind)
			}
		}
		for _, name := range properties {
			if name != "note" && name != "evidence" && !slices.Contains(names, name) {
				t.Errorf("%s lacks the key %s", at, name)
			}
		}
		return true
	})
}

// typeOfSchema names what a node refers to, or its plain type.
func typeOfSchema(t *testing.T, n *schemaNode) string {
	t.Helper()
	if n == nil {
		t.Fatal("the schema lacks a key of the contract")
	}
	if n.Ref != "" {
		return n.Ref[len("#/$defs/"):]
	}
	return n.Type
}
