package source

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// edited applies lines of edits to a text.
func edited(text string, lines ...string) (string, error) {
	var edits []Edit
	for _, line := range lines {
		e, err := ParseEdit(line)
		if err != nil {
			return "", err
		}
		edits = append(edits, e)
	}
	f, err := Apply(NewFile("van.json", []byte(text)), nil, edits)
	if err != nil {
		return "", err
	}
	return string(f.Data), nil
}

// The examples of RFC 6902 (April 2013), appendix A, that these edits can say:
// a set is the RFC's "add" to an object or its "replace", with "-" its "add"
// to the end of an array, and delete is its "remove".
func TestExamplesOfRFC6902(t *testing.T) {
	tests := []struct{ section, text, edit, want string }{
		{"A.1", `{ "foo": "bar"}`, `/baz = "qux"`, `{"baz": "qux", "foo": "bar"}`},
		{"A.3", `{"baz": "qux", "foo": "bar"}`, `delete /baz`, `{"foo": "bar"}`},
		{"A.4", `{"foo": [ "bar", "qux", "baz" ]}`, `delete /foo/1`, `{"foo": [ "bar", "baz" ]}`},
		{"A.5", `{"baz": "qux", "foo": "bar"}`, `/baz = "boo"`, `{"baz": "boo", "foo": "bar"}`},
		{"A.10", `{ "foo": "bar" }`, `/child = { "grandchild": { } }`, `{"foo": "bar", "child": {"grandchild": {}}}`},
		{"A.14 (the pointer)", `{"/": 9, "~1": 10}`, `/~01 = 11`, `{"/": 9, "~1": 11}`},
		{"A.16", `{ "foo": ["bar"] }`, `/foo/- = ["abc", "def"]`, `{ "foo": ["bar", ["abc", "def"]] }`},
	}
	for _, test := range tests {
		got, err := edited(test.text, test.edit)
		if err != nil {
			t.Errorf("%s: %v", test.section, err)
			continue
		}
		if diff := cmp.Diff(plain(t, test.want), plain(t, got)); diff != "" {
			t.Errorf("%s: %s", test.section, diff)
		}
	}
}

func TestApplyKeepsTheFormatting(t *testing.T) {
	const open = "{\r\n\t\"a\" : 1,\r\n\t\"b\" : [ 10, 20 ]\r\n}\r\n"
	tests := []struct {
		name, text string
		edits      []string
		want       string
	}{
		{"replace a number", open, []string{`/a = 2.50`}, strings.Replace(open, "1,", "2.50,", 1)},
		{"replace an element", open, []string{`/b/1 = "x"`}, strings.Replace(open, "20", `"x"`, 1)},
		{"replace an array", open, []string{`/b = {}`}, strings.Replace(open, "[ 10, 20 ]", "{}", 1)},
		{"add a member as the last stands", open, []string{`/c = true`}, strings.Replace(open, "20 ]", "20 ],\r\n\t\"c\" : true", 1)},
		{"append as the last stands", open, []string{`/b/- = 30`}, strings.Replace(open, "20 ]", "20, 30 ]", 1)},
		{"delete the first member", open, []string{`delete /a`}, "{\r\n\t\"b\" : [ 10, 20 ]\r\n}\r\n"},
		{"delete the last member", open, []string{`delete /b`}, "{\r\n\t\"a\" : 1\r\n}\r\n"},
		{"delete all members", open, []string{`delete /b`, `delete /a`}, "{}\r\n"},
		{"delete the first element", open, []string{`delete /b/0`}, strings.Replace(open, "10, ", "", 1)},
		{"delete the last element", open, []string{`delete /b/1`}, strings.Replace(open, ", 20", "", 1)},
		{"delete in the middle", `{"a":[1, 2,3]}`, []string{`delete /a/1`}, `{"a":[1, 3]}`},
		{"add to a compact object", `{"a":1}`, []string{`/b = 2`}, `{"a":1,"b":2}`},
		{"add to a spaced object", `{ "a": 1 }`, []string{`/b = 2`}, `{ "a": 1, "b": 2 }`},
		{"add to an empty object", `{}`, []string{`/b = 2`}, `{"b": 2}`},
		{"add to an empty object with a line in it", "{\n}", []string{`/b = 2`}, "{\"b\": 2\n}"},
		{"append to an empty array", `{"a": []}`, []string{`/a/- = 2`}, `{"a": [2]}`},
		{"missing parents are objects", `{}`, []string{`/a/b~1c/0 = 2`}, `{"a": {"b/c": {"0": 2}}}`},
		{"a missing array is made", `{}`, []string{`/a/- = 2`}, `{"a": [2]}`},
		{"below an appended element", `{"a": []}`, []string{`/a/-/id = "x"`}, `{"a": [{"id": "x"}]}`},
		{"- is a name in an object", `{"a": {}}`, []string{`/a/- = 2`}, `{"a": {"-": 2}}`},
		{"a name that needs escapes", `{"a":1}`, []string{`"/\"\n" = 2`}, `{"a":1,"\"\n":2}`},
		{"the whole file", " {\"a\":1}\n", []string{`"" = {"b":2}`}, " {\"b\":2}\n"},
		{"in order, on one another", `{"a":[1]}`, []string{`/a/- = 2`, `delete /a/0`, `/a/0 = 3`, `/b = {}`, `/b/c = 4`}, `{"a":[3],"b":{"c": 4}}`},
		{"delete and put back", open, []string{`delete /a`, `/a = 1`}, "{\r\n\t\"b\" : [ 10, 20 ],\r\n\t\"a\" : 1\r\n}\r\n"},
		{"no edits", open, nil, open},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got, err := edited(test.text, test.edits...)
			if err != nil || got != test.want {
				t.Errorf("got\n%q, %v\nwant\n%q", got, err, test.want)
			}
		})
	}
}

