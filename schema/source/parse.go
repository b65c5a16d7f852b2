package source

import (
	"bytes"
	"fmt"
	"strconv"

	"github.com/go-json-experiment/json/jsontext"
)

// Parse reads a file as one JSON object (RFC 8259) and gives its tree, or the
// first thing that is wrong with it and no tree. Beyond the grammar it refuses
// what the limits bound, a byte order mark, a member name used twice in one
// object, an escape that is half of a surrogate pair, a number token longer
// than 40 bytes or with an exponent beyond ±400, and a root that is not an
// object.
func Parse(f *File, l Limits) (*Node, *Fault) {
	root, fault := parseValue(f, l)
	if fault != nil {
		return nil, fault
	}
	if root.Kind != Object {
		return nil, &Fault{
			Place:    root.Place(),
			What:     "the file holds " + root.Kind.String() + " at its top",
			Expected: "one object that holds everything",
			Mend:     `begin the file with { and end it with }`,
		}
	}
	return root, nil
}

// parseValue is Parse for a root of any kind.
func parseValue(f *File, l Limits) (*Node, *Fault) {
	if f == nil {
		f = NewFile("", nil)
	}
	l = l.filled()
	if fault := checkBytes(f, l); fault != nil {
		return nil, fault
	}
	p := parser{
		doc: &document{file: f, text: string(f.Data), limits: l},
		in:  jsontext.NewDecoder(bytes.NewBuffer(f.Data), jsontext.AllowDuplicateNames(true)),
	}
	return p.parse()
}

// parser builds the tree from the decoder's tokens.
type parser struct {
	doc   *document
	in    *jsontext.Decoder
	root  *Node
	open  *Node // the innermost object or array that is not closed yet
	key   Span  // the member name read last, while its value is awaited
	depth int
	nodes int
	slab  []Node // nodes are made many at a time
}

func (p *parser) parse() (*Node, *Fault) {
	for p.root == nil || p.open != nil {
		if fault := p.step(); fault != nil {
			return nil, fault
		}
	}
	return p.root, p.atEnd()
}

// step takes one token.
func (p *parser) step() *Fault {
	switch kind := p.in.PeekKind(); kind {
	case '{', '[', '}', ']':
		if _, err := p.in.ReadToken(); err != nil {
			return p.syntaxFault(err)
		}
		end := int32(p.in.InputOffset())
		if kind == '}' || kind == ']' {
			p.shut(end)
			return nil
		}
		return p.add(kindOf(kind), Span{end - 1, end})
	default:
		raw, err := p.in.ReadValue()
		if err != nil {
			return p.syntaxFault(err)
		}
		end := int32(p.in.InputOffset())
		return p.scalar(kind, Span{end - int32(len(raw)), end})
	}
}

func (p *parser) scalar(kind jsontext.Kind, span Span) *Fault {
	if kind == '"' && p.open != nil && p.open.Kind == Object && p.key == (Span{}) {
		p.key = span
		return p.checkName()
	}
	if kind == '0' && absurdNumber(p.doc.slice(span)) {
		return p.absurd(span)
	}
	return p.add(kindOf(kind), span)
}

func kindOf(k jsontext.Kind) NodeKind {
	switch k {
	case '{':
		return Object
	case '[':
		return Array
	case '"':
		return String
	case '0':
		return Number
	case 't', 'f':
		return Bool
	}
	return Null
}

// add hangs a new value into the tree and goes into it if it can hold others.
func (p *parser) add(kind NodeKind, span Span) *Fault {
	if p.nodes++; p.nodes > p.doc.limits.Nodes {
		return p.tooMany(span)
	}
	n := p.newNode()
	*n = Node{Kind: kind, Span: span, Parent: p.open, doc: p.doc}
	if p.open == nil {
		p.root = n
	} else {
		p.hang(n)
	}
	if kind == Object || kind == Array {
		p.open = n
		if p.depth++; p.depth > p.doc.limits.Depth {
			return p.tooDeep(n)
		}
	}
	return nil
}

