package source

import (
	"encoding/json"
	"strings"

	"github.com/go-json-experiment/json/jsontext"
)

// NodeKind tells the six kinds of JSON value apart.
type NodeKind uint8

// The kinds of JSON value (RFC 8259, section 3).
const (
	Object NodeKind = iota + 1
	Array
	String
	Number
	Bool
	Null
)

// String names the kind as a message would, with its article.
func (k NodeKind) String() string {
	switch k {
	case Object:
		return "an object"
	case Array:
		return "an array"
	case String:
		return "a text"
	case Number:
		return "a number"
	case Bool:
		return "true or false"
	case Null:
		return "null"
	}
	return "nothing"
}

// manyMembers is the size past which an object keeps a map of its names. Below
// it, comparing one by one is quicker and costs no memory.
const manyMembers = 16

// Node is one JSON value and where it was written. A tree is not changed once
// it is parsed and may be read from many goroutines. The accessors are safe on
// nil, where they give the zero value.
type Node struct {
	Kind     NodeKind
	Span     Span   // of the value
	KeySpan  Span   // of the member name with its quotes; zero for elements and the root
	Key      string // the member name, or the index as a decimal; "" for the root
	Parent   *Node
	Children []*Node // members or elements in file order

	doc    *document
	byName map[string]*Node // only past manyMembers
}

// document is what all nodes of one tree share.
type document struct {
	file   *File
	text   string // the content once more, so that keys and texts can share it
	limits Limits
}

// File is the file that the node was parsed from.
func (n *Node) File() *File {
	if n == nil {
		return nil
	}
	return n.doc.file
}

// Member gives the value of an object's member of that name, or nil when there
// is none or the node is not an object.
func (n *Node) Member(key string) *Node {
	if n == nil || n.Kind != Object {
		return nil
	}
	if n.byName != nil {
		return n.byName[key]
	}
	for _, child := range n.Children {
		if child.Key == key {
			return child
		}
	}
	return nil
}

// element gives an array's element by its index written as RFC 6901 has it:
// decimal, without sign or leading zeros.
func (n *Node) element(token string) *Node {
	i := 0
	for _, c := range []byte(token) {
		if c < '0' || c > '9' || i >= len(n.Children) {
			return nil
		}
		i = i*10 + int(c-'0')
	}
	// The keys are canonical, so this refuses "", "01" and their like.
	if i >= len(n.Children) || n.Children[i].Key != token {
		return nil
	}
	return n.Children[i]
}

func (n *Node) child(token string) *Node {
	if n != nil && n.Kind == Array {
		return n.element(token)
	}
	return n.Member(token)
}

// Pointer is the JSON Pointer (RFC 6901) of the node from the root of its
// tree; "" for the root.
func (n *Node) Pointer() string {
	var room [128]byte
	return string(n.appendPointer(room[:0]))
}

func (n *Node) appendPointer(b []byte) []byte {
	if n == nil || n.Parent == nil {
		return b
	}
	return AppendToken(n.Parent.appendPointer(b), n.Key)
}

// At gives the node that a JSON Pointer leads to from this one, or nil when it
// leads nowhere or is not well formed.
func (n *Node) At(pointer string) *Node {
	if !wellFormed(pointer) {
		return nil
	}
	found, rest := n.follow(Split(pointer))
	if len(rest) > 0 {
		return nil
	}
	return found
}

// follow goes as far as the tokens lead and gives the tokens left over.
func (n *Node) follow(tokens []string) (*Node, []string) {
	for i, token := range tokens {
		next := n.child(token)
		if next == nil {
			return n, tokens[i:]
		}
		n = next
	}
	return n, nil
}

// Place is where the value is written.
func (n *Node) Place() Place {
	if n == nil {
		return Place{}
	}
	return Place{File: n.doc.file, Span: n.Span, Pointer: n.Pointer()}
}

// KeyPlace is where the member name is written; the place of the value for an
// element or the root, which have no name.
func (n *Node) KeyPlace() Place {
	p := n.Place()
	if n != nil && n.KeySpan != (Span{}) {
		p.Span = n.KeySpan
	}
	return p
}

// Raw is the value as written, byte for byte.
func (n *Node) Raw() string {
	if n == nil {
		return ""
	}
	return n.doc.slice(n.Span)
}

// Text is the text of a String node with its escapes resolved, and "" for any
// other kind.
func (n *Node) Text() string {
	if n == nil || n.Kind != String {
		return ""
	}
	return n.doc.unquote(n.Span)
}

// Bool is the value of a Bool node, and false for any other kind.
func (n *Node) Bool() bool { return n != nil && n.Kind == Bool && n.Raw() == "true" }

// Number is the number as written, and "" for any other kind.
func (n *Node) Number() json.Number {
	if n == nil || n.Kind != Number {
		return ""
	}
	return json.Number(n.Raw())
}

func (d *document) slice(s Span) string { return d.text[s.Start:s.End] }

// unquote reads the JSON string at the span, which the decoder has accepted.
func (d *document) unquote(s Span) string {
	inner := d.text[s.Start+1 : s.End-1]
	if !strings.Contains(inner, `\`) {
		return inner
	}
	out, _ := jsontext.AppendUnquote(nil, d.slice(s)) // cannot fail on an accepted string
	return string(out)
}
