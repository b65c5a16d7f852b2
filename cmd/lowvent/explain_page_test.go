package main

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"
	"testing"
)

// node is an element of a page, or a run of text.
type node struct {
	name     string // "" for text
	text     string
	attr     map[string]string
	children []*node
}

// wellFormed reads a page as XML; the test fails if it is none.
func wellFormed(t *testing.T, page string) *node {
	t.Helper()
	root := &node{}
	open := []*node{root}
	for d := xml.NewDecoder(strings.NewReader(page)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("the page is not well formed: %v", err)
		}
		top := open[len(open)-1]
		switch token := token.(type) {
		case xml.StartElement:
			n := &node{name: token.Name.Local, attr: map[string]string{}}
			for _, each := range token.Attr {
				n.attr[each.Name.Local] = each.Value
			}
			top.children, open = append(top.children, n), append(open, n)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			top.children = append(top.children, &node{text: string(token)})
		}
	}
	return root
}

// all lists the elements below a node that have a name and, unless it is "", a class.
func (n *node) all(name, class string) []*node {
	var found []*node
	for _, each := range n.children {
		if each.name == name && (class == "" || each.attr["class"] == class) {
			found = append(found, each)
		}
		found = append(found, each.all(name, class)...)
	}
	return found
}

// says is all the text below a node.
func (n *node) says() string {
	if n.name == "" && len(n.children) == 0 {
		return n.text
	}
	var all []string
	for _, each := range n.children {
		all = append(all, each.says())
	}
	return flat(strings.Join(all, " "))
}

// one is the text of the first element of that name and class, "" where there is none.
func (n *node) one(name, class string) string {
	for _, each := range n.all(name, class) {
		return each.says()
	}
	return ""
}

var placed = regexp.MustCompile(`^line (\d+), column (\d+)$`)

// workingsInHTML reads the tables of workings off a page.
func workingsInHTML(t *testing.T, page *node) []working {
	t.Helper()
	var all []working
	for _, table := range page.all("table", "working") {
		var w working
		for i, row := range table.all("tbody", "")[0].all("tr", "") {
			cells := row.all("td", "")
			if got := cells[0].says(); got != fmt.Sprint(i+1) {
				t.Fatalf("line %d is numbered %s", i+1, got)
			}
			w.lines = append(w.lines, lineInHTML(t, cells[1].says(), row))
		}
		all = append(all, w)
	}
	return all
}

func lineInHTML(t *testing.T, role string, row *node) lineShown {
	t.Helper()
	l := lineShown{role: role, symbol: row.all("th", "")[0].says(), what: row.one("span", "what"), formula: row.one("code", "formula"),
		value: row.one("span", "value"), source: row.one("span", "source"), pointer: row.one("code", "pointer")}
	l.si, _, _ = strings.Cut(row.one("span", "si"), " ")
	l.low, l.high, _ = strings.Cut(strings.TrimPrefix(row.one("span", "band"), "of "), " to ")
	l.valid = strings.TrimPrefix(row.one("span", "valid"), "holds for: ")
	if at := placed.FindStringSubmatch(row.one("span", "place")); at != nil {
		l.line, l.column = whole(t, at[1]), whole(t, at[2])
	}
	switch {
	case l.what == "":
		if role == "limit" || role == "constant" {
			l.what = l.value // what a limit says in words stands once
		}
	case l.pointer != "" && strings.HasPrefix(l.what, "the key "):
		l.what = l.pointer // the key stands for it
	}
	return l
}
