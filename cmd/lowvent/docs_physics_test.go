package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"math"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
)

const physicsDoc = "docs/physics.md"

// TestDocsPhysics works every worked example out anew, and holds that there is one
// for every formula that the physics packages export as a text, and for no other.
func TestDocsPhysics(t *testing.T) {
	formulas := exportedFormulas(t)
	shown := map[string]bool{}
	for _, f := range fencesOf(t, physicsDoc, lines(readDoc(t, physicsDoc))) {
		if f.language != "worked" {
			continue
		}
		w, err := readWorked(f.body)
		if err == nil {
			err = w.recompute()
		}
		if err != nil {
			t.Errorf("%s: %v", f.at(physicsDoc), err)
			continue
		}
		text := bare(w.formula)
		if shown[text] = true; formulas[text] == "" {
			t.Errorf("%s: no physics package exports the formula %q", f.at(physicsDoc), w.formula)
		}
	}
	for text, name := range formulas {
		if !shown[text] {
			t.Errorf("%s has no worked example of %s: %s", physicsDoc, name, text)
		}
	}
	if len(formulas) < 25 {
		t.Errorf("only %d formulas were found in gas and vent", len(formulas))
	}
}

// worked is one worked example: what goes in, the formula, what comes out.
type worked struct {
	symbols map[string]float64 // SI
	formula string
	result  string
	value   float64 // SI
	slack   float64 // half a step of its last digit, SI
}

var assignment = regexp.MustCompile(`^([A-Za-z_0-9]+) = (.*)$`)

// readWorked reads lines "symbol = value unit", then the formula, which may go on
// over indented lines, then "result = value unit". A kind may stand behind a value
// in parentheses where the unit alone does not tell it.
func readWorked(body []string) (worked, error) {
	w := worked{symbols: map[string]float64{}}
	for i, line := range body {
		parts := assignment.FindStringSubmatch(line)
		switch {
		case parts == nil && w.formula == "":
			return w, fmt.Errorf("%q is not written symbol = value unit", line)
		case parts == nil:
			w.formula += " " + strings.TrimSpace(line)
		case w.formula != "" && i == len(body)-1:
			var err error
			w.result = parts[1]
			w.value, w.slack, err = quantity(parts[2])
			return w, err
		default:
			if w.formula != "" {
				return w, fmt.Errorf("%q stands between the formula and the last line", line)
			}
			if !written.MatchString(parts[2]) {
				w.formula = line
				continue
			}
			value, _, err := quantity(parts[2])
			if err != nil {
				return w, err
			}
			w.symbols[parts[1]] = value
		}
	}
	return w, fmt.Errorf("the formula and the result are missing at the end")
}

// recompute holds that the formula gives the result, to its last digit.
func (w *worked) recompute() error {
	result, value, err := physicstest.Evaluate(w.formula, w.symbols)
	if err != nil {
		return err
	}
	if result != w.result || !(math.Abs(value-w.value) <= w.slack*(1+1e-6)) {
		return fmt.Errorf("the formula gives %s = %.9g in SI units, the example says %s = %.9g ± %.2g", result, value, w.result, w.value, w.slack)
	}
	for symbol := range w.symbols {
		if !regexp.MustCompile(`\b` + symbol + `\b`).MatchString(strings.SplitN(w.formula, "=", 2)[1]) {
			return fmt.Errorf("the formula does not use %s", symbol)
		}
	}
	return nil
}

var written = regexp.MustCompile(`^(-?[0-9.]+)( .+?)?(?: \(([A-Za-z]+)\))?$`)

