package main

import (
	"fmt"
	"go/ast"
	"go/token"
	"slices"
	"strings"
)

// opposites are what each operator becomes: its negation first, and then its
// neighbour, which only what is exactly at a limit can tell from it.
var opposites = map[token.Token][]string{
	token.EQL: {"!="}, token.NEQ: {"=="},
	token.LSS: {">=", "<="}, token.GEQ: {"<", ">"}, token.GTR: {"<=", ">="}, token.LEQ: {">", "<"},
	token.LAND: {"||"}, token.LOR: {"&&"},
	token.ADD: {"-"}, token.SUB: {"+"}, token.MUL: {"/"}, token.QUO: {"*"},
}

// swaps are the calls that stand for each other.
var swaps = map[string]string{"AtLeast": "AtMost", "AtMost": "AtLeast", "min": "max", "max": "min", "Any": "All", "All": "Any", "Raise": "Lower", "Lower": "Raise"}

// fields are the fields and words that stand for each other.
var fields = map[string]string{"Low": "High", "High": "Low", "VentLevelLow": "VentLevelHigh", "VentLevelHigh": "VentLevelLow", "LeastInlet": "MostInlet", "MostInlet": "LeastInlet",
	"From": "To", "To": "From", "Closable": "Blockable", "Blockable": "Closable", "Propane": "SleeveMass", "SleeveMass": "Propane", "At": "EndsAt", "EndsAt": "At"}

// visit makes the mutants of one node.
func (g *generator) visit(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.FuncLit:
		outer := g.boolean
		g.boolean = givesBool(n.Type)
		ast.Inspect(n.Body, g.visit)
		g.boolean = outer
		return false
	case *ast.BinaryExpr:
		g.binary(n)
	case *ast.IfStmt:
		g.negate(n.Cond)
	case *ast.CaseClause:
		g.caseClause(n)
	case *ast.ReturnStmt:
		g.returned(n)
	case *ast.ExprStmt:
		if _, isCall := n.X.(*ast.CallExpr); isCall && !isPanic(n.X) {
			g.add(n, "dropped", "", form{open: "if !mutation.On(ID) { ", end: " }"})
		}
	case *ast.CallExpr:
		g.call(n)
	case *ast.SelectorExpr:
		if other := fields[n.Sel.Name]; other != "" {
			g.add(n.Sel, "swapped in "+clip(g.source(n)), other, g.field(n, other))
		}
	case *ast.Ident:
		g.constant(n)
	}
	return true
}

func (g *generator) binary(n *ast.BinaryExpr) {
	if n.Op == token.ADD && (isText(n.X) || isText(n.Y)) {
		return // words for people
	}
	for _, text := range opposites[n.Op] {
		from := n.OpPos
		g.addOperator(n, from, text)
	}
}

// addOperator notes a mutant of an operator; its key shows the whole expression.
func (g *generator) addOperator(n *ast.BinaryExpr, at token.Pos, text string) {
	a, b := g.offset(at), g.offset(at)+len(n.Op.String())
	whole := g.source(n)
	shift := g.offset(n.Pos())
	g.all = append(g.all, mutant{path: g.path, line: g.files.Position(at).Line, function: g.function, from: a, to: b, how: "operator", wholeBytes: g.data,
		old: whole, text: text})
	last := &g.all[len(g.all)-1]
	last.beside = g.operator(n, text)
	last.how = fmt.Sprintf("operator in %s", clip(whole[:a-shift]+"["+n.Op.String()+"]"+whole[b-shift:]))
	last.old = n.Op.String()
}

func isText(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.BasicLit:
		return e.Kind == token.STRING
	case *ast.BinaryExpr:
		return e.Op == token.ADD && (isText(e.X) || isText(e.Y))
	case *ast.CallExpr:
		if f, ok := e.Fun.(*ast.SelectorExpr); ok {
			return slices.Contains([]string{"Label", "Pointer", "ID", "Ref", "String", "Join", "Symbol"}, f.Sel.Name)
		}
	}
	return false
}

