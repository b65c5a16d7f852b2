package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// mutant is one small change to one file.
type mutant struct {
	path       string // from the top of the module
	line       int
	function   string // or the variable that is declared
	from, to   int    // the bytes that are replaced
	old, text  string
	how        string
	wholeBytes []byte // of the file as it is
	beside     form   // how it stands beside the original
}

// String tells a person where the mutant is and what it changes.
func (m mutant) String() string {
	return fmt.Sprintf("%s:%d %s: %s: %s → %s", m.path, m.line, m.function, m.how, clip(m.old), clip(m.text))
}

// key names the mutant by what it changes rather than by its line.
func (m mutant) key() string {
	return fmt.Sprintf("%s %s: %s: %s → %s", m.path, m.function, m.how, clip(m.old), clip(m.text))
}

// clip puts a snippet on one line.
func clip(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	if r := []rune(text); len(r) > 90 {
		return string(r[:90]) + "…"
	}
	if text == "" {
		return "nothing"
	}
	return text
}

// bytes is the file with the change made.
func (m mutant) bytes() []byte {
	return slices.Concat(m.wholeBytes[:m.from], []byte(m.text), m.wholeBytes[m.to:])
}

// engine are the files of the engine that decide what may be said.
var engine = []string{"corner", "figure", "fold", "limit", "note", "part", "read", "ruling", "run", "sheet", "waiver"}

// mutants generates all mutants of the checks and the engine, in order of file and
// place.
func mutants(root string) ([]mutant, error) {
	limits, err := limitGroups(root)
	if err != nil {
		return nil, err
	}
	var paths []string
	for _, folder := range []string{"gas", "vent"} {
		some, err := filepath.Glob(filepath.Join(root, folder, "*.go"))
		if err != nil {
			return nil, err
		}
		paths = append(paths, some...)
	}
	for _, name := range engine {
		paths = append(paths, filepath.Join(root, "schema", "check", name+".go"))
	}
	var all []mutant
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		short, err := filepath.Rel(root, path)
		if err != nil {
			return nil, err
		}
		some, err := ofFile(filepath.ToSlash(short), data, limits)
		if err != nil {
			return nil, err
		}
		all = append(all, some...)
	}
	return all, nil
}

// generator walks one file.
type generator struct {
	files    *token.FileSet
	path     string
	data     []byte
	limits   map[string][]string
	imports  map[string]bool // names by which the file calls packages
	function string
	boolean  bool // whether the function gives one bool
	all      []mutant
}

func ofFile(path string, data []byte, limits map[string][]string) ([]mutant, error) {
	g := &generator{files: token.NewFileSet(), path: path, data: data, limits: limits, imports: map[string]bool{}}
	file, err := parser.ParseFile(g.files, path, data, parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	for _, i := range file.Imports {
		g.imports[last(strings.ReplaceAll(strings.Trim(i.Path.Value, `"`), "/", "."))] = true
	}
	for _, d := range file.Decls {
		switch d := d.(type) {
		case *ast.FuncDecl:
			g.function, g.boolean = d.Name.Name, givesBool(d.Type)
			ast.Inspect(d.Body, g.visit)
		case *ast.GenDecl:
			if d.Tok == token.VAR {
				g.declared(d)
			}
		}
	}
	slices.SortStableFunc(g.all, func(a, b mutant) int { return a.from - b.from })
	return g.all, nil
}

// declared walks the values of variables: a check is declared as one.
func (g *generator) declared(d *ast.GenDecl) {
	for _, spec := range d.Specs {
		v := spec.(*ast.ValueSpec)
		g.function, g.boolean = v.Names[0].Name, false
		for _, value := range v.Values {
			if id := idOf(value); id != "" {
				g.function = id
			}
			ast.Inspect(value, g.visit)
		}
	}
}

// idOf finds the id of a check in its descriptor.
func idOf(value ast.Expr) (id string) {
	ast.Inspect(value, func(n ast.Node) bool {
		if pair, ok := n.(*ast.KeyValueExpr); ok && id == "" {
			if key, ok := pair.Key.(*ast.Ident); ok && key.Name == "ID" {
				if lit, ok := pair.Value.(*ast.BasicLit); ok {
					id = strings.Trim(lit.Value, `"`)
				}
			}
		}
		return id == ""
	})
	return id
}

func givesBool(f *ast.FuncType) bool {
	if f.Results == nil || len(f.Results.List) != 1 || len(f.Results.List[0].Names) > 1 {
		return false
	}
	kind, ok := f.Results.List[0].Type.(*ast.Ident)
	return ok && kind.Name == "bool"
}

func (g *generator) source(n ast.Node) string {
	return string(g.data[g.offset(n.Pos()):g.offset(n.End())])
}

func (g *generator) offset(p token.Pos) int { return g.files.Position(p).Offset }

// add notes a mutant that replaces a node, and how it stands around it beside the
// original.
func (g *generator) add(n ast.Node, how, text string, beside form) {
	if beside.to == 0 {
		beside.from, beside.to = g.offset(n.Pos()), g.offset(n.End())
	}
	g.addSpan(n.Pos(), n.End(), how, text, beside)
}

func (g *generator) addSpan(from, to token.Pos, how, text string, beside form) {
	a, b := g.offset(from), g.offset(to)
	g.all = append(g.all, mutant{path: g.path, line: g.files.Position(from).Line, function: g.function, from: a, to: b,
		old: string(g.data[a:b]), text: text, how: how, wholeBytes: g.data, beside: beside})
}

// around is a form that stands around a node.
func (g *generator) around(n ast.Node, open, end string) form {
	return form{from: g.offset(n.Pos()), to: g.offset(n.End()), open: open, end: end}
}

// limitGroups sorts the handles of the codes' terms by their Go type, so that one can
// stand where another stood.
func limitGroups(root string) (map[string][]string, error) {
	paths, err := filepath.Glob(filepath.Join(root, "schema", "code", "terms_*.go"))
	if err != nil {
		return nil, err
	}
	groups := map[string][]string{}
	for _, path := range paths {
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if spec, ok := n.(*ast.ValueSpec); ok && len(spec.Values) == 1 {
				if kind := handleType(spec.Values[0]); kind != "" {
					groups[kind] = append(groups[kind], spec.Names[0].Name)
				}
			}
			return true
		})
	}
	byName := map[string][]string{}
	for _, names := range groups {
		slices.Sort(names)
		for _, name := range names {
			byName[name] = names
		}
	}
	return byName, nil
}

// handleType is "allowed", "duty", or the quantity of a figure.
func handleType(e ast.Expr) string {
	call, ok := e.(*ast.CallExpr)
	if !ok {
		return ""
	}
	switch f := call.Fun.(type) {
	case *ast.Ident:
		return f.Name
	case *ast.IndexExpr:
		if quantity, ok := f.Index.(*ast.SelectorExpr); ok {
			return quantity.Sel.Name
		}
	}
	return ""
}
