package main

import (
	"cmp"
	"fmt"
	"go/ast"
	"go/token"
	"slices"
	"strconv"
	"strings"
)

// form tells how a mutant stands beside the original in one program, which chooses
// between them when it runs: text that is put around a span of the file, and where it
// is an operator or a name that changes, what stands in its place. Forms of nested spans
// are just put around each other. ID stands for the mutant's number.
type form struct {
	from, to  int // the span
	open, end string
	instead   string // of the bytes that the mutant replaces; nothing: they stay
}

func (f form) exists() bool { return f.open != "" }

// negation turns a condition or a constant about.
var negation = form{open: "((", end: ") != mutation.On(ID))"}

// operator is the form of a mutant of an operator. What compares both ways is left to
// the operator's neighbour; a negation stands around it.
func (g *generator) operator(n *ast.BinaryExpr, text string) form {
	switch {
	case n.Op == token.LAND || n.Op == token.LOR:
		f := g.around(n, fmt.Sprintf("mutation.Both(ID, %t, ", n.Op == token.LAND), ") })")
		f.instead = ", func() bool { return ("
		return f
	case n.Op == token.EQL || n.Op == token.NEQ || text == opposites[n.Op][0] && len(opposites[n.Op]) > 1:
		return g.around(n, negation.open, negation.end)
	case len(opposites[n.Op]) > 1:
		f := g.around(n, fmt.Sprintf("mutation.Compare(ID, %q, ", n.Op), ")")
		f.instead = ","
		return f
	}
	f := g.around(n, fmt.Sprintf("mutation.Reckon(ID, %q, ", n.Op), ")")
	f.instead = ","
	return f
}

// field is the form of a field, or of a word of a package, that another replaces. A
// field is gone to by its address, since it may be written, or its address taken; what a
// call gives has none.
func (g *generator) field(n *ast.SelectorExpr, other string) form {
	x := g.source(n.X)
	if _, isCall := n.X.(*ast.CallExpr); isCall || g.imports[x] {
		return g.around(n, "mutation.Either(ID, ", ", "+x+"."+other+")")
	}
	return g.around(n, "(*mutation.Either(ID, &", ", &"+x+"."+other+"))")
}

// called is the form of a call whose callee another replaces; what both give is known
// by the name.
func (g *generator) called(n *ast.CallExpr, f ast.Node, other string) form {
	var gives string
	switch name := callee(n); last(name) {
	case "min", "max":
		first := form{from: g.offset(n.Args[0].Pos()), to: g.offset(n.Rparen), open: "ID, "}
		first.instead = "mutation." + map[string]string{"min": "Least", "max": "Most"}[name]
		return first
	case "AtLeast", "AtMost", "All", "Any":
		gives = "Ruling"
	default:
		gives = "Edit"
	}
	if x, _, qualified := strings.Cut(callee(n), "."); x == "unit" {
		gives = "bool"
	} else if qualified && x != "" {
		gives = map[string]string{"Ruling": "check.", "Edit": "report."}[gives] + gives
	}
	whole := g.source(n)
	a, b := g.offset(f.Pos())-g.offset(n.Pos()), g.offset(f.End())-g.offset(n.Pos())
	return g.around(n, "mutation.Either(ID, func() "+gives+" { return ", " }, func() "+gives+" { return "+whole[:a]+other+whole[b:]+" })()")
}

// clause is the form of a call without one of its last arguments.
func (g *generator) clause(n *ast.CallExpr, first, i int) form {
	if n.Ellipsis.IsValid() {
		return form{}
	}
	return form{from: g.offset(n.Args[first].Pos()), to: g.offset(n.Args[len(n.Args)-1].End()),
		open: fmt.Sprintf("mutation.Without(ID, %d, ", i-first), end: ")..."}
}

// piece is text that is put into a file.
type piece struct {
	at, skip int
	text     string
	id       int // of the mutant
	kind     int
}

// The order of pieces at one place.
const (
	ends = iota
	opens
	instead
)

// merged is a file with mutants beside the original, and for each of them the span that
// it takes there.
func merged(data []byte, all map[int]mutant) (text []byte, spans map[int][2]int) {
	pieces := []piece{{at: packageEnd(data), text: "; import \"" + choosing + "\"", id: -1}}
	for id, m := range all {
		number := func(text string) string { return strings.ReplaceAll(text, "ID", strconv.Itoa(id)) }
		f := m.beside
		pieces = append(pieces, piece{f.from, 0, number(f.open), id, opens}, piece{f.to, 0, number(f.end), id, ends})
		if f.instead != "" {
			pieces = append(pieces, piece{m.from, m.to - m.from, f.instead, id, instead})
		}
	}
	slices.SortFunc(pieces, func(a, b piece) int {
		order := cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.kind, b.kind))
		if order != 0 || a.id < 0 || b.id < 0 {
			return order
		}
		return nested(a, b, all[a.id].beside, all[b.id].beside)
	})
	spans = map[int][2]int{}
	done := 0
	for _, p := range pieces {
		text = append(text, data[done:p.at]...)
		if p.kind == opens {
			spans[p.id] = [2]int{len(text), 0}
		}
		text = append(text, p.text...)
		if p.kind == ends && p.id >= 0 {
			spans[p.id] = [2]int{spans[p.id][0], len(text)}
		}
		done = p.at + p.skip
	}
	return append(text, data[done:]...), spans
}

// nested orders what opens or ends at one place: the wider opens first and ends last.
func nested(a, b piece, x, y form) int {
	if a.kind == opens {
		return cmp.Or(cmp.Compare(y.to, x.to), cmp.Compare(a.id, b.id))
	}
	return cmp.Or(cmp.Compare(y.from, x.from), cmp.Compare(b.id, a.id))
}

// packageEnd is where the package clause ends.
func packageEnd(data []byte) int {
	from := 0
	if !strings.HasPrefix(string(data), "package ") {
		from = strings.Index(string(data), "\npackage ") + 1
	}
	return from + strings.IndexByte(string(data[from:]), '\n')
}
