package layout

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"pgregory.net/rapid"
)

// generator draws files that the published schema allows, from that schema
// alone: it knows nothing of the Go types.
type generator struct {
	defs map[string]any
	t    *rapid.T
}

// ids are few, so that references often name something.
var ids = []string{"A", "b-2", "c.3_x"}

// value draws a value for a schema. The root is richer than what lies below.
func (g *generator) value(schema map[string]any, depth int) any {
	if ref, ok := schema["$ref"].(string); ok {
		return g.value(g.defs[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any), depth)
	}
	if choices, ok := schema["oneOf"].([]any); ok {
		return rapid.SampledFrom(choices).Draw(g.t, "word").(map[string]any)["const"]
	}
	switch schema["type"] {
	case "object":
		return g.object(schema, depth)
	case "array":
		return g.array(schema, depth)
	case "boolean":
		return rapid.Bool().Draw(g.t, "flag")
	case "integer":
		return rapid.SampledFrom([]json.Number{"0", "1", "2", "100000", "3.0", "1e2", "-0", "20E-1"}).Draw(g.t, "count")
	case "string":
		return g.text(schema)
	}
	panic(fmt.Sprintf("no generator for %v", schema))
}

func (g *generator) object(schema map[string]any, depth int) any {
	out := map[string]any{}
	required, _ := schema["required"].([]any)
	properties, _ := schema["properties"].(map[string]any)
	seldom := min(1+depth, 4) // one in so many and one of the optional keys
	for _, name := range slices.Sorted(maps.Keys(properties)) {
		if slices.Contains(required, any(name)) || rapid.IntRange(0, seldom).Draw(g.t, "with "+name) == 0 {
			out[name] = g.value(properties[name].(map[string]any), depth+1)
		}
	}
	named, _ := schema["patternProperties"].(map[string]any)
	for _, listed := range named {
		for _, id := range ids[:rapid.IntRange(0, 2).Draw(g.t, "things")] {
			out[id] = g.value(listed.(map[string]any), depth+1)
		}
	}
	return out
}

func (g *generator) array(schema map[string]any, depth int) any {
	least, most := 0, 3
	if n, ok := schema["minItems"].(float64); ok {
		least = int(n)
	}
	if n, ok := schema["maxItems"].(float64); ok {
		most = int(n)
	}
	out := []any{}
	for range rapid.IntRange(least, most).Draw(g.t, "items") {
		item := g.value(schema["items"].(map[string]any), depth+1)
		if schema["uniqueItems"] != true || !slices.Contains(out, item) {
			out = append(out, item)
		}
	}
	return out
}

// text draws what a pattern allows: an example, or anything that matches.
func (g *generator) text(schema map[string]any) any {
	pattern := schema["pattern"].(string)
	if list, ok := schema["examples"].([]any); ok && rapid.IntRange(0, 2).Draw(g.t, "example") > 0 {
		return rapid.SampledFrom(list).Draw(g.t, "text")
	}
	if into, ok := sectionsIn(pattern); ok {
		return rapid.SampledFrom(into).Draw(g.t, "section") + "/" + rapid.SampledFrom(ids).Draw(g.t, "id")
	}
	if pattern == `\S` {
		return rapid.SampledFrom([]string{"x", " two words ", "\u00a0", "ä\n🜁", `"`, "</script>"}).Draw(g.t, "words")
	}
	return rapid.StringMatching(pattern).Draw(g.t, "match")
}

// sectionsIn reads the sections out of a reference's pattern.
func sectionsIn(pattern string) ([]string, bool) {
	list, ok := strings.CutPrefix(pattern, "^(")
	list = strings.TrimPrefix(list, "open-air|(")
	list, _, found := strings.Cut(list, ")/")
	return strings.Split(list, "|"), ok && found && strings.Contains(pattern, idForm)
}

// drawLayout draws the text of a file that the published schema allows.
func drawLayout(t *rapid.T, root map[string]any) string {
	g := &generator{defs: root["$defs"].(map[string]any), t: t}
	text, err := json.MarshalIndent(g.value(root, 0), "", " ")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
