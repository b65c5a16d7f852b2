package code

import (
	"go/ast"
	"go/parser"
	"go/token"
	"strconv"
	"strings"
	"testing"

	"lowvent.example/schema/unit"
)

// known is a set of facts for tests; what it does not hold is not known.
type known map[Fact]any

func (k known) Number(f Fact) (float64, bool) { v, ok := k[f].(float64); return v, ok }

func (k known) Word(f Fact) (string, bool) { v, ok := k[f].(string); return v, ok }

func (k known) Date(f Fact) (unit.Date, bool) { v, ok := k[f].(unit.Date); return v, ok }

// everyFact answers every fact of the closed set with something sensible.
func everyFact(t *testing.T) known {
	all := known{
		FactLockerFloorArea: 0.30, FactWaterCapacity: 21.6, FactCylinderGas: "propane", FactCylinderRole: "in-service",
		FactSpecification: "dot-4ba", FactQualification: "new", FactLineFeeds: "other-appliance",
		FactApplianceKind: "water-heater", FactApplianceInput: 3500.0, FactFlueKind: "room-sealed", FactFlueWall: "left",
		FactSpaceBurning: "open-flame", FactSpaceUse: "living", FactSpaceFloorArea: 11.25, FactUnfluedInput: 4250.0,
		FactLockerGas: 18.0, FactLockerHighArea: 0.004, FactLockerHighShare: 0.0133, FactLockerLowVents: "hole", FactLockerOpensTo: "open-air",
		FactLockerShield: "bare", FactCylinderPlace: "open-air",
		FactOpenFluedInput: 0.0, FactDwellingKind: "manufactured-home", FactDwellingSleeps: 2.0, FactFirstUsed: day(t, "2020-05-17"),
		FactLineKind: "steel-tube", FactLinePressure: "low", FactLineOutside: 0.0127, FactLineRun: 4.2, FactJointKind: "flare-45",
	}
	if len(all) != len(EveryFact()) {
		t.Fatalf("%d facts are answered here, there are %d", len(all), len(EveryFact()))
	}
	return all
}

func day(t *testing.T, text string) unit.Date {
	t.Helper()
	d, err := unit.ParseDate(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// worked evaluates the working of an answer from its printed symbols alone.
func worked(t testing.TB, a Answer) float64 {
	t.Helper()
	name, expr, found := strings.Cut(a.Steps, " = ")
	if !found || len(a.Symbols) == 0 || a.Symbols[0].Name != name {
		t.Fatalf("working %q does not begin with its first symbol %v", a.Steps, a.Symbols)
	}
	tree, err := parser.ParseExpr(expr)
	if err != nil {
		t.Fatalf("working %q is not Go: %v", a.Steps, err)
	}
	values := map[string]float64{}
	for _, s := range a.Symbols[1:] {
		values[s.Name] = s.SI
	}
	return evaluated(t, tree, values)
}

func evaluated(t testing.TB, e ast.Expr, values map[string]float64) float64 {
	t.Helper()
	switch e := e.(type) {
	case *ast.BasicLit:
		v, err := strconv.ParseFloat(e.Value, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	case *ast.Ident:
		v, known := values[e.Name]
		if !known {
			t.Fatalf("%s is in the working and not among the symbols", e.Name)
		}
		return v
	case *ast.BinaryExpr:
		x, y := evaluated(t, e.X, values), evaluated(t, e.Y, values)
		switch e.Op {
		case token.ADD:
			return x + y
		case token.MUL:
			return x * y
		case token.QUO:
			return x / y
		}
	case *ast.CallExpr:
		x, y := evaluated(t, e.Args[0], values), evaluated(t, e.Args[1], values)
		switch e.Fun.(*ast.Ident).Name {
		case "max":
			return max(x, y)
		case "min":
			return min(x, y)
		}
	}
	t.Fatalf("the working holds %T, which its contract does not allow", e)
	return 0
}

// ruleFor reads a rule as a file would write it.
func ruleFor(t *testing.T, term *Term, text string) Rule {
	t.Helper()
	r, faults := tryRule(t, term, text)
	if faults != "" {
		t.Fatalf("rule %s: %s", text, faults)
	}
	return r
}

// tryRule is ruleFor with the faults as text.
func tryRule(t *testing.T, term *Term, text string) (Rule, string) {
	t.Helper()
	root := tree(t, `{"rule": `+text+`}`)
	d := &decoder{}
	r := d.rule(root.Member("rule"), term)
	d.faults.Sort()
	return r, d.faults.Error()
}

// asking puts a term to a book that holds nothing but the rule.
func asking(t *testing.T, term *Term, rule string, f Facts) Answer {
	t.Helper()
	entry := Entry{Term: term.ID, Says: "it is asked", Rule: ruleFor(t, term, rule), Document: "Test 1", Provenance: Read}
	book := &Profile{ID: "test", Title: "Test", Book: term.Book, Entries: []Entry{entry}}
	return Codes{}.With(book).Ask(term, f)
}