// quantity reads a value with its unit in SI, and half a step of its last digit.
// All kinds that know the unit must agree on the value.
func quantity(text string) (value, slack float64, err error) {
	parts := written.FindStringSubmatch(text)
	if parts == nil {
		return 0, 0, fmt.Errorf("%q is no number with a unit", text)
	}
	known := 0
	for _, kind := range unit.Kinds() {
		at, err := unit.ParseKind(kind, parts[1]+parts[2])
		if err != nil || parts[3] != "" && parts[3] != kind.String() {
			continue
		}
		next, err := unit.ParseKind(kind, oneStepOn(parts[1])+parts[2])
		if err != nil {
			return 0, 0, err
		}
		if known++; known > 1 && at.Nominal != value {
			return 0, 0, fmt.Errorf("%q is %g or %g in SI units; say which kind in parentheses", text, value, at.Nominal)
		}
		value, slack = at.Nominal, math.Abs(next.Nominal-at.Nominal)/2
	}
	if known == 0 {
		return 0, 0, fmt.Errorf("%q has a unit of no kind of quantity", text)
	}
	return value, slack, nil
}

// oneStepOn adds one to the last digit of a number.
func oneStepOn(number string) string {
	decimals := 0
	if _, after, found := strings.Cut(number, "."); found {
		decimals = len(after)
	}
	v, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return number
	}
	return strconv.FormatFloat(v+math.Pow10(-decimals), 'f', decimals, 64)
}

func bare(formula string) string { return strings.Join(strings.Fields(formula), "") }

// exportedFormulas finds the constants named …Formula in gas and vent, by text.
func exportedFormulas(t *testing.T) map[string]string {
	t.Helper()
	found := map[string]string{}
	for _, part := range parts() {
		err := filepath.WalkDir(filepath.Join(moduleTop(t), part.name), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
				return err
			}
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
			if err == nil {
				formulasIn(file, found)
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return found
}

func formulasIn(file *ast.File, found map[string]string) {
	ast.Inspect(file, func(n ast.Node) bool {
		if spec, ok := n.(*ast.ValueSpec); ok {
			for i, name := range spec.Names {
				if name.IsExported() && strings.HasSuffix(name.Name, "Formula") && i < len(spec.Values) {
					found[bare(joinedText(spec.Values[i]))] = file.Name.Name + "." + name.Name
				}
			}
		}
		return true
	})
}

// joinedText is the text of a literal, or of several joined by +.
func joinedText(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.BinaryExpr:
		return joinedText(e.X) + joinedText(e.Y)
	case *ast.BasicLit:
		if text, err := strconv.Unquote(e.Value); err == nil {
			return text
		}
	}
	return ""
}

func TestDocsWorked(t *testing.T) {
	tests := []struct{ body, fault string }{
		{"m = 10 kg\nF = 42 %\nm_max = F * m\nm_max = 4.20 kg", ""},
		{"m = 10 kg\nm_max = m\n  * 0.42\nm_max = 4.2 kg", ""},
		{"m = 10 kg\nF = 42 %\nm_max = F * m\nm_max = 4.21 kg", "the example says"},
		{"m = 10 kg\nF = 42 %\nm_max = F * m\nm = 4.20 kg", "the example says"},
		{"m = 10 kg\nm_max = F * m\nm_max = 4.2 kg", "symbol F has no value"},
		{"m = 10 kg\nF = 42 %\nG = 1 %\nm_max = F * m\nm_max = 4.2 kg", "does not use G"},
		{"m = 10 kg\nF = 42 %\nm_max = F * m", "missing at the end"},
		{"m: 10 kg", "not written symbol"},
		{"m = 10 kg\nu = m * 2\nv = 3 kg\nu = 20 kg", "stands between"},
		{"T = 20 degF\nu = T * 2\nu = 40 K", "say which kind"},
		{"T = 20 degF (temperature)\nu = T * 2\nu = 532.97 K", ""},
		{"m = 10 kg\nu = m * 2\nu = 20 parsec", "no kind of quantity"},
	}
	for _, tt := range tests {
		w, err := readWorked(lines(tt.body))
		if err == nil {
			err = w.recompute()
		}
		if (err == nil) != (tt.fault == "") || err != nil && !strings.Contains(err.Error(), tt.fault) {
			t.Errorf("%q: error %v, want %q", tt.body, err, tt.fault)
		}
	}
}
