package layout

import (
	"encoding/json"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/unit"
)

// published schema as plain values, to see the keywords themselves.
func rawSchema(t testing.TB) map[string]any {
	t.Helper()
	var root map[string]any
	if err := json.Unmarshal(Schema(), &root); err != nil {
		t.Fatal(err)
	}
	return root
}

func rawDefs(t testing.TB) map[string]any {
	t.Helper()
	return rawSchema(t)["$defs"].(map[string]any)
}

// defName is the name under which the schema defines a type of the contract.
func defName(t reflect.Type) string {
	return strings.ToLower(t.Name()[:1]) + t.Name()[1:]
}

// goObject states an object type of the contract in the words of the schema.
func goObject(t *testing.T, object reflect.Type) map[string]any {
	t.Helper()
	properties, required := map[string]any{}, []any{}
	for _, f := range shapeOf(object).fields {
		properties[f.name] = goField(t, object, f)
		if f.must {
			required = append(required, f.name)
		}
	}
	out := map[string]any{"type": "object", "properties": properties, "additionalProperties": false}
	if len(required) > 0 {
		out["required"] = required
	}
	return out
}

// goField states one field of the contract in the words of the schema.
func goField(t *testing.T, object reflect.Type, f field) any {
	t.Helper()
	ref := func(name string) any { return map[string]any{"$ref": "#/$defs/" + name} }
	switch f.name {
	case "note":
		return ref("note")
	case "evidence":
		return ref("evidence")
	}
	held := object.FieldByIndex(f.index).Type
	part := reflect.New(held).Interface()
	if section, ok := part.(interface{ element() reflect.Type }); ok {
		return map[string]any{"type": "object", "additionalProperties": false,
			"patternProperties": map[string]any{"^" + idForm + "$": ref(defName(section.element()))}}
	}
	if _, ok := part.(interface{ base() *Object }); ok {
		return ref(defName(held))
	}
	value := getType(held)
	if value.Kind() == reflect.Slice && value.Elem() != reflect.TypeFor[Point]() {
		return map[string]any{"type": "array", "items": goValue(t, value.Elem(), f), "uniqueItems": true}
	}
	return goValue(t, value, f)
}

// goValue states one plain type of the contract in the words of the schema.
func goValue(t *testing.T, value reflect.Type, f field) any {
	t.Helper()
	ref := func(name string) any { return map[string]any{"$ref": "#/$defs/" + name} }
	switch v := reflect.New(value).Elem().Interface().(type) {
	case Ref:
		return map[string]any{"type": "string", "pattern": refPattern(f.refs)}
	case unit.Date:
		return ref("date")
	case unit.ClockTime:
		return ref("clock")
	case Point:
		return ref("point")
	case []Point:
		return ref("points")
	case bool:
		return map[string]any{"type": "boolean"}
	case int:
		return ref("count")
	case string:
		return ref("text")
	case interface{ Choices() []string }:
		return ref(defName(value))
	default:
		nominal, ok := value.FieldByName("Nominal")
		if !ok {
			t.Fatalf("no schema for %T", v)
		}
		return ref(reflect.New(nominal.Type).Elem().Interface().(interface{ Kind() unit.Kind }).Kind().String())
	}
}

// getType is the type of the value that a Given, Measure or Words gives.
func getType(held reflect.Type) reflect.Type {
	get, _ := reflect.PointerTo(held).MethodByName("Get")
	return get.Type.Out(0)
}

// refPattern is the pattern of a reference into the sections that a tag names.
func refPattern(refs []string) string {
	named := slices.DeleteFunc(slices.Clone(refs), func(s string) bool { return s == string(OpenAir) })
	switch {
	case slices.Contains(refs, anything):
		return "^(" + strings.Join(sections(), "|") + ")/" + idForm + "(/[A-Za-z]+/" + idForm + ")*$"
	case len(named) < len(refs):
		return "^(open-air|(" + strings.Join(named, "|") + ")/" + idForm + ")$"
	}
	return "^(" + strings.Join(named, "|") + ")/" + idForm + "$"
}

