package source

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
)

// Apply makes the edits one after the other, each on the outcome of the one
// before, and gives the changed file under the same name. All that is not
// edited keeps its bytes. A set replaces an existing value, or adds a member
// to an object; names missing on the way are added as objects. A last token
// "-" appends to an array, and where the array itself is missing, makes it. A
// delete removes a member or an element with its comma.
//
// The root is the tree of f, or nil to have it parsed. The file is read anew
// after each edit, within the limits its tree was parsed with, so the outcome
// always parses. The error, if any, tells which edit could not be made and
// why; nothing is changed then.
func Apply(f *File, root *Node, edits []Edit) (*File, error) {
	if root == nil || root.doc.file != f {
		var fault *Fault
		if root, fault = Parse(f, Limits{}); fault != nil {
			return nil, fault
		}
	}
	for _, e := range edits {
		next, err := root.apply(e)
		if err != nil {
			return nil, fmt.Errorf("edit %s: %w", quoted(e.String()), err)
		}
		root = next
	}
	return root.doc.file, nil
}

// splice puts text in the place of a span.
type splice struct {
	span Span
	text string
}

func (n *Node) apply(e Edit) (*Node, error) {
	s, err := n.plan(e)
	if err != nil {
		return nil, err
	}
	f := n.doc.file
	data := slices.Concat(f.Data[:s.span.Start], []byte(s.text), f.Data[s.span.End:])
	root, fault := Parse(NewFile(f.Name, data), n.doc.limits)
	if fault != nil {
		return nil, fault
	}
	return root, nil
}

func (n *Node) plan(e Edit) (splice, error) {
	if err := checkPointer(e.Pointer); err != nil {
		return splice{}, err
	}
	if e.Delete {
		return n.planDelete(e.Pointer)
	}
	value := strings.Trim(e.Value, blanks)
	if err := checkValue(e.Pointer, value); err != nil {
		return splice{}, err
	}
	found, rest := n.follow(Split(e.Pointer))
	switch {
	case len(rest) == 0:
		return splice{found.Span, value}, nil
	case found.Kind == Object:
		return found.insert(rest[0], wrap(rest[1:], value)), nil
	case found.Kind == Array && rest[0] == "-":
		return found.insert("", wrap(rest[1:], value)), nil
	}
	return splice{}, found.deadEnd(rest[0])
}

// wrap makes what is missing on the way to a value.
func wrap(tokens []string, value string) string {
	for _, token := range slices.Backward(tokens) {
		if token == "-" {
			value = "[" + value + "]"
		} else {
			value = "{" + string(appendQuoted(nil, token)) + ": " + value + "}"
		}
	}
	return value
}

// insert adds a member or an element after the last one, spaced as that is.
func (n *Node) insert(key, value string) splice {
	blank, colon := "", ": "
	at := n.Span.Start + 1
	comma := ""
	if len(n.Children) > 0 {
		last := n.Children[len(n.Children)-1]
		at, comma = last.Span.End, ","
		blank = n.doc.blanksBefore(last.start())
		if n.Kind == Object {
			colon = n.doc.slice(Span{last.KeySpan.End, last.Span.Start})
		}
	}
	if n.Kind == Object {
		value = string(appendQuoted(nil, key)) + colon + value
	}
	return splice{Span{at, at}, comma + blank + value}
}

// start is where a member or an element begins, its name included.
func (n *Node) start() int32 {
	if n.KeySpan != (Span{}) {
		return n.KeySpan.Start
	}
	return n.Span.Start
}

// blanksBefore is the white space that ends at the offset.
func (d *document) blanksBefore(offset int32) string {
	before := d.file.Data[:offset]
	return string(before[len(bytes.TrimRight(before, blanks)):])
}

func (n *Node) planDelete(pointer string) (splice, error) {
	found, rest := n.follow(Split(pointer))
	switch {
	case len(rest) > 0:
		return splice{}, found.deadEnd(rest[0])
	case found.Parent == nil:
		return splice{}, &Fault{Place: found.Place(), What: "the whole file cannot be deleted", Expected: "the pointer of a member or an element"}
	}
	return splice{span: found.withComma()}, nil
}

// withComma is the span to cut out so that what is left is still JSON, and
// spaced as before.
func (n *Node) withComma() Span {
	siblings := n.Parent.Children
	i := slices.Index(siblings, n)
	switch {
	case i+1 < len(siblings):
		return Span{n.start(), siblings[i+1].start()}
	case i > 0:
		return Span{siblings[i-1].Span.End, n.Span.End}
	}
	return Span{n.Parent.Span.Start + 1, n.Parent.Span.End - 1}
}

// deadEnd explains why a pointer leads no further than this node.
func (n *Node) deadEnd(token string) *Fault {
	f := &Fault{Place: n.Place(), Expected: "a pointer to a value of the file"}
	switch n.Kind {
	case Object:
		f.What = fmt.Sprintf("the object %s has no member %s", n.described(), quoted(token))
		if near := Nearest(token, n.names()); near != "" {
			f.Mend = fmt.Sprintf("%s may be meant", quoted(near))
		}
	case Array:
		f.What = fmt.Sprintf("the array %s has no element %s; it has %d", n.described(), quoted(token), len(n.Children))
		f.Mend = `elements are counted from 0; "-" adds one at the end`
	default:
		f.What = fmt.Sprintf("%s is %s and holds no %s", n.described(), n.Kind, quoted(token))
	}
	return f
}

func (n *Node) described() string {
	if pointer := n.Pointer(); pointer != "" {
		return pointer
	}
	return "at the top"
}

func (n *Node) names() []string {
	names := make([]string, len(n.Children))
	for i, child := range n.Children {
		names[i] = child.Key
	}
	return names
}
