package letter

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func TestPrintable(t *testing.T) {
	for in, want := range map[string]string{
		"":                        "",
		"plain":                   "plain",
		"ρ₀ = 1.9 kg/m³ at pₐ":    "ρ₀ = 1.9 kg/m³ at p_a", // ₀ and ³ are in the letters, ₐ is not
		"Σ nᵢ θ^tᵢ, cᵖ, Tₖ":       "Σ n_i θ^t_i, c^p, T_k",
		"10⁻⁹ and 10¹²":           "10⁻⁹ and 10¹²",
		"⅜ in, 5⅓ in, ⅔":          "⅜ in, 5 1/3 in, 2/3",
		"24\u202fin and 3\u2009m": "24\u00a0in and 3\u00a0m",
		"a\tb\r\nc\u2028d":        "a b  c d",
		"zero\u200b width\ufeff":  "zero width",
		"廚房 🜁":                    "?? ?",
		"\x1b[2J\u202e\x00":       "?[2J??",
		"non‑breaking, ☐ tick":    "non-breaking, [ ] tick",
		"no UTF-8: \xff":          "no UTF-8: �",
		"ṁ":                       "m-dot",
	} {
		if got := Printable(in); got != want {
			t.Errorf("Printable(%q) = %q, want %q", in, got, want)
		}
	}
}

// TestWhatIsPrintableCanBeSet: the letters have every sign of it in both cuts, and it
// stays as it is when it is asked for again.
func TestWhatIsPrintableCanBeSet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := rapid.String().Draw(t, "in")
		got := Printable(in)
		for _, r := range got {
			if !has(Regular, r) || !has(Bold, r) || r < ' ' {
				t.Fatalf("Printable(%q) = %q has %q", in, got, r)
			}
		}
		if Printable(got) != got || !utf8.ValidString(got) {
			t.Fatalf("Printable is not settled: %q, then %q", got, Printable(got))
		}
	})
}

// TestFallbacksAreNeeded: none stands for a sign that the letters have, which would be
// shown worse than it could be, and none brings in what they lack.
func TestFallbacksAreNeeded(t *testing.T) {
	for r, put := range fallbacks {
		if r > ' ' && has(Regular, r) && has(Bold, r) && strings.TrimSpace(put) != "" {
			t.Errorf("the letters have %q, yet it is printed as %q", r, put)
		}
		if Printable(put) != put {
			t.Errorf("%q is printed as %q, which can't be printed itself", r, put)
		}
	}
}
