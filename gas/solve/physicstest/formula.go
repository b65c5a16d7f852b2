package physicstest

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"strconv"
	"strings"
)

// functions maps the names that a text may call to their arity and meaning.
var functions = map[string]struct {
	arity int
	call  func(a ...float64) float64
}{
	"exp":   {1, func(a ...float64) float64 { return math.Exp(a[0]) }},
	"log":   {1, func(a ...float64) float64 { return math.Log(a[0]) }},
	"log10": {1, func(a ...float64) float64 { return math.Log10(a[0]) }},
	"max":   {2, func(a ...float64) float64 { return max(a[0], a[1]) }},
	"min":   {2, func(a ...float64) float64 { return min(a[0], a[1]) }},
	"pow":   {2, func(a ...float64) float64 { return math.Pow(a[0], a[1]) }},
	"sqrt":  {1, func(a ...float64) float64 { return math.Sqrt(a[0]) }},
}

// Evaluate works out a formula text from the SI values of its symbols and
// returns the result symbol and the value.
//
// A formula text is an assignment in Go expression syntax, for example
// "m_max = F * m_water": one result symbol, then numbers, symbols, + - * /,
// parentheses, and the functions exp, log, log10, max, min, pow and sqrt. Evaluate fails on
// anything else, and on a symbol that symbols does not give.
func Evaluate(text string, symbols map[string]float64) (result string, value float64, err error) {
	left, right, found := strings.Cut(text, "=")
	result = strings.TrimSpace(left)
	if !found || !token.IsIdentifier(result) {
		return "", 0, fmt.Errorf("formula %q: expected one symbol, then =, then an expression", text)
	}
	expression, err := parser.ParseExpr(right)
	if err != nil {
		return "", 0, fmt.Errorf("formula %q: %w", text, err)
	}
	value, err = evaluate(expression, symbols)
	if err != nil {
		return "", 0, fmt.Errorf("formula %q: %w", text, err)
	}
	return result, value, nil
}

func evaluate(e ast.Expr, symbols map[string]float64) (float64, error) {
	switch e := e.(type) {
	case *ast.BasicLit:
		if e.Kind == token.INT || e.Kind == token.FLOAT {
			return strconv.ParseFloat(e.Value, 64)
		}
	case *ast.Ident:
		if v, ok := symbols[e.Name]; ok {
			return v, nil
		}
		return 0, fmt.Errorf("symbol %s has no value", e.Name)
	case *ast.ParenExpr:
		return evaluate(e.X, symbols)
	case *ast.UnaryExpr:
		v, err := evaluate(e.X, symbols)
		if e.Op == token.SUB {
			return -v, err
		}
	case *ast.BinaryExpr:
		return evaluateBinary(e, symbols)
	case *ast.CallExpr:
		return evaluateCall(e, symbols)
	}
	return 0, fmt.Errorf("%T is not part of a formula text", e)
}

func evaluateBinary(e *ast.BinaryExpr, symbols map[string]float64) (float64, error) {
	a, err := evaluate(e.X, symbols)
	if err != nil {
		return 0, err
	}
	b, err := evaluate(e.Y, symbols)
	if err != nil {
		return 0, err
	}
	switch e.Op {
	case token.ADD:
		return a + b, nil
	case token.SUB:
		return a - b, nil
	case token.MUL:
		return a * b, nil
	case token.QUO:
		return a / b, nil
	}
	return 0, fmt.Errorf("operator %s is not part of a formula text", e.Op)
}

func evaluateCall(e *ast.CallExpr, symbols map[string]float64) (float64, error) {
	name, ok := e.Fun.(*ast.Ident)
	if !ok {
		return 0, fmt.Errorf("only a named function can be called")
	}
	function, ok := functions[name.Name]
	if !ok || len(e.Args) != function.arity {
		return 0, fmt.Errorf("%s with %d arguments is not part of a formula text", name.Name, len(e.Args))
	}
	var arguments []float64
	for _, a := range e.Args {
		v, err := evaluate(a, symbols)
		if err != nil {
			return 0, err
		}
		arguments = append(arguments, v)
	}
	return function.call(arguments...), nil
}
