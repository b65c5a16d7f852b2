package source

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// parsed is the tree of a text that is meant to be good.
func parsed(t testing.TB, text string) *Node {
	t.Helper()
	root, fault := Parse(NewFile("t.json", []byte(text)), Limits{})
	if fault != nil {
		t.Fatalf("%s\n%v", text, fault)
	}
	return root
}

// walk visits a node and all below it.
func walk(n *Node, visit func(*Node)) {
	visit(n)
	for _, child := range n.Children {
		walk(child, visit)
	}
}

// names are drawn so that RFC 6901 escapes, JSON escapes, code points of every
// length and near collisions all turn up.
func names() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.SampledFrom([]string{"", "a", "b", "0", "1", "-", "~", "/", "~1", "~0", "a/b", "m~n", " ", "é", "€", "𝄞", `"`, `\`, "\n", "k=v", "01"}),
		rapid.StringN(0, 6, -1),
	)
}

// numbers are JSON number tokens within the bounds of this package.
func numbers() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.Custom(func(t *rapid.T) string { return strconv.Itoa(rapid.Int().Draw(t, "int")) }),
		rapid.StringMatching(`-?(0|[1-9][0-9]{0,8})(\.[0-9]{1,8})?([eE][+-]?[0-3]?[0-9]{1,2})?`),
	)
}

// spaces is white space as RFC 8259, section 2, has it.
func spaces() *rapid.Generator[string] {
	return rapid.SampledFrom([]string{"", "", "", " ", "\n", "\r\n", "\r", "\t", "\n  "})
}

// texts are JSON string tokens, written with and without escapes.
func texts() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.Map(names(), func(s string) string { return string(appendQuoted(nil, s)) }),
		rapid.Map(names(), escapeAll),
		rapid.SampledFrom([]string{`"\u00e9\/\b\f"`, `"\ud834\udd1e"`, `"24 in"`}),
	)
}

// escapeAll writes every character as an escape \u.
func escapeAll(s string) string {
	var b strings.Builder
	for _, r := range s {
		if r > 0xFFFF {
			r -= 0x10000
			fmt.Fprintf(&b, `\u%04x\u%04X`, 0xD800+r>>10, 0xDC00+r&0x3FF)
			continue
		}
		fmt.Fprintf(&b, `\u%04x`, r)
	}
	return `"` + b.String() + `"`
}

// values are JSON values with random spacing and no name twice in an object.
func values(depth int) *rapid.Generator[string] {
	scalars := rapid.OneOf(texts(), numbers(), rapid.SampledFrom([]string{"true", "false", "null"}))
	if depth == 0 {
		return scalars
	}
	return rapid.OneOf(scalars, objects(depth), arrays(depth))
}

func arrays(depth int) *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string {
		elements := rapid.SliceOfN(values(depth-1), 0, 4).Draw(t, "elements")
		return "[" + spaced(t, elements) + "]"
	})
}

func objects(depth int) *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string {
		keys := rapid.SliceOfNDistinct(names(), 0, rapid.SampledFrom([]int{3, 20}).Draw(t, "most"), rapid.ID[string]).Draw(t, "names")
		members := make([]string, len(keys))
		for i, key := range keys {
			colon := spaces().Draw(t, "before") + ":" + spaces().Draw(t, "after")
			members[i] = string(appendQuoted(nil, key)) + colon + values(depth-1).Draw(t, "value")
		}
		return "{" + spaced(t, members) + "}"
	})
}

// spaced joins parts with commas and white space around them.
func spaced(t *rapid.T, parts []string) string {
	parts = slices.Clone(parts)
	for i, part := range parts {
		parts[i] = spaces().Draw(t, "before") + part + spaces().Draw(t, "after")
	}
	if len(parts) == 0 {
		return spaces().Draw(t, "inside")
	}
	return strings.Join(parts, ",")
}
