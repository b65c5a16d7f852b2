package layout

import (
	"testing"

	"lowvent.example/schema/source"
)

// FuzzLoad holds, for any bytes at all: no panic; a layout or faults, never
// both and never neither; the same faults again; one fault a place, in order;
// and that the reader and the schema are of one mind.
func FuzzLoad(f *testing.F) {
	for _, path := range []string{pontoon, cabin} {
		f.Add([]byte(readText(f, path)))
	}
	for _, file := range malformedFiles(f) {
		f.Add(file.Data)
	}
	defs := rawDefs(f)
	_, slim := editions(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		file := source.NewFile("fuzz.json", data)
		l, faults := Load(file)
		if (l == nil) != (len(faults) > 0) {
			t.Fatalf("a layout: %v, faults: %d", l != nil, len(faults))
		}
		if _, again := Load(source.NewFile("fuzz.json", data)); again.Error() != faults.Error() {
			t.Fatalf("faulted differently the second time:\n%v\n%v", faults, again)
		}
		for i, one := range faults {
			if one.What == "" || one.Place.File != file || i > 0 && one.Place.Span.Start <= faults[i-1].Place.Span.Start {
				t.Fatalf("fault %d of %v", i, faults)
			}
		}
		root, fault := source.Parse(file, source.DefaultLimits())
		if fault != nil {
			return
		}
		if !agreed(t, root, slim, slim, defs) && l != nil {
			t.Fatal("loaded, and the schema refuses it")
		}
	})
}

// FuzzDescribe holds that any pointer can be asked for.
func FuzzDescribe(f *testing.F) {
	for _, pointer := range []string{"", "/", "/lockers/side/vents/low/gross", "/lines/a/route/0/1", "x", "/~", "/~0~1"} {
		f.Add(pointer)
	}
	f.Fuzz(func(t *testing.T, pointer string) {
		template := Template(pointer)
		if template != "" && (Describe(pointer) == "" || Template(template) != "" && Template(template) != template) {
			t.Fatalf("%q: template %q, description %q", pointer, template, Describe(pointer))
		}
	})
}
