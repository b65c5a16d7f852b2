package layout

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"
	"pgregory.net/rapid"

	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// The reader refuses some files that the schema allows, for these reasons and
// no other. No schema can say them; the reader marks each fault of its own
// with "beyond", save the first, which schema/unit finds.
//
//   - what no pattern can count: the length of a text, a day that the month
//     lacks, a range that runs backwards, a second part of a compound that
//     reaches one of the first, a temperature below absolute zero;
//   - a sign or an amount that the key can't have;
//   - one value against another: boxes, tube walls, propane and water capacity,
//     coldest and hottest, least and most pressure, dates of one paper, "none"
//     beside damage;
//   - a reference that names nothing, or a space that opens to itself;
//   - evidence for nothing or by nothing, a survey of a list that is not there;
//   - lines that are not a tree;
//   - more things than one small dwelling holds.

// excused tells whether a fault is of the first kind of reason: the schema's
// pattern for the place does hold for the text.
func excused(root *source.Node, f finding, defs map[string]any) bool {
	node := root.At(f.place.Pointer)
	_, schema := schemaAt(f.place.Pointer)
	if node == nil || node.Kind != source.String || schema == nil {
		return false
	}
	name := strings.TrimPrefix(schema.Ref, "#/$defs/")
	kinds := unit.Kinds()
	quantity := slices.IndexFunc(kinds, func(k unit.Kind) bool { return k.String() == name }) >= 0
	if !quantity && name != "date" && name != "clock" {
		return false
	}
	return regexp.MustCompile(defs[name].(map[string]any)["pattern"].(string)).MatchString(node.Text())
}

// structural gives the faults that a schema could have found.
func structural(root *source.Node, defs map[string]any) []finding {
	_, d := decode(root)
	return slices.DeleteFunc(d.found, func(f finding) bool { return f.beyond || excused(root, f, defs) })
}

// editions compiles both editions of the schema.
func editions(t testing.TB) (full, slim *jsonschema.Schema) {
	t.Helper()
	full, err := compile("published.json", published)
	if err != nil {
		t.Fatal(err)
	}
	if slim, err = compiled(); err != nil {
		t.Fatal(err)
	}
	return full, slim
}

// TestReaderAcceptsWhatTheSchemaAllows draws files from the schema. The reader
// may refuse them for the listed reasons only; with what it refuses taken out,
// one fault after the other, it loads them.
func TestReaderAcceptsWhatTheSchemaAllows(t *testing.T) {
	raw := rawSchema(t)
	defs := raw["$defs"].(map[string]any)
	full, slim := editions(t)
	files, things := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		file := source.NewFile("drawn.json", []byte(drawLayout(t, raw)))
		root, fault := source.Parse(file, source.DefaultLimits())
		if fault != nil {
			t.Fatal(fault)
		}
		if err := full.Validate(root.Value()); err != nil {
			t.Fatalf("the generator drew what the published schema refuses: %v", err)
		}
		if err := slim.Validate(root.Value()); err != nil {
			t.Fatalf("the compact schema refuses what the published one allows: %v", err)
		}
		for _, f := range structural(root, defs) {
			what, _, _ := f.words()
			t.Fatalf("%s: the reader refuses what the schema allows: %s\n%s", f.place.Pointer, what, file.Data)
		}
		files++
		things += len(pruned(t, file).byRef)
	})
	if things < 5*files {
		t.Errorf("after pruning only %d things were left in %d files: the test says little", things, files)
	}
}

// pruned takes out every value that is at fault until the file loads.
func pruned(t *rapid.T, file *source.File) *Layout {
	for {
		l, faults := Load(file)
		if len(faults) == 0 {
			return l
		}
		// From the end, so that a list's items keep their numbers.
		for _, f := range slices.Backward(faults) {
			next, err := source.Apply(file, nil, []source.Edit{{Pointer: f.Place.Pointer, Delete: true}})
			if err != nil {
				t.Fatalf("%v\n%v", err, f)
			}
			file = next
		}
	}
}