func TestApplyRefuses(t *testing.T) {
	const text = "{\n  \"lockers\": [ {\"id\": \"a\"} ],\n  \"name\": \"x\"\n}"
	tests := []struct {
		name string
		edit Edit
		want []string
	}{
		{"delete what is not there", Edit{Pointer: "/locker", Delete: true}, []string{"van.json:1:1", `no member "locker"`, `"lockers" may be meant`}},
		{"delete deeper than there is", Edit{Pointer: "/name/x", Delete: true}, []string{"van.json:3:11", `/name is a text and holds no "x"`}},
		{"delete past the end", Edit{Pointer: "/lockers/1", Delete: true}, []string{"van.json:2:14", `no element "1"; it has 1`, `"-" adds one`}},
		{"delete the element after the last", Edit{Pointer: "/lockers/-", Delete: true}, []string{`no element "-"`}},
		{"delete the whole file", Edit{Delete: true}, []string{"whole file cannot be deleted"}},
		{"set past the end", Edit{Pointer: "/lockers/1", Value: "{}"}, []string{"van.json:2:14", `no element "1"`, `"-" adds one`}},
		{"set by name in an array", Edit{Pointer: "/lockers/a/id", Value: "1"}, []string{`no element "a"`}},
		{"set inside a text", Edit{Pointer: "/name/first", Value: "1"}, []string{"van.json:3:11", "is a text"}},
		{"pointer without /", Edit{Pointer: "name", Value: "1"}, []string{`such as "/name"`}},
		{"pointer with a bad escape", Edit{Pointer: "/a~b", Value: "1"}, []string{"~ is written ~0"}},
		{"pointer that is not UTF-8", Edit{Pointer: "/\xff", Value: "1"}, []string{"not well formed"}},
		{"value that is no JSON", Edit{Pointer: "/name", Value: "left"}, []string{"not JSON", `"left"`}},
		{"value that smuggles a member in", Edit{Pointer: "/name", Value: `"x", "y": 1`}, []string{"not JSON"}},
		{"value that closes the object", Edit{Pointer: "/name", Value: `1} {`}, []string{"not JSON"}},
		{"no value", Edit{Pointer: "/name"}, []string{"no value"}},
		{"root that is no object", Edit{Value: "[]"}, []string{"an array at its top"}},
		{"too deep in the file", Edit{Pointer: "/a", Value: strings.Repeat("[", 64) + strings.Repeat("]", 64)}, []string{"more than 64 deep"}},
		{"too deep a path", Edit{Pointer: strings.Repeat("/a", 70), Value: "1"}, []string{"more than 64 deep"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			f := NewFile("van.json", []byte(text))
			got, err := Apply(f, parsed(t, text), []Edit{{Pointer: "/ok", Value: "1"}, test.edit})
			if err == nil || got != nil {
				t.Fatalf("applied: %s", got.Data)
			}
			for _, want := range append(test.want, "edit ") {
				if !strings.Contains(err.Error(), want) {
					t.Errorf("%v does not speak of %s", err, want)
				}
			}
			if string(f.Data) != text {
				t.Error("the file was changed")
			}
		})
	}
}

