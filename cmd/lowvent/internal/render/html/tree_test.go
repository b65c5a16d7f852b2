package html

import (
	"bytes"
	"encoding/xml"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/paper"
)

// node is an element as a strict XML parser reads it, or a text between elements.
type node struct {
	name  string // "" for a text
	attrs map[string]string
	text  string
	below []*node
}

// parsed reads a page back. Whatever is not well-formed ends the test.
func parsed(t interface{ Fatal(...any) }, page []byte) *node {
	d := xml.NewDecoder(bytes.NewReader(page))
	path := []*node{{name: "document"}}
	for {
		token, err := d.Token()
		if token == nil {
			if err.Error() != "EOF" || len(path) != 1 {
				t.Fatal(err, len(path), string(page))
			}
			return path[0]
		}
		last := path[len(path)-1]
		switch token := token.(type) {
		case xml.StartElement:
			n := &node{name: token.Name.Local, attrs: map[string]string{}}
			for _, a := range token.Attr {
				n.attrs[a.Name.Local] = a.Value
			}
			last.below = append(last.below, n)
			path = append(path, n)
		case xml.EndElement:
			path = path[:len(path)-1]
		case xml.CharData:
			last.below = append(last.below, &node{text: string(token)})
		}
	}
}

// page writes a document and reads it back.
func read(t *testing.T, d *paper.Document) *node {
	t.Helper()
	return parsed(t, written(t, d))
}

// all is every element of the names, in order.
func (n *node) all(names ...string) []*node {
	var found []*node
	for _, name := range names {
		if n.name == name {
			found = append(found, n)
		}
	}
	for _, b := range n.below {
		found = append(found, b.all(names...)...)
	}
	return found
}

// first is the first element of a name.
func (n *node) first(t *testing.T, name string) *node {
	t.Helper()
	found := n.all(name)
	if len(found) == 0 {
		t.Fatalf("there is no <%s>", name)
	}
	return found[0]
}

// classed is every element that has a class among its own.
func (n *node) classed(class string) []*node {
	var found []*node
	if strings.Contains(" "+n.attrs["class"]+" ", " "+class+" ") {
		found = append(found, n)
	}
	for _, b := range n.below {
		found = append(found, b.classed(class)...)
	}
	return found
}

// words is all of its text, with one space where there is any.
func (n *node) words() string {
	var b strings.Builder
	n.gather(&b)
	return strings.Join(strings.Fields(b.String()), " ")
}

func (n *node) gather(b *strings.Builder) {
	b.WriteString(n.text)
	for _, each := range n.below {
		each.gather(b)
	}
	switch n.name {
	case "", "strong", "time", "a", "span":
	default:
		b.WriteByte(' ') // what stands on lines of its own
	}
}

// each calls a function with every element.
func (n *node) each(f func(*node)) {
	if n.name != "" {
		f(n)
	}
	for _, b := range n.below {
		b.each(f)
	}
}