// mutants are values put in the place of others.
var mutants = []string{"null", "true", "0", "-1", "2.5", "1e2", "200000", `""`, `" "`, `"x"`, `"open-air"`, `"lockers/side"`, `"lockers/side/vents/low"`, `"5 m"`, `"-5 m"`,
	`"5 kg"`, `"0 %"`, `"200 %"`, `"2031-02-30"`, `"2031"`, `"24:00"`, `"7:30"`, `"none"`, `"propane"`, `"proved"`, "[]", "{}", `["a"]`, `["none","none"]`, `{"x":1}`,
	`{"x":{}}`, `[["1 m","2 m","3 m"],["1 m","2 m","3 m"]]`, `["1 m","2 m","3 m"]`, `["1 m","2 m"]`, `{"from":["0 m","0 m","0 m"]}`, `{"a b":{}}`, `"lowvent-layout/1"`}

// mutated damages one node of a text: another value, another name, gone, or
// doubled under another name.
func mutated(t *rapid.T, text string, names []string) string {
	root, fault := source.Parse(source.NewFile("m.json", []byte(text)), source.DefaultLimits())
	if fault != nil {
		return text
	}
	var all []*source.Node
	var collect func(n *source.Node)
	collect = func(n *source.Node) {
		for _, child := range n.Children {
			all = append(all, child)
			collect(child)
		}
	}
	if collect(root); len(all) == 0 {
		return text
	}
	n := rapid.SampledFrom(all).Draw(t, "node")
	put := func(span source.Span, with string) string { return text[:span.Start] + with + text[span.End:] }
	name := `"` + rapid.SampledFrom(names).Draw(t, "name") + `"`
	switch how := rapid.IntRange(0, 3).Draw(t, "how"); {
	case how == 1 && n.KeySpan != (source.Span{}):
		return put(n.KeySpan, name)
	case how == 2 && n.KeySpan != (source.Span{}):
		return put(source.Span{Start: n.KeySpan.Start, End: n.KeySpan.Start}, name+": "+n.Raw()+", ")
	case how == 3:
		file, err := source.Apply(source.NewFile("m.json", []byte(text)), nil, []source.Edit{{Pointer: n.Pointer(), Delete: true}})
		if err != nil {
			t.Fatal(err)
		}
		return string(file.Data)
	}
	return put(n.Span, rapid.SampledFrom(mutants).Draw(t, "mutant"))
}

// TestReaderAndSchemaAgree damages good files and holds that the reader finds a
// fault that a schema could find exactly where the published schema and its
// twin refuse the file.
func TestReaderAndSchemaAgree(t *testing.T) {
	raw := rawSchema(t)
	defs := raw["$defs"].(map[string]any)
	full, slim := editions(t)
	var names []string
	for name := range keyHomes() {
		names = append(names, name)
	}
	names = append(names, "A", "x", "left one", "", "legnth")
	slices.Sort(names)
	bases := []string{readText(t, pontoon), readText(t, cabin)}
	allowed, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom(bases).Draw(t, "base")
		for range rapid.IntRange(1, 3).Draw(t, "damages") {
			text = mutated(t, text, names)
		}
		root, fault := source.Parse(source.NewFile("m.json", []byte(text)), source.DefaultLimits())
		if fault != nil {
			return // a name twice: no tree, and nothing to compare
		}
		if agreed(t, root, full, slim, defs) {
			allowed++
		} else {
			refused++
		}
	})
	if allowed == 0 || refused == 0 {
		t.Errorf("%d files allowed, %d refused: the test says little", allowed, refused)
	}
}

// agreed tells whether the file is allowed, of which all must be of one mind.
func agreed(t interface{ Fatalf(string, ...any) }, root *source.Node, full, slim *jsonschema.Schema, defs map[string]any) bool {
	published, twin := full.Validate(root.Value()), slim.Validate(root.Value())
	if (published == nil) != (twin == nil) {
		t.Fatalf("published: %v\ntwin: %v\n%s", published, twin, root.Raw())
	}
	found := structural(root, defs)
	switch {
	case published == nil && len(found) > 0:
		what, _, _ := found[0].words()
		t.Fatalf("only the reader refuses it, at %s: %s\n%s", found[0].place.Pointer, what, root.Raw())
	case published != nil && len(found) == 0:
		t.Fatalf("only the schema refuses it: %#v\n%s", published, root.Raw())
	}
	return published == nil
}
