package vent_test

import (
	"encoding/json"
	"os"
	"strings"
	"testing"

	"lowvent.example/schema/layout"
)

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
