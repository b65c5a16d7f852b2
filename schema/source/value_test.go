package source

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// plain reads a text with the standard library, numbers as written.
func plain(t interface{ Fatalf(string, ...any) }, text string) any {
	in := json.NewDecoder(strings.NewReader(text))
	in.UseNumber()
	var v any
	if err := in.Decode(&v); err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	return v
}

func TestValue(t *testing.T) {
	want := map[string]any{
		"title": `Van "Jo"`, "floor": json.Number("6.10"), "dry": false, "wet": true, "none": nil,
		"lockers": []any{map[string]any{"id": "a"}, []any{}, "x"},
	}
	if diff := cmp.Diff(any(want), parsed(t, sample).Value()); diff != "" {
		t.Error(diff)
	}
}

func TestValueAgreesWithStandardLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := objects(3).Draw(t, "text")
		root, fault := Parse(NewFile("t.json", []byte(text)), Limits{})
		if fault != nil {
			t.Fatalf("%q: %v", text, fault)
		}
		if diff := cmp.Diff(plain(t, text), root.Value()); diff != "" {
			t.Fatal(diff)
		}
	})
}

// What is given out may be changed without harm to the tree.
func TestValueIsNew(t *testing.T) {
	root := parsed(t, sample)
	root.Value().(map[string]any)["lockers"].([]any)[2] = "changed"
	if got := root.At("/lockers/2").Value(); got != "x" {
		t.Errorf("the tree now holds %v", got)
	}
}

// The example object of RFC 8259 (December 2017), section 13.
const rfc8259Object = `{
  "Image": {
      "Width":  800,
      "Height": 600,
      "Title":  "View from 15th Floor",
      "Thumbnail": {
          "Url":    "http://www.example.com/image/481989943",
          "Height": 125,
          "Width":  100
      },
      "Animated" : false,
      "IDs": [116, 943, 234, 38793]
    }
}`

func TestExampleOfRFC8259(t *testing.T) {
	root := parsed(t, rfc8259Object)
	// Section 13: "Its Image member is an object whose Thumbnail member is an
	// object and whose IDs member is an array of numbers."
	image := root.Member("Image")
	if image.Kind != Object || image.Member("Thumbnail").Kind != Object || image.Member("IDs").Kind != Array {
		t.Error("the kinds are not those the RFC tells")
	}
	for _, id := range image.Member("IDs").Children {
		if id.Kind != Number {
			t.Errorf("%s is %v", id.Raw(), id.Kind)
		}
	}
	want := `{"Image":{"Animated":false,"Height":600,"IDs":[116,943,234,38793],"Thumbnail":{"Height":125,"Url":"http://www.example.com/image/481989943","Width":100},"Title":"View from 15th Floor","Width":800}}`
	if got := root.Compact(); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

func TestCompact(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"order and space", "{ \"b\" : [ 1 , 2 ] ,\n\"a\" : { } }", `{"a":{},"b":[1,2]}`},
		{"escapes that need not be", `{"\u0061":"\/\u00e9"}`, `{"a":"/é"}`},
		{"escapes that must be", `{"a":"\u0022\u005c\u000a\u0001"}`, `{"a":"\"\\\n\u0001"}`},
		{"numbers by value", `{"a":[1,1.0,10e-1,0.1E1,-0,0e9,100,1e2]}`, `{"a":[1,1,1,1,0,0,100,100]}`},
		{"text is not a number", `{"a":["1",1]}`, `{"a":["1",1]}`},
		{"literals", `{"a":[true,false,null,"true"]}`, `{"a":[true,false,null,"true"]}`},
		{"byte order of names", `{"é":1,"z":2,"Z":3,"":4}`, `{"":4,"Z":3,"z":2,"é":1}`},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := parsed(t, test.text).Compact(); got != test.want {
				t.Errorf("got %s, want %s", got, test.want)
			}
		})
	}
}

func TestCompactKeepsTheValue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := objects(3).Draw(t, "text")
		root, fault := Parse(NewFile("", []byte(text)), Limits{})
		if fault != nil {
			t.Fatalf("%q: %v", text, fault)
		}
		sameNumbers := cmp.Comparer(func(a, b json.Number) bool { return sameValue(string(a), string(b)) })
		if diff := cmp.Diff(root.Value(), plain(t, root.Compact()), sameNumbers); diff != "" {
			t.Fatal(diff)
		}
	})
}

func TestCompactForgetsTheOrderOfMembers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		keys := rapid.SliceOfNDistinct(names(), 1, 20, rapid.ID[string]).Draw(t, "names")
		var members []string
		for _, key := range keys {
			members = append(members, string(appendQuoted(nil, key))+":"+values(1).Draw(t, "value"))
		}
		shuffled := rapid.Permutation(slices.Clone(members)).Draw(t, "shuffled")
		a, fault := Parse(NewFile("", []byte("{"+strings.Join(members, ",")+"}")), Limits{})
		b, other := Parse(NewFile("", []byte("{"+strings.Join(shuffled, ",")+"}")), Limits{})
		if fault != nil || other != nil {
			t.Fatalf("%v %v", fault, other)
		}
		if a.Compact() != b.Compact() {
			t.Fatalf("%s\n%s", a.Compact(), b.Compact())
		}
	})
}
