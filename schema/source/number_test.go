package source

import (
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// sameValue compares two number tokens exactly.
func sameValue(a, b string) bool {
	x, okX := new(big.Rat).SetString(a)
	y, okY := new(big.Rat).SetString(b)
	return okX && okY && x.Cmp(y) == 0
}

func TestPlainDecimal(t *testing.T) {
	tests := []struct{ token, want string }{
		{"0", "0"}, {"-0", "0"}, {"0.000", "0"}, {"-0e5", "0"}, {"0e-400", "0"},
		{"1", "1"}, {"-1", "-1"}, {"1.0", "1"}, {"10e-1", "1"}, {"0.1e1", "1"}, {"1E+0", "1"},
		{"6.10", "6.1"}, {"0.5", "0.5"}, {"-0.50", "-0.5"}, {"12.5e1", "125"}, {"1.25e1", "12.5"},
		{"100", "100"}, {"1e2", "100"},
		{"1e20", "100000000000000000000"}, {"1e21", "1e21"}, {"12e20", "12e20"},
		{"1e-7", "0.0000001"}, {"1e-8", "1e-8"}, {"0.000000012", "12e-9"},
		{"9007199254740993", "9007199254740993"}, // 2⁵³+1, which a float64 cannot hold
		{"1e400", "1e400"}, {"1e-400", "1e-400"},
	}
	for _, test := range tests {
		if got := plainDecimal(test.token); got != test.want {
			t.Errorf("%s: got %s, want %s", test.token, got, test.want)
		}
	}
}

// Two tokens are spelled alike if and only if their exact values are equal.
func TestPlainDecimalIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := numbers().Draw(t, "a")
		if !sameValue(a, plainDecimal(a)) {
			t.Fatalf("%s becomes %s", a, plainDecimal(a))
		}
		if once := plainDecimal(a); plainDecimal(once) != once {
			t.Fatalf("%s becomes %s", once, plainDecimal(once))
		}
		digits := rapid.StringMatching(`[1-9]0{0,2}(\.[05]{1,2})?e[+-]?[0-2]`)
		b, c := digits.Draw(t, "b"), digits.Draw(t, "c")
		if sameValue(b, c) != (plainDecimal(b) == plainDecimal(c)) {
			t.Fatalf("%s as %s, %s as %s", b, plainDecimal(b), c, plainDecimal(c))
		}
	})
}

func TestAbsurdNumber(t *testing.T) {
	tests := []struct {
		token string
		want  bool
	}{
		{"0", false},
		{strings.Repeat("1", maxNumberBytes), false},
		{strings.Repeat("1", maxNumberBytes+1), true},
		{"1e400", false}, {"1e401", true},
		{"1e-400", false}, {"1e-401", true},
		{"1E+400", false}, {"1E+401", true},
		{"1e0000000000000400", false}, {"1e0000000000000401", true},
		{"1e999999", true},
		{"1e99999999999999999999999999", true},
		{"-1e-99999999999999999999999999", true},
	}
	for _, test := range tests {
		if got := absurdNumber(test.token); got != test.want {
			t.Errorf("%s: got %v", test.token, got)
		}
	}
}