func TestApplyErrorsCarryTheFault(t *testing.T) {
	_, err := edited(`{"a": 1}`, `delete /b`)
	var fault *Fault
	if !errors.As(err, &fault) || fault.Place.Column() != 1 {
		t.Errorf("got %v", err)
	}
	if _, err = Apply(NewFile("x", []byte("{")), nil, nil); !errors.As(err, &fault) {
		t.Errorf("a file that does not parse: %v", err)
	}
}

// The tree that is given is used with its limits, and the name is kept.
func TestApplyKeepsNameAndLimits(t *testing.T) {
	f := NewFile("van.json", []byte(`{"a":1}`))
	root, fault := Parse(f, Limits{Bytes: 9})
	if fault != nil {
		t.Fatal(fault)
	}
	got, err := Apply(f, root, []Edit{{Pointer: "/a", Value: "123"}})
	if err != nil || got.Name != "van.json" || string(got.Data) != `{"a":123}` {
		t.Errorf("got %v, %v", got, err)
	}
	if _, err = Apply(f, root, []Edit{{Pointer: "/a", Value: "1234"}}); err == nil || !strings.Contains(err.Error(), "larger than 9 bytes") {
		t.Errorf("past the limit: %v", err)
	}
}

// model makes one edit on plain values, as Apply is told to.
func model(v any, tokens []string, value any, remove bool) (any, bool) {
	if len(tokens) == 0 {
		return value, !remove
	}
	token, rest := tokens[0], tokens[1:]
	switch v := v.(type) {
	case map[string]any:
		return modelMember(v, token, rest, value, remove)
	case []any:
		return modelElement(v, token, rest, value, remove)
	}
	return nil, false
}

func modelMember(v map[string]any, token string, rest []string, value any, remove bool) (any, bool) {
	old, there := v[token]
	switch {
	case !there && remove:
		return nil, false
	case !there:
		v[token] = modelMissing(rest, value)
		return v, true
	case remove && len(rest) == 0:
		delete(v, token)
		return v, true
	}
	changed, ok := model(old, rest, value, remove)
	v[token] = changed
	return v, ok
}

func modelElement(v []any, token string, rest []string, value any, remove bool) (any, bool) {
	if token == "-" && !remove {
		return append(v, modelMissing(rest, value)), true
	}
	i, err := strconv.ParseUint(token, 10, 31)
	if err != nil || strconv.FormatUint(i, 10) != token || int(i) >= len(v) {
		return nil, false
	}
	if remove && len(rest) == 0 {
		return append(v[:i], v[i+1:]...), true
	}
	changed, ok := model(v[i], rest, value, remove)
	v[i] = changed
	return v, ok
}

func modelMissing(tokens []string, value any) any {
	switch {
	case len(tokens) == 0:
		return value
	case tokens[0] == "-":
		return []any{modelMissing(tokens[1:], value)}
	}
	return map[string]any{tokens[0]: modelMissing(tokens[1:], value)}
}

// drawEdit aims at places that are there, nearly there, or not there at all.
func drawEdit(t *rapid.T, root *Node) Edit {
	var pointers []string
	walk(root, func(n *Node) { pointers = append(pointers, n.Pointer()) })
	e := Edit{Pointer: rapid.SampledFrom(pointers).Draw(t, "pointer"), Delete: rapid.Bool().Draw(t, "delete")}
	for range rapid.SampledFrom([]int{0, 0, 0, 1, 1, 2}).Draw(t, "further") {
		e.Pointer = Join(e.Pointer, names().Draw(t, "name"))
	}
	if !e.Delete {
		e.Value = values(2).Draw(t, "value")
	}
	return e
}

func TestApplyAgreesWithModel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := NewFile("t.json", []byte(objects(3).Draw(t, "file")))
		want := plain(t, string(f.Data))
		for range rapid.IntRange(1, 5).Draw(t, "edits") {
			root, fault := Parse(f, Limits{})
			if fault != nil {
				t.Fatalf("%q: %v", f.Data, fault)
			}
			e := drawEdit(t, root)
			var value any
			if !e.Delete {
				value = plain(t, e.Value)
			}
			changed, ok := model(want, Split(e.Pointer), value, e.Delete)
			if _, object := changed.(map[string]any); !object {
				ok = false
			}
			got, err := Apply(f, root, []Edit{e})
			if ok != (err == nil) {
				t.Fatalf("%q, %s: %v, the model says %v", f.Data, e, err, ok)
			}
			if err != nil {
				want = plain(t, string(f.Data)) // a refused edit may have left the model half changed
				continue
			}
			if diff := cmp.Diff(changed, plain(t, string(got.Data))); diff != "" {
				t.Fatalf("%q, %s: %q\n%s", f.Data, e, got.Data, diff)
			}
			f, want = got, changed
		}
	})
}