// TestContractMatchesSchema holds the Go types and the published schema equal,
// name by name and in both directions: properties, kinds, required keys,
// references, closed objects.
func TestContractMatchesSchema(t *testing.T) {
	defs := rawDefs(t)
	root := compacted(rawSchema(t), false).(map[string]any)
	delete(root, "$schema")
	delete(root, "$defs")
	for object := range contract() {
		got := any(root)
		if object != reflect.TypeFor[Layout]() {
			got = compacted(defs[defName(object)], false)
		}
		if diff := cmp.Diff(goObject(t, object), got); diff != "" {
			t.Errorf("%s: Go (-) and schema (+) differ:\n%s", object.Name(), diff)
		}
	}
}

// choiceTypes finds every choice type that a field of the contract holds.
func choiceTypes() map[string][]string {
	found := map[string][]string{}
	for object, s := range contract() {
		for _, f := range s.fields {
			held := object.FieldByIndex(f.index).Type
			if _, ok := reflect.New(held).Interface().(Stated); !ok {
				continue
			}
			value := getType(held)
			if value.Kind() == reflect.Slice {
				value = value.Elem()
			}
			if choice, ok := reflect.New(value).Elem().Interface().(interface{ Choices() []string }); ok {
				found[value.Name()] = choice.Choices()
			}
		}
	}
	return found
}

// TestChoicesMatchSchema holds that each choice has the same words, in the same
// order, in Go and in the schema, and that the schema explains each word.
func TestChoicesMatchSchema(t *testing.T) {
	defs := rawDefs(t)
	for name, want := range choiceTypes() {
		def, ok := defs[strings.ToLower(name[:1])+name[1:]].(map[string]any)
		if !ok {
			t.Errorf("the schema does not define %s", name)
			continue
		}
		var got []string
		for _, choice := range def["oneOf"].([]any) {
			word := choice.(map[string]any)
			got = append(got, word["const"].(string))
			if text, _ := word["description"].(string); !strings.HasSuffix(text, ".") {
				t.Errorf("%s: %q has no whole sentence to explain it: %q", name, word["const"], text)
			}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s: Go (-) and schema (+):\n%s", name, diff)
		}
	}
	if n := len(choiceTypes()); n < 50 {
		t.Errorf("found only %d choice types", n)
	}
}

// TestChoicesAreConstants holds that every word of a choice is a typed
// constant, so that no check needs a word as a bare text, and the reverse.
func TestChoicesAreConstants(t *testing.T) {
	constants := stringConstants(t)
	for name, words := range choiceTypes() {
		want := slices.Sorted(slices.Values(words))
		got := slices.Sorted(slices.Values(constants[name]))
		if name == "FormatWord" { // its one word is the untyped constant Format
			got = []string{Format}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s: Choices (-) and constants (+):\n%s", name, diff)
		}
	}
}

// stringConstants reads the package's typed string constants by their type.
func stringConstants(t *testing.T) map[string][]string {
	t.Helper()
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	found := map[string][]string{}
	for _, entry := range entries {
		if !strings.HasSuffix(entry.Name(), ".go") || strings.HasSuffix(entry.Name(), "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), entry.Name(), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			spec, ok := n.(*ast.ValueSpec)
			if !ok || spec.Type == nil || len(spec.Values) != 1 {
				return true
			}
			typ, named := spec.Type.(*ast.Ident)
			text, literal := spec.Values[0].(*ast.BasicLit)
			if named && literal && text.Kind == token.STRING {
				word, err := strconv.Unquote(text.Value)
				if err != nil {
					t.Fatal(err)
				}
				found[typ.Name] = append(found[typ.Name], word)
			}
			return true
		})
	}
	return found
}

// contract gives the shape of every object type that a layout is made of.
func contract() map[reflect.Type]*shape {
	all := map[reflect.Type]*shape{}
	walkContract(reflect.TypeFor[Layout](), "", func(t reflect.Type, _ string) bool {
		if all[t] != nil {
			return false
		}
		all[t] = shapeOf(t)
		return true
	})
	return all
}
