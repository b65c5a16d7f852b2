package layout

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"maps"
	"os"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the generated twin of the schema and the goldens of the malformed files anew")

// TestCompactIsFresh holds that the embedded twin is what the published schema
// gives today.
func TestCompactIsFresh(t *testing.T) {
	want := compactOf(t, published)
	if *update {
		if err := os.WriteFile("layout.compact.json", want, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if diff := cmp.Diff(string(want), string(compact)); diff != "" {
		t.Errorf("layout.compact.json is stale; run go test ./schema/layout -run TestCompactIsFresh -update\n%s", diff)
	}
}

// compactOf takes out of the published schema what only people and editors
// read, and says the rest in draft-07, which the validator compiles faster.
func compactOf(t *testing.T, text []byte) []byte {
	t.Helper()
	var root map[string]any
	if err := json.Unmarshal(text, &root); err != nil {
		t.Fatal(err)
	}
	slim := compacted(root, false).(map[string]any)
	hoist(slim)
	slim["$schema"] = "http://json-schema.org/draft-07/schema#"
	var out bytes.Buffer
	encoder := json.NewEncoder(&out)
	encoder.SetEscapeHTML(false)
	if err := encoder.Encode(slim); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// compacted drops annotations. Below named, keys are names of the contract and
// not keywords.
func compacted(v any, named bool) any {
	switch v := v.(type) {
	case []any:
		out := make([]any, len(v))
		for i, item := range v {
			out[i] = compacted(item, false)
		}
		return out
	case map[string]any:
		out := map[string]any{}
		for key, value := range v {
			switch {
			case named:
				out[key] = compacted(value, false)
			case annotations[key]:
			case key == "oneOf":
				out["enum"] = consts(value.([]any))
			default:
				out[key] = compacted(value, naming[key])
			}
		}
		return out
	}
	return v
}

// hoist gives each pattern one definition, so that it is compiled once and not
// wherever an id or a reference can stand: that takes half the time otherwise.
func hoist(root map[string]any) {
	defs := root["$defs"].(map[string]any)
	names := map[string]string{} // of the patterns that are not defined yet
	define := func(pattern string) any {
		if names[pattern] == "" {
			names[pattern] = fmt.Sprintf("pattern%d", len(names)+1)
		}
		return map[string]any{"$ref": "#/$defs/" + names[pattern]}
	}
	var lift func(v any, named bool) any
	lift = func(v any, named bool) any {
		schema, ok := v.(map[string]any)
		if !ok {
			return v
		}
		if pattern, ok := schema["pattern"].(string); ok && !named {
			return define(pattern)
		}
		if listed, ok := schema["patternProperties"].(map[string]any); ok && !named {
			for id, thing := range listed {
				delete(schema, "patternProperties")
				schema["propertyNames"], schema["additionalProperties"] = define(id), thing
			}
			return schema
		}
		for _, key := range slices.Sorted(maps.Keys(schema)) {
			schema[key] = lift(schema[key], !named && naming[key])
		}
		return schema
	}
	lift(root, false)
	for pattern, name := range names {
		defs[name] = map[string]any{"type": "string", "pattern": pattern}
	}
}

// annotations are the keywords that refuse nothing.
var annotations = map[string]bool{"$id": true, "title": true, "description": true, "examples": true}

// naming are the keywords below which keys are names.
var naming = map[string]bool{"properties": true, "patternProperties": true, "$defs": true}

func consts(choices []any) []any {
	out := make([]any, len(choices))
	for i, choice := range choices {
		out[i] = choice.(map[string]any)["const"]
	}
	return out
}
