package source

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

const sample = `{
  "title": "Van \"Jo\"",
  "floor": 6.10,
  "dry": false, "wet": true, "none": null,
  "lockers": [ {"id": "a"}, [], "x" ]
}
`

func TestNodeAccessors(t *testing.T) {
	root := parsed(t, sample)
	if got := root.Member("title").Text(); got != `Van "Jo"` {
		t.Errorf("title: %q", got)
	}
	if got := root.Member("title").Raw(); got != `"Van \"Jo\""` {
		t.Errorf("title as written: %q", got)
	}
	if got := root.Member("floor").Number(); got != json.Number("6.10") {
		t.Errorf("floor: %q", got)
	}
	if root.Member("dry").Bool() || !root.Member("wet").Bool() {
		t.Error("booleans are mixed up")
	}
	if got := root.At("/lockers/0/id").Text(); got != "a" {
		t.Errorf("id: %q", got)
	}
	var kinds []NodeKind
	for _, child := range root.Children {
		kinds = append(kinds, child.Kind)
	}
	if diff := cmp.Diff([]NodeKind{String, Number, Bool, Bool, Null, Array}, kinds); diff != "" {
		t.Error(diff)
	}
	if root.File().Name != "t.json" {
		t.Errorf("file: %q", root.File().Name)
	}
}

// An accessor of the wrong kind, or of nothing, gives the zero value.
func TestAccessorsOfOtherKinds(t *testing.T) {
	root := parsed(t, sample)
	nodes := append([]*Node{nil, root}, root.Children...)
	for _, n := range nodes {
		kind := NodeKind(0)
		if n != nil {
			kind = n.Kind
		}
		if kind != String && n.Text() != "" {
			t.Errorf("%v has the text %q", kind, n.Text())
		}
		if kind != Number && n.Number() != "" {
			t.Errorf("%v has the number %q", kind, n.Number())
		}
		if kind != Bool && n.Bool() {
			t.Errorf("%v is true", kind)
		}
		if kind != Object && n.Member("title") != nil {
			t.Errorf("%v has members", kind)
		}
	}
	var none *Node
	if none.File() != nil || none.Raw() != "" || none.Value() != nil || none.Compact() != "" || none.Pointer() != "" {
		t.Error("nil has content")
	}
	if !none.Place().IsZero() || !none.KeyPlace().IsZero() || none.At("") != nil || none.At("/a") != nil {
		t.Error("nil is somewhere")
	}
}

func TestKindNames(t *testing.T) {
	want := []string{"nothing", "an object", "an array", "a text", "a number", "true or false", "null"}
	for k, name := range want {
		if got := NodeKind(k).String(); got != name {
			t.Errorf("%d: %q, want %q", k, got, name)
		}
	}
}

func TestPlacesOfNodes(t *testing.T) {
	root := parsed(t, sample)
	tests := []struct{ pointer, key, value string }{
		{"", "t.json:1:1", "t.json:1:1"},
		{"/title", "t.json:2:3", "t.json:2:12"},
		{"/floor", "t.json:3:3", "t.json:3:12"},
		{"/wet", "t.json:4:17", "t.json:4:24"},
		{"/lockers", "t.json:5:3", "t.json:5:14"},
		{"/lockers/0", "t.json:5:16", "t.json:5:16"},
		{"/lockers/0/id", "t.json:5:17", "t.json:5:23"},
		{"/lockers/2", "t.json:5:33", "t.json:5:33"},
	}
	for _, test := range tests {
		n := root.At(test.pointer)
		if got := n.KeyPlace().String(); got != test.key {
			t.Errorf("%s: key at %s, want %s", test.pointer, got, test.key)
		}
		if got := n.Place().String(); got != test.value {
			t.Errorf("%s: value at %s, want %s", test.pointer, got, test.value)
		}
		if n.Place().Pointer != test.pointer || n.KeyPlace().Pointer != test.pointer {
			t.Errorf("%s: pointers %q and %q", test.pointer, n.Place().Pointer, n.KeyPlace().Pointer)
		}
	}
}

// What a node is can be told again from its bytes, its key and its pointer.
func TestTreeHoldsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := spaces().Draw(t, "before") + objects(3).Draw(t, "root") + spaces().Draw(t, "after")
		f := NewFile("t.json", []byte(text))
		root, fault := Parse(f, Limits{})
		if fault != nil {
			t.Fatalf("%q: %v", text, fault)
		}
		if string(f.Data) != text {
			t.Fatal("parsing changed the bytes")
		}
		walk(root, func(n *Node) { checkNode(t, root, n) })
	})
}

func checkNode(t *rapid.T, root, n *Node) {
	if got := root.At(n.Pointer()); got != n {
		t.Fatalf("%q does not lead back to its node", n.Pointer())
	}
	if n.Raw() != string(n.File().Data[n.Span.Start:n.Span.End]) {
		t.Fatalf("%q: raw %q", n.Pointer(), n.Raw())
	}
	again, fault := parseValue(NewFile("", []byte(n.Raw())), Limits{})
	if fault != nil {
		t.Fatalf("%q: its bytes do not parse: %v", n.Raw(), fault)
	}
	if diff := cmp.Diff(n.Value(), again.Value()); diff != "" {
		t.Fatal(diff)
	}
	if n.KeySpan != (Span{}) {
		var key string
		if err := json.Unmarshal([]byte(n.doc.slice(n.KeySpan)), &key); err != nil || key != n.Key {
			t.Fatalf("key %q written %q: %v", n.Key, n.doc.slice(n.KeySpan), err)
		}
	}
	checkChildren(t, n)
}

func checkChildren(t *rapid.T, n *Node) {
	end := n.Span.Start
	for i, child := range n.Children {
		if child.Parent != n || child.start() < end || child.Span.End >= n.Span.End {
			t.Fatalf("%q: child %d is out of place", n.Pointer(), i)
		}
		end = child.Span.End
		if n.Kind == Array && child.Key != fmt.Sprint(i) {
			t.Fatalf("%q: element %d has the key %q", n.Pointer(), i, child.Key)
		}
		if n.Kind == Object && n.Member(child.Key) != child {
			t.Fatalf("%q: member %q is not found", n.Pointer(), child.Key)
		}
	}
}

// Objects look members up in another way once they are large.
func TestMemberOfSmallAndLargeObjects(t *testing.T) {
	for _, size := range []int{0, 1, manyMembers - 1, manyMembers, manyMembers + 1, 1000} {
		var members []string
		for i := range size {
			members = append(members, fmt.Sprintf(`"k%d":%d`, i, i))
		}
		root := parsed(t, "{"+strings.Join(members, ",")+"}")
		for i := range size {
			if got := root.Member(fmt.Sprintf("k%d", i)).Raw(); got != fmt.Sprint(i) {
				t.Fatalf("size %d: k%d is %q", size, i, got)
			}
		}
		if root.Member("k") != nil || root.Member(fmt.Sprintf("k%d", size)) != nil {
			t.Errorf("size %d: finds what is not there", size)
		}
		if large := root.byName != nil; large != (size > manyMembers) {
			t.Errorf("size %d: map kept: %v", size, large)
		}
	}
}
