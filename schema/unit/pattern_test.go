package unit

import (
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// beyondForm lists the reasons for a refusal that no pattern can see.
var beyondForm = map[string]bool{whyLong: true, whyImproper: true, whyCarry: true, whyBackwards: true, whyFloor: true, whyWhole: true}

// patterns compiles every kind's pattern.
func patterns(t testing.TB) map[Kind]*regexp.Regexp {
	t.Helper()
	all := map[Kind]*regexp.Regexp{}
	for _, k := range Kinds() {
		re, err := regexp.Compile(k.Pattern())
		if err != nil {
			t.Fatalf("%s: %v", k, err)
		}
		all[k] = re
	}
	return all
}

// disagreement tells how the pattern and the parser differ on a text, or "".
func disagreement(re *regexp.Regexp, k Kind, text string) string {
	_, bad := read(k, text)
	switch matches := re.MatchString(text); {
	case !matches && bad == nil:
		return "is read but does not match"
	case matches && bad != nil && !beyondForm[bad.why]:
		return "matches but is refused: " + bad.why
	}
	return ""
}

// What has the form is matched, and read unless its value is out of range.
func TestPatternAgreesOnFormedTexts(t *testing.T) {
	res := patterns(t)
	accepted := 0
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(Kinds()).Draw(t, "kind")
		text := formed(k).Draw(t, "text")
		if !res[k].MatchString(text) {
			t.Fatalf("%s: the pattern misses %q", k, text)
		}
		if why := disagreement(res[k], k, text); why != "" {
			t.Fatalf("%s %q %s", k, text, why)
		}
		if _, err := ParseKind(k, text); err == nil {
			accepted++
		}
	})
	if accepted == 0 {
		t.Error("no text was accepted")
	}
}

// What is damaged a little is judged alike.
func TestPatternAgreesOnDamagedTexts(t *testing.T) {
	res := patterns(t)
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(Kinds()).Draw(t, "kind")
		text := damaged(k).Draw(t, "text")
		if why := disagreement(res[k], k, text); why != "" {
			t.Fatalf("%s %q %s", k, text, why)
		}
	})
}

// The other kinds' examples and every refused form are judged alike.
func TestPatternAgreesAcrossKinds(t *testing.T) {
	res := patterns(t)
	for _, k := range Kinds() {
		for _, text := range seedTexts() {
			if why := disagreement(res[k], k, text); why != "" {
				t.Errorf("%s %q %s", k, text, why)
			}
		}
	}
}

// seedTexts are texts near the edges of the grammar.
func seedTexts() []string {
	texts := []string{
		"", " ", "1", "0.7", ".5", "5.", "1/2", "1 1/2", "1 5/4", "1/0", "1/08", "70 %", "70%", "0.7 ± 0.05", "0.7 ± 5 %",
		"70 % ± 5", "0.7to 0.9", "0.7 to0.9", "0.7 to 0.9", "50 % to 70 %", "0.5 to 70 %", "4 ft 6 in", "4ft6in", "4 ft 12 in",
		"4 ft 6 cm", "4.0 ft 6 in", "20 lb 4 oz", "1 h 30 min", "1.32 m ± 2 cm", "1.32 m +- 2 %", "1.32 m +/- 2 %", "1.32 m ± -2 cm",
		"1.30 m to 1.34 m", "1.34 m to 1.30 m", "-12 degC", "−12 °C ± 2 K", "-12 degC ± 2 %", "-300 degC", "1 m\n", "\n1 m", "1\tm",
		"1\u00a0m", "1\u2003m", "+-1 m", "++1 m", "1,5 m", "1e3 m", "1 m²", "1 m³/h", "1 in2/(kBTU/h)", "1 in²/(kBTU/h)",
		"1234567890123 m", "123456789012 m", "1.1234567890123 m", "12345/6 in", "\xff", "1 \xc2m", "1 m to 2 m to 3 m", "1 m ± 1 m ± 1 m",
		strings.Repeat("1", 64), strings.Repeat(" ", 62) + "1m", strings.Repeat(" ", 63) + "1m",
	}
	for _, k := range Kinds() {
		texts = append(texts, k.info().example)
	}
	return texts
}

// The patterns keep to what RE2 and ECMA-262, with or without its u flag, read
// alike: no escape but of a syntax character, no group but a plain one.
func TestPatternIsPortable(t *testing.T) {
	escape := regexp.MustCompile(`\\.`)
	for _, k := range Kinds() {
		p := k.Pattern()
		for _, e := range escape.FindAllString(p, -1) {
			if !strings.Contains(`.+()`, e[1:]) {
				t.Errorf("%s: escape %s", k, e)
			}
		}
		if strings.Contains(p, "(?") || strings.ContainsAny(p, "\n\t") {
			t.Errorf("%s: not portable: %s", k, p)
		}
		for _, part := range strings.Split(p, "$|^") {
			part = strings.TrimSuffix(strings.TrimPrefix(part, "^"), "$")
			if strings.ContainsAny(part, "^$") {
				t.Errorf("%s: an anchor inside: %s", k, p)
			}
		}
	}
}

func TestPatternOfNoKindMatchesNothing(t *testing.T) {
	re := regexp.MustCompile(Kind(0).Pattern())
	for _, text := range seedTexts() {
		if re.MatchString(text) {
			t.Errorf("matches %q", text)
		}
	}
}