func isPanic(e ast.Expr) bool {
	call := e.(*ast.CallExpr)
	f, ok := call.Fun.(*ast.Ident)
	return ok && f.Name == "panic"
}

// negate turns a condition into its opposite, unless a mutant of its operator does.
func (g *generator) negate(e ast.Expr) {
	if b, ok := e.(*ast.BinaryExpr); ok && b.Op != token.LAND && b.Op != token.LOR {
		return
	}
	g.add(e, "negated", "!("+g.source(e)+")", negation)
}

// caseClause negates each condition of a switch without a tag.
func (g *generator) caseClause(n *ast.CaseClause) {
	for _, e := range n.List {
		switch e.(type) {
		case *ast.BinaryExpr, *ast.UnaryExpr, *ast.CallExpr:
			g.negate(e)
		}
	}
}

// returned makes a function that gives a bool give a constant.
func (g *generator) returned(n *ast.ReturnStmt) {
	if !g.boolean || len(n.Results) != 1 {
		return
	}
	for _, text := range []string{"true", "false"} {
		if g.source(n.Results[0]) != text {
			g.add(n.Results[0], "constant", text, form{open: map[string]string{"true": "(mutation.On(ID) || (", "false": "(!mutation.On(ID) && ("}[text], end: "))"})
		}
	}
}

func (g *generator) constant(n *ast.Ident) {
	switch n.Name {
	case "true":
		g.add(n, "constant", "false", negation)
	case "false":
		g.add(n, "constant", "true", negation)
	}
}

// call swaps what is called, swaps a limit that is passed, and drops clauses.
func (g *generator) call(n *ast.CallExpr) {
	name := callee(n)
	if other := swaps[last(name)]; other != "" && name != "box.All" {
		f := n.Fun
		if index, ok := f.(*ast.IndexExpr); ok {
			f = index.X
		}
		if selector, ok := f.(*ast.SelectorExpr); ok {
			f = selector.Sel
		}
		g.add(f, "swapped in "+clip(g.source(n)), other, g.called(n, f, other))
	}
	for _, a := range n.Args {
		g.limit(a)
	}
	// The descriptor is the first argument, the section or the subjects the second.
	first := map[string]int{"check.For": 2, "check.ForItems": 2, "check.ForDwelling": 1, "check.All": 1, "check.Any": 1}[name]
	if first == 0 || len(n.Args)-first < 2 {
		return
	}
	for i := first; i < len(n.Args); i++ {
		from, to := n.Args[i].Pos(), n.Args[i].End()
		if i > first {
			from = n.Args[i-1].End()
		} else {
			to = n.Args[i+1].Pos()
		}
		g.addSpan(from, to, fmt.Sprintf("clause %d of %s dropped", i-first+1, name), "", g.clause(n, first, i))
	}
}

// limit puts another limit of the same type in the place of one.
func (g *generator) limit(e ast.Expr) {
	selector, ok := e.(*ast.SelectorExpr)
	if !ok {
		return
	}
	if x, ok := selector.X.(*ast.Ident); !ok || x.Name != "code" {
		return
	}
	names := g.limits[selector.Sel.Name]
	if len(names) < 2 {
		return
	}
	i := slices.Index(names, selector.Sel.Name)
	other := names[(i+1)%len(names)]
	g.add(selector.Sel, "limit", other, g.around(selector, "mutation.Either(ID, ", ", code."+other+")"))
}

func callee(n *ast.CallExpr) string {
	f := n.Fun
	if index, ok := f.(*ast.IndexExpr); ok {
		f = index.X
	}
	switch f := f.(type) {
	case *ast.Ident:
		return f.Name
	case *ast.SelectorExpr:
		if x, ok := f.X.(*ast.Ident); ok {
			return x.Name + "." + f.Sel.Name
		}
		return "." + f.Sel.Name
	}
	return ""
}

func last(name string) string { return name[strings.LastIndex(name, ".")+1:] }
