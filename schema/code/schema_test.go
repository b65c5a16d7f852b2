package code

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v5"
	"pgregory.net/rapid"

	"lowvent.example/schema/source"
)

// TestSchemaIsValid holds the published schema against the 2020-12 metaschema:
// the compiler validates it, and refuses a keyword with a wrong value.
func TestSchemaIsValid(t *testing.T) {
	s, err := compiled()
	if err != nil {
		t.Fatal(err)
	}
	if s.Draft != jsonschema.Draft2020 {
		t.Errorf("the schema is not of draft 2020-12 but %v", s.Draft)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("broken.json", bytes.NewReader(bytes.Replace(Schema(), []byte(`"minProperties": 1`), []byte(`"minProperties": "one"`), 1))); err != nil {
		t.Fatal(err)
	}
	if _, err := c.Compile("broken.json"); err == nil {
		t.Error("the compiler takes a schema that is not valid")
	}
}

func TestSchemaIsTheCallersOwn(t *testing.T) {
	Schema()[0] = 'x'
	if Schema()[0] != '{' {
		t.Error("a caller changed the schema")
	}
}

func TestNothingIsLoaded(t *testing.T) {
	if _, err := noLoading("https://example.invalid/schema"); err == nil {
		t.Error("a reference was followed")
	}
}

// TestBuiltInFilesFitTheSchema holds each built-in file, and the good one of the
// tests, against the published schema.
func TestBuiltInFilesFitTheSchema(t *testing.T) {
	entries, err := files.ReadDir("codes")
	if err != nil {
		t.Fatal(err)
	}
	if len(entries) != len(Profiles()) {
		t.Errorf("%d files, %d profiles", len(entries), len(Profiles()))
	}
	for _, e := range entries {
		data, err := files.ReadFile("codes/" + e.Name())
		if err != nil {
			t.Fatal(err)
		}
		root := tree(t, string(data))
		if faults := validate(root); faults != nil {
			t.Errorf("%s: %s", e.Name(), faults)
		}
		if id := root.Member("id").Text(); id+".json" != e.Name() {
			t.Errorf("%s has the id %s", e.Name(), id)
		}
	}
	if faults := validate(tree(t, string(mine(t)))); faults != nil {
		t.Error(faults)
	}
}

// TestSecondOpinion holds that what the schema alone refuses is a fault at the
// innermost value that it refuses.
func TestSecondOpinion(t *testing.T) {
	cases := []struct{ edit, pointer string }{
		{`/title = 7`, "/title"},
		{`/entries/alarm.gas/rule/asked = false`, "/entries/alarm.gas/rule/asked"},
		{`/entries/locker.low-vent-area/rule/allOf/1/perUnit/0/rate = 1`, "/entries/locker.low-vent-area/rule/allOf/1/perUnit/0/rate"},
		{`/extra = 1`, ""},
		{`/entries/a~1b%20c = 1`, "/entries/a~1b%20c"},
	}
	for _, c := range cases {
		faults := validate(tree(t, string(edited(t, mine(t), c.edit))))
		if len(faults) != 1 || faults[0].Place.Pointer != c.pointer {
			t.Errorf("%s: %v at %q, want %q", c.edit, faults, faults[0].Place.Pointer, c.pointer)
		}
	}
}

// TestSecondOpinionIsSteady holds that of several values which the schema
// refuses the first in the file is named, whatever order they were found in.
func TestSecondOpinionIsSteady(t *testing.T) {
	data := edited(t, edited(t, edited(t, mine(t), `/edition = 7`), `/title = 7`), `/note = 7`)
	for range 50 {
		if faults := validate(tree(t, string(data))); len(faults) != 1 || faults[0].Place.Pointer != "/title" {
			t.Fatalf("%v at %q", faults, faults[0].Place.Pointer)
		}
	}
}

// schemaTree is the published schema as plain values.
func schemaTree(t testing.TB) map[string]any {
	t.Helper()
	var all map[string]any
	if err := json.Unmarshal(Schema(), &all); err != nil {
		t.Fatal(err)
	}
	return all
}

// at follows keys into plain values.
func at(t testing.TB, v any, path ...string) any {
	t.Helper()
	for _, key := range path {
		m, ok := v.(map[string]any)
		if !ok || m[key] == nil {
			t.Fatalf("no %q of %v in the schema", key, path)
		}
		v = m[key]
	}
	return v
}

// consts lists the words of a oneOf, in order.
func consts(t testing.TB, v any) []string {
	t.Helper()
	var words []string
	for _, choice := range v.([]any) {
		if word, ok := choice.(map[string]any)["const"].(string); ok {
			words = append(words, word)
		}
	}
	return words
}

// TestSchemaAgreesWithTheDecoder holds every list of words and every set of keys
// of the schema against the one that the decoder uses.
func TestSchemaAgreesWithTheDecoder(t *testing.T) {
	root := schemaTree(t)
	var perBook []string
	for _, b := range []Book{BookProfile, BookPractice, BookOwn} {
		perBook = append(perBook, provenances(b)...)
	}
	words := map[string][2][]string{
		"book":       {consts(t, at(t, root, "properties", "book", "oneOf")), books[1:]},
		"format":     {{at(t, root, "properties", "format", "const").(string)}, {Format}},
		"dwellings":  {consts(t, at(t, root, "properties", "scope", "properties", "dwellings", "items", "oneOf")), FactDwellingKind.Words()},
		"provenance": {consts(t, at(t, root, "$defs", "entry", "properties", "provenance", "oneOf")), perBook},
		"branch":     {consts(t, at(t, root, "$defs", "branch", "oneOf")), {"notAsked", "notCovered"}},
		"profile":    {keysOf(t, root), sorted(profileKeys)},
		"entry":      {keysOf(t, at(t, root, "$defs", "entry")), sorted(entryKeys(0))},
	}
	for name, pair := range words {
		if diff := cmp.Diff(pair[0], pair[1]); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
	var listed []string
	for _, f := range forms() {
		listed = append(listed, f.key)
	}
	var defined []string
	for _, ref := range at(t, root, "$defs", "rule", "oneOf").([]any) {
		name := strings.TrimPrefix(ref.(map[string]any)["$ref"].(string), "#/$defs/")
		defined = append(defined, at(t, root, "$defs", name, "required").([]any)[0].(string))
	}
	slices.Sort(listed)
	slices.Sort(defined)
	if diff := cmp.Diff(listed, defined); diff != "" {
		t.Errorf("forms of a rule: %s", diff)
	}
}

func keysOf(t testing.TB, object any) []string {
	t.Helper()
	var names []string
	for name := range at(t, object, "properties").(map[string]any) {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

func sorted(k keys) []string { return slices.Sorted(slices.Values(slices.Concat(k.must, k.may))) }

// TestSchemaDescribesEverything holds that every property and every choice has
// a description of its own, and that objects are closed.
func TestSchemaDescribesEverything(t *testing.T) {
	var walk func(path string, v any)
	walk = func(path string, v any) {
		switch v := v.(type) {
		case map[string]any:
			described := v["description"] != nil || v["$ref"] != nil
			if (v["const"] != nil || v["type"] != nil) && !described && !strings.HasSuffix(path, "/items") {
				t.Errorf("%s has no description", path)
			}
			if v["type"] == "object" && v["additionalProperties"] == nil {
				t.Errorf("%s is open to any key", path)
			}
			for key, inner := range v {
				walk(path+"/"+key, inner)
			}
		case []any:
			for i, inner := range v {
				walk(fmt.Sprintf("%s/%d", path, i), inner)
			}
		}
	}
	walk("", schemaTree(t))
}

// damage draws an edit somewhere in a profile: a value dropped, or another of
// any kind in its place.
func damage(r *rapid.T, root *source.Node) source.Edit {
	var pointers []string
	var walk func(*source.Node)
	walk = func(n *source.Node) {
		for _, child := range n.Children {
			pointers = append(pointers, child.Pointer())
			walk(child)
		}
	}
	walk(root)
	at := rapid.SampledFrom(pointers).Draw(r, "at")
	if rapid.Bool().Draw(r, "delete") {
		return source.Edit{Pointer: at, Delete: true}
	}
	if rapid.IntRange(0, 3).Draw(r, "new key") == 0 {
		at += "/-"
		if n := root.At(at[:len(at)-2]); n.Kind != source.Array {
			at = n.Pointer()
		}
	}
	value := rapid.SampledFrom([]string{`0`, `2`, `2.0`, `-1e300`, `true`, `null`, `""`, `"x"`, `"2 %"`, `"5 cm2"`, `"notAsked"`, `"2021"`, `"lockers"`, `[]`, `{}`,
		`{"fixed": "5 cm2"}`, `{"oneOf": ["lockers"]}`, `{"asked": true}`, `["lockers", "lockers"]`}).Draw(r, "value")
	return source.Edit{Pointer: at, Value: value}
}

// TestDecoderIsTheStricter holds that whatever the schema refuses, the decoder
// refuses too, so the decoder alone is complete; and that a file is either a
// whole profile or faults with places.
func TestDecoderIsTheStricter(t *testing.T) {
	original := mine(t)
	rapid.Check(t, func(r *rapid.T) {
		file := source.NewFile("mine.json", original)
		for range rapid.IntRange(1, 3).Draw(r, "edits") {
			root, fault := source.Parse(file, source.Limits{})
			if fault != nil {
				r.Fatal(fault)
			}
			changed, err := source.Apply(file, root, []source.Edit{damage(r, root)})
			if err != nil {
				continue
			}
			file = changed
		}
		root, fault := source.Parse(file, source.Limits{})
		if fault != nil {
			r.Fatal(fault)
		}
		p, faults := decode(root)
		if (p == nil) != (len(faults) > 0) {
			r.Fatalf("profile %v with faults %v", p, faults)
		}
		if p != nil {
			if second := validate(root); second != nil {
				r.Fatalf("the decoder takes what the schema refuses: %s\n%s", second, file.Data)
			}
		}
		for _, f := range faults {
			if f.Place.Line() == 0 || f.What == "" {
				r.Fatalf("a fault without place or reason: %+v", f)
			}
		}
	})
}
