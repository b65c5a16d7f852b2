package source

import (
	"slices"
	"strings"

	"github.com/go-json-experiment/json/jsontext"
)

// Value gives the node and all below it as plain Go values: map[string]any,
// []any, [encoding/json.Number], string, bool and nil. The result is new on
// each call and shares nothing that can be changed.
func (n *Node) Value() any {
	if n == nil {
		return nil
	}
	switch n.Kind {
	case Object:
		members := make(map[string]any, len(n.Children))
		for _, child := range n.Children {
			members[child.Key] = child.Value()
		}
		return members
	case Array:
		elements := make([]any, len(n.Children))
		for i, child := range n.Children {
			elements[i] = child.Value()
		}
		return elements
	case String:
		return n.Text()
	case Number:
		return n.Number()
	case Bool:
		return n.Bool()
	}
	return nil
}

// Compact gives the value in one canonical spelling, for comparing: no white
// space, members in byte order of their names, texts with the fewest escapes,
// and numbers by their exact decimal value, so that 1, 1.0 and 10e-1 are
// spelled alike. Two values are equal if and only if their spellings are.
// The result is JSON, though a number in it may be longer than [Parse] admits,
// and "" for nil.
func (n *Node) Compact() string {
	if n == nil {
		return ""
	}
	return string(n.appendCompact(nil))
}

func (n *Node) appendCompact(b []byte) []byte {
	switch n.Kind {
	case Object:
		return n.appendMembers(b)
	case Array:
		return append(n.appendJoined(append(b, '['), n.Children), ']')
	case String:
		return appendQuoted(b, n.Text())
	case Number:
		return append(b, plainDecimal(n.Raw())...)
	}
	return append(b, n.Raw()...)
}

func (n *Node) appendMembers(b []byte) []byte {
	sorted := slices.SortedFunc(slices.Values(n.Children), func(x, y *Node) int {
		return strings.Compare(x.Key, y.Key)
	})
	return append(n.appendJoined(append(b, '{'), sorted), '}')
}

func (n *Node) appendJoined(b []byte, children []*Node) []byte {
	for i, child := range children {
		if i > 0 {
			b = append(b, ',')
		}
		if n.Kind == Object {
			b = append(appendQuoted(b, child.Key), ':')
		}
		b = child.appendCompact(b)
	}
	return b
}

// appendQuoted writes a text as JSON. Texts of a tree are UTF-8, the only
// thing that could fail.
func appendQuoted(b []byte, text string) []byte {
	b, _ = jsontext.AppendQuote(b, text)
	return b
}
