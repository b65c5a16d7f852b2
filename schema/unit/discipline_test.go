package unit_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/constant"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const unitPath = "lowvent.example/schema/unit"

// A product of two unit types has the wrong unit, and a bare number beside one
// has none. Go allows both; this test forbids them outside this package.
// Formulas convert to float64 first, with the symbols of their source.
func TestUnitDiscipline(t *testing.T) {
	root := moduleRoot(t)
	watchSources(t, root)
	packages, exports := listPackages(t, root, "./...")
	checked := 0
	for _, p := range packages {
		if p.Module == nil || !p.Module.Main || p.ImportPath == unitPath || len(p.GoFiles) == 0 {
			continue
		}
		checked++
		var files []string
		for _, name := range p.GoFiles {
			files = append(files, filepath.Join(p.Dir, name))
		}
		found, err := inspect(p.ImportPath, files, nil, exports)
		if err != nil {
			t.Errorf("%s must type-check before its use of units can be judged: %v", p.ImportPath, err)
		}
		for _, offence := range found {
			t.Error(strings.TrimPrefix(offence, root+string(filepath.Separator)))
		}
	}
	if checked == 0 {
		t.Error("the module has no package besides this one: nothing was checked")
	}
}

// The test above can fail: every forbidden form in this source is found, on
// its line, and nothing else.
func TestUnitDisciplineCanFail(t *testing.T) {
	_, exports := listPackages(t, moduleRoot(t), unitPath)
	source := `package bad

import "lowvent.example/schema/unit"

const typed unit.Length = 0.05
const untyped = 0.05

func plain(a, b unit.Length, p unit.GaugePressure, n int) bool {
	_ = a * b            // want product
	_ = a / b            // want product
	_ = a + 3            // want number
	_ = -0.5 - a         // want number
	_ = 2 * a            // want number
	_ = a / 2            // want number
	_ = a + untyped      // want number
	_ = a + (1 + untyped) // want number
	_ = p * unit.GaugePressure(n) // want product
	a *= b               // want product
	a += 3               // want number
	a++                  // want number
	_ = max(a, 0.1)      // want number
	switch a {
	case 1:              // want number
	case 0, typed:
	}
	return a > 0.1 || 3 <= b || a == 1 // want number number number
}

func generic[Q unit.Quantity](a, b Q) Q {
	if a > 1 {           // want number
		return a * b     // want product
	}
	return a - b
}

type vent struct{ free unit.Area }

func field(v *vent, all []unit.Area) unit.Area {
	return v.free*all[0] + 1 // want product number
}

func allowed(a, b unit.Length, v unit.Value[unit.Length], k unit.Kind) (unit.Area, bool) {
	sum := a + b - v.Low + typed + unit.Length(0.05)
	const half = 0.5 * 2
	if a > 0 && b != 0.0 && 0 < sum && a == -0 && k == 3 {
		sum -= a
	}
	sum = min(sum, a, 0)
	L, W := float64(a), float64(b)
	area := unit.Area(L*W*0.5 + half)
	return area, unit.AtLeast(area, unit.Area(1))
}
`
	found, err := inspect("bad", []string{"bad.go"}, map[string]any{"bad.go": source}, exports)
	if err != nil {
		t.Fatal(err)
	}
	got := map[string][]string{}
	for _, offence := range found {
		parts := regexp.MustCompile(`^bad\.go:(\d+):\d+: .*(product|number)`).FindStringSubmatch(offence)
		if parts == nil {
			t.Fatalf("message %q", offence)
		}
		got[parts[1]] = append(got[parts[1]], parts[2])
	}
	want := map[string][]string{}
	for i, line := range strings.Split(source, "\n") {
		if _, kinds, marked := strings.Cut(line, "// want "); marked {
			want[fmt.Sprint(i+1)] = strings.Fields(kinds)
		}
	}
	for _, kinds := range []map[string][]string{got, want} {
		for _, list := range kinds {
			slices.Sort(list)
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// A source that does not type-check is an error, not a clean bill.
func TestUnitDisciplineNeedsTypes(t *testing.T) {
	_, exports := listPackages(t, moduleRoot(t), unitPath)
	source := "package bad\n\nimport \"lowvent.example/schema/unit\"\n\nvar x unit.Length = unit.Area(1)\n"
	if _, err := inspect("bad", []string{"bad.go"}, map[string]any{"bad.go": source}, exports); err == nil {
		t.Error("accepted")
	}
}

// listed is what go list tells of a package.
type listed struct {
	ImportPath, Dir, Export string
	GoFiles                 []string
	Module                  *struct{ Main bool }
}

// listPackages asks the go command for the packages that match and what they
// import, with compiled export data.
func listPackages(t *testing.T, root, pattern string) ([]listed, map[string]string) {
	t.Helper()
	command := exec.Command("go", "list", "-export", "-deps", "-json=ImportPath,Dir,Export,GoFiles,Module", pattern)
	command.Dir = root
	var complaints bytes.Buffer
	command.Stderr = &complaints
	out, err := command.Output()
	if err != nil {
		t.Fatalf("the use of units can be judged only when every package of %s compiles; go list said (%v):\n%s", pattern, err, complaints.String())
	}
	var all []listed
	exports := map[string]string{}
	for decoder := json.NewDecoder(bytes.NewReader(out)); ; {
		var p listed
		if err := decoder.Decode(&p); errors.Is(err, io.EOF) {
			return all, exports
		} else if err != nil {
			t.Fatal(err)
		}
		all = append(all, p)
		exports[p.ImportPath] = p.Export
	}
}

// moduleRoot walks up to the folder of go.mod.
func moduleRoot(t *testing.T) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
		if filepath.Dir(dir) == dir {
			t.Fatal("no go.mod above this package")
		}
		dir = filepath.Dir(dir)
	}
}

// watchSources opens every folder of the module: the go command keeps the
// result of a passed test until something that it opened has changed, and does
// not see what its subprocess reads.
func watchSources(t *testing.T, root string) {
	t.Helper()
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err == nil && d.IsDir() && strings.HasPrefix(d.Name(), ".") {
			return filepath.SkipDir
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

// inspect type-checks a package and lists its offences. sources holds the text
// of files that are not on disk.
func inspect(path string, files []string, sources map[string]any, exports map[string]string) ([]string, error) {
	set := token.NewFileSet()
	var parsed []*ast.File
	for _, name := range files {
		f, err := parser.ParseFile(set, name, sources[name], parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		parsed = append(parsed, f)
	}
	lookup := func(path string) (io.ReadCloser, error) {
		if exports[path] == "" {
			return nil, fmt.Errorf("no export data for %q", path)
		}
		return os.Open(exports[path])
	}
	c := &checker{set: set, info: &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{}}}
	config := types.Config{Importer: importer.ForCompiler(set, "gc", lookup)}
	if _, err := config.Check(path, set, parsed, c.info); err != nil {
		return nil, err
	}
	for _, f := range parsed {
		ast.Inspect(f, c.visit)
	}
	return c.found, nil
}

// checker looks for operations that lose a unit.
type checker struct {
	set   *token.FileSet
	info  *types.Info
	found []string
}

func (c *checker) visit(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.BinaryExpr:
		c.operation(n.OpPos, n.Op, n.X, n.Y)
	case *ast.AssignStmt:
		if op, ok := assigning[n.Tok]; ok {
			c.operation(n.TokPos, op, n.Lhs[0], n.Rhs[0])
		}
	case *ast.IncDecStmt:
		if c.isUnit(n.X) {
			c.report(n.TokPos, n.Tok, "a bare number")
		}
	case *ast.SwitchStmt:
		if n.Tag != nil && c.isUnit(n.Tag) {
			c.cases(n)
		}
	case *ast.CallExpr:
		c.extreme(n)
	}
	return true
}

// assigning gives the operation within an assignment.
var assigning = map[token.Token]token.Token{
	token.ADD_ASSIGN: token.ADD, token.SUB_ASSIGN: token.SUB, token.MUL_ASSIGN: token.MUL, token.QUO_ASSIGN: token.QUO,
}

// operation judges x op y.
func (c *checker) operation(at token.Pos, op token.Token, x, y ast.Expr) {
	switch {
	case !slices.Contains([]token.Token{token.ADD, token.SUB, token.MUL, token.QUO, token.EQL, token.NEQ, token.LSS, token.LEQ, token.GTR, token.GEQ}, op):
	case c.isBare(x) && c.isUnit(y) && !c.isBareOrZero(y), c.isBare(y) && c.isUnit(x) && !c.isBareOrZero(x):
		c.report(at, op, "a bare number")
	case (op == token.MUL || op == token.QUO) && c.isUnit(x) && c.isUnit(y) && !c.isBareOrZero(x) && !c.isBareOrZero(y):
		c.report(at, op, "a product or quotient of units")
	}
}

// cases judges the values that a switch compares a unit with.
func (c *checker) cases(n *ast.SwitchStmt) {
	for _, clause := range n.Body.List {
		for _, value := range clause.(*ast.CaseClause).List {
			if c.isBare(value) {
				c.report(value.Pos(), token.EQL, "a bare number")
			}
		}
	}
}

// extreme judges min and max, which compare as well.
func (c *checker) extreme(n *ast.CallExpr) {
	name, ok := ast.Unparen(n.Fun).(*ast.Ident)
	if !ok {
		return
	}
	if _, builtin := c.info.Uses[name].(*types.Builtin); !builtin || name.Name != "min" && name.Name != "max" {
		return
	}
	if slices.ContainsFunc(n.Args, func(e ast.Expr) bool { return c.isUnit(e) && !c.isBareOrZero(e) }) {
		for _, arg := range n.Args {
			if c.isBare(arg) {
				c.report(arg.Pos(), token.LSS, "a bare number")
			}
		}
	}
}

func (c *checker) report(at token.Pos, op token.Token, what string) {
	c.found = append(c.found, fmt.Sprintf("%s: %s beside a unit type (%s): convert to float64 first, or name the quantity", c.set.Position(at), what, op))
}

// isUnit tells whether an expression has one of the unit types, or is of a
// type parameter that ranges over them.
func (c *checker) isUnit(e ast.Expr) bool {
	switch typ := types.Unalias(c.info.TypeOf(e)).(type) {
	case *types.Named:
		basic, ok := typ.Underlying().(*types.Basic)
		return ok && basic.Kind() == types.Float64 && typ.Obj().Pkg() != nil && typ.Obj().Pkg().Path() == unitPath
	case *types.TypeParam:
		method, _, _ := types.LookupFieldOrMethod(typ, false, nil, "Kind")
		return method != nil && strings.HasSuffix(method.Type().String(), unitPath+".Kind")
	}
	return false
}

// isBare tells whether an expression is a number other than 0 that nobody gave
// a unit: literals, untyped constants and what is made of these alone.
func (c *checker) isBare(e ast.Expr) bool {
	return c.isBareOrZero(e) && constant.Sign(c.info.Types[e].Value) != 0
}

func (c *checker) isBareOrZero(e ast.Expr) bool {
	value := c.info.Types[e].Value
	return value != nil && (value.Kind() == constant.Int || value.Kind() == constant.Float) && c.unitless(e)
}

func (c *checker) unitless(e ast.Expr) bool {
	switch e := ast.Unparen(e).(type) {
	case *ast.BasicLit:
		return true
	case *ast.UnaryExpr:
		return c.unitless(e.X)
	case *ast.BinaryExpr:
		return c.unitless(e.X) && c.unitless(e.Y)
	case *ast.Ident:
		return isUntyped(c.info.Uses[e])
	case *ast.SelectorExpr:
		return isUntyped(c.info.Uses[e.Sel])
	}
	return false
}

// isUntyped tells whether a constant was declared without a type.
func isUntyped(o types.Object) bool {
	if o == nil {
		return false
	}
	basic, ok := o.Type().(*types.Basic)
	return ok && basic.Info()&types.IsUntyped != 0
}
