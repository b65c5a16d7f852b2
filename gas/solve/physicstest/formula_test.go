package physicstest

import (
	"strings"
	"testing"
)

func TestEvaluate(t *testing.T) {
	symbols := map[string]float64{"a": 3, "b": 4, "T_low": 250}
	for _, c := range []struct {
		text, result string
		want         float64
	}{
		{"c = a + b", "c", 7},
		{"c = a - b - 1", "c", -2},
		{"c = a + b * 2", "c", 11},
		{"c = (a + b) * 2", "c", 14},
		{"c = a / b / 2", "c", 0.375},
		{"c = -a + 1e-1", "c", -2.9},
		{"c = sqrt(a*a + b*b)", "c", 5},
		{"c = min(a, b) + max(a, b) * 10", "c", 43},
		{"c = pow(a, 2) * exp(0)", "c", 9},
		{"c = log(exp(2)) + log10(1000)", "c", 5},
		{"x_1 = T_low * 2", "x_1", 500},
	} {
		result, value, err := Evaluate(c.text, symbols)
		if err != nil || result != c.result || value != c.want {
			t.Errorf("%s: got %s = %v, %v; want %s = %v", c.text, result, value, err, c.result, c.want)
		}
	}
}

func TestEvaluateRefuses(t *testing.T) {
	for _, c := range []struct{ text, says string }{
		{"a + b", "expected one symbol"},
		{"2 = a", "expected one symbol"},
		{"a b = 1", "expected one symbol"},
		{"c = ", "expected operand"},
		{"c = a +", "expected operand"},
		{"c = d", "symbol d has no value"},
		{"c = a + d", "symbol d has no value"},
		{"c = d + a", "symbol d has no value"},
		{"c = -d", "symbol d has no value"},
		{"c = !a", "UnaryExpr"},
		{"c = a % a", "operator %"},
		{"c = a == a", "operator =="},
		{"c = sin(a)", "sin with 1"},
		{"c = sqrt(a, a)", "sqrt with 2"},
		{"c = max(d, a)", "symbol d"},
		{"c = (a)(a)", "named function"},
		{`c = "a"`, "BasicLit"},
		{"c = a[0]", "IndexExpr"},
	} {
		_, _, err := Evaluate(c.text, map[string]float64{"a": 1})
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: error %v, want one that says %q", c.text, err, c.says)
		}
	}
}

func FuzzEvaluate(f *testing.F) {
	for _, seed := range []string{"c = a + b", "c = sqrt(a*a)", "=", "c = ((((", "c = max(a)"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		result, value, err := Evaluate(text, map[string]float64{"a": 1, "b": 2})
		if err != nil && (result != "" || value != 0) {
			t.Fatalf("%q: a result %q = %v beside error %v", text, result, value, err)
		}
		if err == nil && strings.ContainsAny(result, " =\t") {
			t.Fatalf("%q: result symbol %q", text, result)
		}
	})
}