func (p *parser) hang(n *Node) {
	parent := p.open
	if parent.Kind == Array {
		n.Key = strconv.Itoa(len(parent.Children))
	} else {
		n.Key, n.KeySpan = p.doc.unquote(p.key), p.key
		p.key = Span{}
	}
	parent.Children = append(parent.Children, n)
	if parent.Kind == Object {
		parent.remember(n)
	}
}

// remember keeps the map of names of an object that has grown large.
func (n *Node) remember(child *Node) {
	switch {
	case n.byName != nil:
		n.byName[child.Key] = child
	case len(n.Children) > manyMembers:
		n.byName = make(map[string]*Node, 4*manyMembers)
		for _, c := range n.Children {
			n.byName[c.Key] = c
		}
	}
}

func (p *parser) shut(end int32) {
	p.open.Span.End = end
	p.open = p.open.Parent
	p.depth--
}

func (p *parser) newNode() *Node {
	if len(p.slab) == 0 {
		p.slab = make([]Node, min(max(16, p.nodes), 1024))
	}
	n := &p.slab[0]
	p.slab = p.slab[1:]
	return n
}

// checkName looks whether the name just read was used before in its object.
func (p *parser) checkName() *Fault {
	name := p.doc.unquote(p.key)
	first := p.open.Member(name)
	if first == nil {
		return nil
	}
	return &Fault{
		Place:    Place{File: p.doc.file, Span: p.key, Pointer: first.Pointer()},
		Related:  []Place{first.KeyPlace()},
		What:     fmt.Sprintf("the name %s is used a second time in one object; the first is on line %d", quoted(name), first.KeyPlace().Line()),
		Expected: "each name once",
		Mend:     "take one of the two out, or give it the name that was meant",
	}
}

func (p *parser) absurd(span Span) *Fault {
	return &Fault{
		Place:    p.place(span),
		What:     "a number too long or with too large an exponent to be a figure of a dwelling",
		Expected: fmt.Sprintf("at most %d characters and an exponent from -%d to %d", maxNumberBytes, maxExponent, maxExponent),
		Mend:     "round the number to the digits that were measured",
	}
}

func (p *parser) tooMany(span Span) *Fault {
	return &Fault{
		Place:    p.place(span),
		What:     fmt.Sprintf("more than %d values in one file", p.doc.limits.Nodes),
		Expected: fmt.Sprintf("at most %d", p.doc.limits.Nodes),
		Mend:     "check that this is the file that was meant; put one dwelling in one file",
	}
}

func (p *parser) tooDeep(n *Node) *Fault {
	return &Fault{
		Place:    n.Place(),
		What:     fmt.Sprintf("objects and arrays nested more than %d deep", p.doc.limits.Depth),
		Expected: fmt.Sprintf("at most %d levels", p.doc.limits.Depth),
		Mend:     "check that this is the file that was meant, and look for an opening bracket written many times",
	}
}

// place is a span of the value that is being awaited.
func (p *parser) place(span Span) Place {
	return Place{File: p.doc.file, Span: span, Pointer: p.awaited()}
}

// awaited is the pointer of the value that would come next.
func (p *parser) awaited() string {
	switch {
	case p.open == nil:
		return ""
	case p.open.Kind == Array:
		return Join(p.open.Pointer(), strconv.Itoa(len(p.open.Children)))
	case p.key != (Span{}):
		return Join(p.open.Pointer(), p.doc.unquote(p.key))
	}
	return p.open.Pointer()
}

// quoted shows a text of the file in a message: as JSON, cut if it is long.
func quoted(text string) string {
	const most = 40
	if r := []rune(text); len(r) > most {
		text = string(r[:most]) + string(ellipsis)
	}
	return string(appendQuoted(nil, text))
}
