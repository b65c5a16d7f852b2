package source

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// The document of RFC 6901 (April 2013), section 5.
const rfc6901 = `{
   "foo": ["bar", "baz"],
   "": 0,
   "a/b": 1,
   "c%d": 2,
   "e^f": 3,
   "g|h": 4,
   "i\\j": 5,
   "k\"l": 6,
   " ": 7,
   "m~n": 8
}`

func TestPointersOfRFC6901(t *testing.T) {
	root := parsed(t, rfc6901)
	tests := []struct{ pointer, want string }{
		// RFC 6901, section 5, in the order given there; the JSON strings of
		// the RFC are written here as Go raw strings after unescaping.
		{``, rfc6901},
		{`/foo`, `["bar", "baz"]`},
		{`/foo/0`, `"bar"`},
		{`/`, `0`},
		{`/a~1b`, `1`},
		{`/c%d`, `2`},
		{`/e^f`, `3`},
		{`/g|h`, `4`},
		{`/i\j`, `5`},
		{`/k"l`, `6`},
		{`/ `, `7`},
		{`/m~0n`, `8`},
	}
	for _, test := range tests {
		n := root.At(test.pointer)
		if got := n.Raw(); got != test.want {
			t.Errorf("%q: got %q, want %q", test.pointer, got, test.want)
		}
		if got := n.Pointer(); got != test.pointer {
			t.Errorf("%q is named %q", test.pointer, got)
		}
	}
}

func TestPointersThatLeadNowhere(t *testing.T) {
	root := parsed(t, `{"a": {"b": [10, 20]}, "s": "x", "~1": 3, "/": 4, "~2": 5}`)
	tests := []struct{ why, pointer string }{
		{"section 3: each token is prefixed by /", "a"},
		{"section 3: ~ only as ~0 or ~1", "/~2"},
		{"section 3: ~ only as ~0 or ~1", "/~"},
		{"no such member", "/b"},
		{"no such member further down", "/a/c"},
		{"into a text", "/s/0"},
		{"a trailing / names a member of its own", "/a/"},
		{"section 4: - is the element after the last", "/a/b/-"},
		{"past the end", "/a/b/2"},
		{"section 4: no leading zeros", "/a/b/01"},
		{"section 4: digits only", "/a/b/+1"},
		{"section 4: digits only", "/a/b/1e0"},
		{"section 4: digits only", "/a/b/-1"},
		{"an index is not empty", "/a/b/"},
		{"larger than any integer", "/a/b/99999999999999999999999999"},
		{"names are compared as written, section 4", "/A"},
	}
	for _, test := range tests {
		if n := root.At(test.pointer); n != nil {
			t.Errorf("%s: %q leads to %s", test.why, test.pointer, n.Raw())
		}
	}
	// Section 4: ~1 is decoded before ~0, so ~01 is the name ~1 and never /.
	if got := root.At("/~01").Raw() + root.At("/~1").Raw(); got != "34" {
		t.Errorf("~01 and ~1 lead to %s", got)
	}
}

func TestJoin(t *testing.T) {
	tests := []struct{ pointer, key, want string }{
		{"", "a", "/a"},
		{"/a", "b", "/a/b"},
		{"", "", "/"},
		{"/a", "", "/a/"},
		{"", "a/b", "/a~1b"},
		{"", "m~n", "/m~0n"},
		{"", "~1", "/~01"},
		{"/é", "€", "/é/€"},
	}
	for _, test := range tests {
		if got := Join(test.pointer, test.key); got != test.want {
			t.Errorf("Join(%q, %q) = %q, want %q", test.pointer, test.key, got, test.want)
		}
	}
}

func TestSplitUndoesJoin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		keys := rapid.SliceOf(names()).Draw(t, "keys")
		pointer := ""
		for _, key := range keys {
			pointer = Join(pointer, key)
		}
		if !wellFormed(pointer) {
			t.Fatalf("%q is not well formed", pointer)
		}
		if diff := cmp.Diff(append([]string{}, keys...), append([]string{}, Split(pointer)...)); diff != "" {
			t.Fatalf("%q: %s", pointer, diff)
		}
	})
}

func FuzzSplit(f *testing.F) {
	for _, seed := range []string{"", "/", "a", "/~", "/~2", "/a//b", "/\xff"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, pointer string) {
		tokens := Split(pointer)
		if !wellFormed(pointer) {
			return
		}
		again := ""
		for _, token := range tokens {
			again = Join(again, token)
		}
		if again != pointer {
			t.Errorf("%q becomes %q", pointer, again)
		}
	})
}
