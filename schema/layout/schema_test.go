package layout

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// eachSchema visits every subschema of the published schema.
func eachSchema(at string, schema map[string]any, visit func(at string, schema map[string]any)) {
	visit(at, schema)
	for keyword, value := range schema {
		switch value := value.(type) {
		case map[string]any:
			if !naming[keyword] {
				eachSchema(at+"/"+keyword, value, visit)
				continue
			}
			for name, sub := range value {
				eachSchema(at+"/"+keyword+"/"+name, sub.(map[string]any), visit)
			}
		case []any:
			for _, item := range value {
				if sub, ok := item.(map[string]any); ok {
					eachSchema(at+"/"+keyword, sub, visit)
				}
			}
		}
	}
}

// TestSchemaIsValid holds both editions against the JSON Schema meta-schemas
// that they name; the validator has these built in.
func TestSchemaIsValid(t *testing.T) {
	for name, text := range map[string][]byte{"published": published, "compact": compact} {
		if _, err := compile(name+".json", text); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	meta, err := jsonschema.Compile("https://json-schema.org/draft/2020-12/schema")
	if err != nil {
		t.Fatal(err)
	}
	if err := meta.Validate(any(rawSchema(t))); err != nil {
		t.Error(err)
	}
}

// TestSchemaRefersToNothingOutside holds that no schema can make the program
// read a file or ask a server.
func TestSchemaRefersToNothingOutside(t *testing.T) {
	for _, address := range []string{"file:///elsewhere.json", "other.json", "https://lowvent.example/other.json"} {
		text, _ := json.Marshal(map[string]any{"$ref": address})
		if _, err := compile("outside.json", text); err == nil {
			t.Errorf("a schema that refers to %s was compiled", address)
		}
	}
}

// TestSchemaKeywords holds the schema to keywords that mean the same in every
// draft since 7, and to references with nothing beside them but words.
func TestSchemaKeywords(t *testing.T) {
	known := []string{"$schema", "$id", "$defs", "$ref", "title", "description", "examples", "type", "properties", "patternProperties", "additionalProperties",
		"required", "items", "minItems", "maxItems", "uniqueItems", "oneOf", "const", "pattern", "minimum", "maximum"}
	used := map[string]bool{}
	eachSchema("", rawSchema(t), func(at string, schema map[string]any) {
		for keyword := range schema {
			if !slices.Contains(known, keyword) {
				t.Errorf("%s: the keyword %q", at, keyword)
			}
			if _, ref := schema["$ref"]; ref && keyword != "$ref" && keyword != "description" {
				t.Errorf("%s: %q beside a reference", at, keyword)
			}
		}
		if ref, ok := schema["$ref"].(string); ok {
			used[strings.TrimPrefix(ref, "#/$defs/")] = true
		}
		if schema["type"] == "object" && schema["additionalProperties"] != false {
			t.Errorf("%s: an object that takes any key", at)
		}
	})
	for name := range rawDefs(t) {
		if !used[name] {
			t.Errorf("$defs/%s is never used", name)
		}
	}
}

// TestQuantityDefinitions holds that each kind of quantity is written as
// schema/unit reads it, and that the examples can be read.
func TestQuantityDefinitions(t *testing.T) {
	kinds := 0
	for name, def := range rawDefs(t) {
		def := def.(map[string]any)
		var pattern string
		parse := func(string) error { return nil }
		for _, kind := range unit.Kinds() {
			if kind.String() == name {
				kinds++
				pattern, parse = kind.Pattern(), func(text string) error { _, err := unit.ParseKind(kind, text); return err }
				if kindNames[kind] == "" || exampleOf(kind) == "" {
					t.Errorf("no words for %s", kind)
				}
			}
		}
		switch name {
		case "date":
			pattern, parse = unit.DatePattern, func(text string) error { _, err := unit.ParseDate(text); return err }
		case "clock":
			pattern, parse = unit.ClockPattern, func(text string) error { _, err := unit.ParseClockTime(text); return err }
		}
		if pattern == "" {
			continue
		}
		if def["pattern"] != pattern {
			want, _ := json.Marshal(pattern)
			t.Errorf("$defs/%s: the pattern should be %s", name, want)
		}
		for _, example := range def["examples"].([]any) {
			if err := parse(example.(string)); err != nil || !regexp.MustCompile(pattern).MatchString(example.(string)) {
				t.Errorf("$defs/%s: the example %q can't be read: %v", name, example, err)
			}
		}
	}
	if kinds < 10 {
		t.Errorf("only %d kinds of quantity are defined", kinds)
	}
}

// examples finds what a description puts between double quotes.
var examples = regexp.MustCompile(`"([^"]+)"`)

// TestEveryKeyIsDescribed holds that every key tells in whole sentences what to
// measure or read, and that a quantity shows how it is written, in units that
// the program takes and in an amount that its key can have.
func TestEveryKeyIsDescribed(t *testing.T) {
	root := rawSchema(t)
	defs := root["$defs"].(map[string]any)
	for object, s := range contract() {
		def := root
		if object.Name() != "Layout" {
			def = defs[defName(object)].(map[string]any)
		}
		if text, _ := def["description"].(string); !strings.HasSuffix(text, ".") {
			t.Errorf("%s is not described: %q", object.Name(), text)
		}
		for _, f := range s.fields {
			property := def["properties"].(map[string]any)[f.name].(map[string]any)
			text, _ := property["description"].(string)
			if f.name == "note" || f.name == "evidence" {
				text = defs[f.name].(map[string]any)["description"].(string)
			}
			if len(text) < 12 || !strings.HasSuffix(text, ".") || strings.Contains(text, "\n") {
				t.Errorf("%s.%s: not a sentence: %q", object.Name(), f.name, text)
			}
			for _, kind := range unit.Kinds() {
				if property["$ref"] == "#/$defs/"+kind.String() && !showsQuantity(text, kind, f.rule) {
					t.Errorf("%s.%s: shows no %s that the key can have: %q", object.Name(), f.name, kind, text)
				}
			}
		}
	}
}

func showsQuantity(text string, kind unit.Kind, rule string) bool {
	for _, example := range examples.FindAllStringSubmatch(text, -1) {
		if r, err := unit.ParseKind(kind, example[1]); err == nil && breaks(rule, r.Low, r.High) == "" {
			return true
		}
	}
	return false
}

// gasWork are words of work that only a licensed person may do. The schema's
// words are printed as instructions, so none of these may stand in them.
var gasWork = regexp.MustCompile(`(?i)\b(disconnect|unscrew|unfasten|loosen|undo|dismantle|pressuri[sz]e|drill|bleed|purge|light the|open the|turn on|crack|tighten|connect the|fit the|cut|bend the|solder it|adjust)\b`)

func TestNoWordAsksForGasWork(t *testing.T) {
	seen := 0
	eachSchema("", rawSchema(t), func(at string, schema map[string]any) {
		text, _ := schema["description"].(string)
		if found := gasWork.FindString(text); found != "" {
			t.Errorf("%s: %q in %q", at, found, text)
		}
		if text != "" {
			seen++
		}
	})
	if seen < 700 {
		t.Errorf("only %d descriptions", seen)
	}
	if !gasWork.MatchString("Open the valve.") {
		t.Error("the test finds nothing")
	}
}

// TestReferencePatterns holds the reader's form of references against the
// pattern that the schema has for the same key.
func TestReferencePatterns(t *testing.T) {
	texts := []string{"", "open-air", "open-air/x", "side", "/lockers/side", "lockers/", "lockers//side", "lockers/side/", "lockers/side/vents", "lockers/si de",
		"lockers/-x", "lockers/" + strings.Repeat("a", 64), "lockers/" + strings.Repeat("a", 65), "evidence/x", "note/x", "lockers/side/vents/low", "lockers/side/v3/low", "lockers/ä", "*", "*/x", "lockers/side\n"}
	for _, section := range sections() {
		texts = append(texts, section+"/a-1", section+"/a/b/c", section)
	}
	for object, s := range contract() {
		for _, f := range s.fields {
			if f.refs == nil {
				continue
			}
			pattern := regexp.MustCompile(refPattern(f.refs))
			for _, text := range texts {
				got := pendingRef{ref: Ref(text), allowed: f.refs}.wellFormed()
				if want := pattern.MatchString(text); got != want {
					t.Errorf("%s.%s: %q is taken %v, by the pattern %v", object.Name(), f.name, text, got, want)
				}
			}
		}
	}
}

// TestSecondOpinion holds that a file that only the schema refuses is not
// loaded, and that the fault names the places.
func TestSecondOpinion(t *testing.T) {
	file := source.NewFile("layout.json", []byte(`{ "format": "lowvent-layout/1", "cylinders": { "A": { "propane": 20, "x": 1 } }, "lockers": [] }`))
	root, fault := source.Parse(file, source.Limits{})
	if fault != nil {
		t.Fatal(fault)
	}
	var got []string
	for _, f := range validate(root) {
		got = append(got, f.Place.Pointer)
		if !strings.Contains(f.Mend, "fault of the program") {
			t.Errorf("not told as a fault of the program: %v", f)
		}
	}
	if want := []string{"/cylinders/A", "/cylinders/A/propane", "/lockers"}; !slices.Equal(got, want) {
		t.Errorf("refused at %q, want %q", got, want)
	}
}