// All edits at once come to the same as one after the other.
func TestApplyInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		start := NewFile("t.json", []byte(objects(2).Draw(t, "file")))
		one := start
		var done []Edit
		for range rapid.IntRange(1, 6).Draw(t, "edits") {
			root, fault := Parse(one, Limits{})
			if fault != nil {
				t.Fatal(fault)
			}
			e := drawEdit(t, root)
			if next, err := Apply(one, root, []Edit{e}); err == nil {
				one, done = next, append(done, e)
			}
		}
		all, err := Apply(start, nil, done)
		if err != nil || string(all.Data) != string(one.Data) {
			t.Fatalf("%q or %q, %v", all.Data, one.Data, err)
		}
	})
}

// Outside the edited value not one byte changes.
func TestReplaceTouchesNothingElse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := NewFile("t.json", []byte(spaces().Draw(t, "before")+objects(3).Draw(t, "file")+spaces().Draw(t, "after")))
		root, fault := Parse(f, Limits{})
		if fault != nil {
			t.Fatal(fault)
		}
		var nodes []*Node
		walk(root, func(n *Node) { nodes = append(nodes, n) })
		n := rapid.SampledFrom(nodes).Draw(t, "node")
		got, err := Apply(f, root, []Edit{{Pointer: n.Pointer(), Value: `{"new":1}`}})
		if err != nil {
			t.Fatal(err)
		}
		want := string(f.Data[:n.Span.Start]) + `{"new":1}` + string(f.Data[n.Span.End:])
		if string(got.Data) != want {
			t.Fatalf("got %q, want %q", got.Data, want)
		}
		same, err := Apply(f, root, []Edit{{Pointer: n.Pointer(), Value: n.Raw()}})
		if err != nil || string(same.Data) != string(f.Data) {
			t.Fatalf("putting in what is there gives %q, %v", same.Data, err)
		}
	})
}

func FuzzApply(f *testing.F) {
	for _, seed := range []struct {
		text, pointer, value string
		remove               bool
	}{
		{sample, "/lockers/0/id", `"b"`, false}, {sample, "/lockers/-", "1", false}, {sample, "/a/b/-/c", "{}", false},
		{sample, "/lockers/2", "", true}, {sample, "", "{}", false}, {sample, "", "", true}, {rfc6901, "/a~1b", "[]", false},
		{"{}", "/a", "1} {", false}, {"{", "/a", "1", false}, {"{}", "/\xff", "1", false}, {"{}", "/~", "1", false},
	} {
		f.Add([]byte(seed.text), seed.pointer, seed.value, seed.remove)
	}
	f.Fuzz(func(t *testing.T, data []byte, pointer, value string, remove bool) {
		e := Edit{Pointer: pointer, Value: value, Delete: remove}
		got, err := Apply(NewFile("t.json", data), nil, []Edit{e})
		if err != nil {
			return
		}
		root, fault := Parse(got, Limits{})
		if fault != nil {
			t.Fatalf("%q, %s gives %q: %v", data, e, got.Data, fault)
		}
		value = strings.Trim(value, blanks)
		if !remove && !strings.Contains(string(got.Data), value) {
			t.Fatalf("%q is not in %q", value, got.Data)
		}
		if !remove && !slices.Contains(Split(pointer), "-") && root.At(pointer).Raw() != value {
			t.Fatalf("%q, %s gives %q", data, e, got.Data)
		}
	})
}

// Members of a very large object are set without looking through all others
// for each; a slip would make this test last for minutes instead of a moment.
func TestApplyToVeryManyMembers(t *testing.T) {
	const size = 100_000
	var b strings.Builder
	for i := range size {
		fmt.Fprintf(&b, `,"k%d":0`, i)
	}
	got, err := edited("{"+b.String()[1:]+"}", `/k99999 = 1`, `/new = 2`, `delete /k0`)
	if err != nil || !strings.HasPrefix(got, `{"k1":0,`) || !strings.HasSuffix(got, `"k99999":1,"new":2}`) {
		t.Errorf("%v", err)
	}
}
