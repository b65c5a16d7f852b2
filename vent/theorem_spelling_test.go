package vent_test

import (
	"fmt"
	"math/big"
	"regexp"
	"slices"
	"strings"
	"testing"

	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// size is a unit's dimension, and how much of the dimension's SI unit it is. The
// table is a second opinion on that of schema/unit, from the definitions in NIST
// Special Publication 811 (2008), appendix B: in = 0.0254 m, lb = 0.453 592 37 kg,
// Btu (International Table) = 1055.055 852 62 J, inch of water (conventional) =
// 249.088 91 Pa, psi = lb · 9.806 65 m/s² over in².
type size struct {
	kind unit.Kind
	si   *big.Rat
}

// rat reads a decimal or a quotient of two.
func rat(text string) *big.Rat {
	over, under, isQuotient := strings.Cut(text, "/")
	r, ok := new(big.Rat).SetString(over)
	if !ok {
		panic("no number: " + text)
	}
	if isQuotient {
		r.Quo(r, rat(under))
	}
	return r
}

var sizes = func() map[string]size {
	all := map[string]size{}
	add := func(kind unit.Kind, pairs ...string) {
		for i := 0; i < len(pairs); i += 2 {
			all[pairs[i]] = size{kind, rat(pairs[i+1])}
		}
	}
	add(unit.KindLength, "mm", "0.001", "cm", "0.01", "m", "1", "in", "0.0254", "ft", "0.3048")
	add(unit.KindArea, "mm2", "0.000001", "cm2", "0.0001", "m2", "1", "in2", "0.00064516", "ft2", "0.09290304")
	add(unit.KindMass, "g", "0.001", "kg", "1", "lb", "0.45359237", "oz", "0.028349523125")
	add(unit.KindForce, "N", "1", "kN", "1000")
	add(unit.KindGaugePressure, "Pa", "1", "hPa", "100", "kPa", "1000", "mbar", "100", "bar", "100000", "inH2O", "249.08891", "psi", "8896443230521/1290320000")
	add(unit.KindPower, "W", "1", "kW", "1000", "BTU/h", "1055.05585262/3600", "kBTU/h", "1055.05585262/3.6")
	add(unit.KindMassFlow, "g/h", "1/3600000", "kg/h", "1/3600", "lb/h", "0.45359237/3600")
	add(unit.KindVolumeFlow, "m3/h", "1/3600", "L/min", "1/60000", "cfm", "0.028316846592/60")
	add(unit.KindDuration, "s", "1", "min", "60", "h", "3600", "days", "86400", "weeks", "604800")
	add(unit.KindRatio, "%", "0.01", "", "1")
	add(unit.KindAngle, "deg", "1")        // no other spelling is exactly equal
	add(unit.KindTemperature, "degC", "1") // others begin at another zero
	return all
}()

// amount is a quantity as a file writes it: a value in a unit, alone, with a
// tolerance, or the beginning of a range. Compounds are put into their small unit.
type amount struct {
	value *big.Rat
	unit  string
	join  string   // "", "±" in a unit, "%" of the value, "to"
	other *big.Rat // tolerance or end of the range
	in    string   // its unit
}

var (
	aNumber  = `([-−]?)(\d+ \d+/\d+|\d+/\d+|\d*\.?\d+)`
	one      = regexp.MustCompile(`^` + aNumber + ` ?([A-Za-z%][A-Za-z0-9/]*|)$`)
	compound = regexp.MustCompile(`^([-−]?)(\d+) (ft|lb|h) (\d[\d ./]*) (in|oz|min)$`)
	perBig   = map[string]int64{"ft": 12, "lb": 16, "h": 60}
)

// amountOf reads a quantity; false for any other text.
func amountOf(text string) (amount, bool) {
	first, second, join := text, "", ""
	for _, sign := range []string{" ± ", " to "} {
		if a, b, found := strings.Cut(text, sign); found {
			first, second, join = a, b, strings.TrimSpace(sign)
		}
	}
	var a amount
	var ok bool
	if a.value, a.unit, ok = plainAmount(first); !ok || a.unit == "" {
		return a, false // a number alone may be a year as well as a share
	}
	a.join = join
	if join == "" {
		return a, true
	}
	if a.other, a.in, ok = plainAmount(second); !ok {
		return a, false
	}
	if join == "±" && a.in == "%" && a.unit != "%" {
		a.join = "%"
	}
	return a, true
}

func plainAmount(text string) (*big.Rat, string, bool) {
	if m := compound.FindStringSubmatch(text); m != nil {
		small := rational("", m[4])
		v := rational("", m[2])
		v.Mul(v, new(big.Rat).SetInt64(perBig[m[3]]))
		v.Add(v, small)
		if m[1] != "" {
			v.Neg(v)
		}
		return v, m[5], true
	}
	m := one.FindStringSubmatch(text)
	if m == nil {
		return nil, "", false
	}
	if _, known := sizes[m[3]]; !known {
		return nil, "", false
	}
	return rational(m[1], m[2]), m[3], true
}

// rational reads "3", "0.5", ".5", "3/4" and "1 3/4".
func rational(sign, text string) *big.Rat {
	whole, fraction, mixed := strings.Cut(text, " ")
	v := rat(whole)
	if mixed {
		v.Add(v, rat(fraction))
	}
	if sign != "" {
		v.Neg(v)
	}
	return v
}

// spell writes a number exactly, as a decimal or a fraction, or gives "" where the
// file's grammar has no text for it (12 digits about the point, 4 about a stroke).
func spell(v *big.Rat) string {
	for decimals := range 13 {
		text := v.FloatString(decimals)
		if rat(text).Cmp(v) == 0 {
			if whole, _, _ := strings.Cut(strings.TrimPrefix(text, "-"), "."); len(whole) > 12 {
				return ""
			}
			return text
		}
	}
	sign, abs := "", new(big.Rat).Abs(v)
	if v.Sign() < 0 {
		sign = "-"
	}
	whole, rest := new(big.Int).QuoRem(abs.Num(), abs.Denom(), new(big.Int))
	if len(abs.Denom().String()) > 4 || len(rest.String()) > 4 || len(whole.String()) > 12 {
		return ""
	}
	if whole.Sign() == 0 {
		return fmt.Sprintf("%s%s/%s", sign, rest, abs.Denom())
	}
	return fmt.Sprintf("%s%s %s/%s", sign, whole, rest, abs.Denom())
}

func withUnit(v *big.Rat, name string) string {
	text := spell(v)
	if text == "" || name == "" {
		return text
	}
	return text + " " + name
}

// String writes the amount, or "" where it can't be written.
func (a amount) String() string {
	first := withUnit(a.value, a.unit)
	if a.join == "" || first == "" {
		return first
	}
	name := a.in
	sign := a.join
	if sign == "%" {
		sign = "±"
	}
	second := withUnit(a.other, name)
	if second == "" {
		return ""
	}
	return first + " " + sign + " " + second
}

// as writes the amount in another unit.
func (a amount) as(name string) amount {
	into := func(v *big.Rat, from string) *big.Rat {
		v = new(big.Rat).Mul(v, sizes[from].si)
		return v.Quo(v, sizes[name].si)
	}
	b := amount{value: into(a.value, a.unit), unit: name, join: a.join, other: a.other, in: a.in}
	if a.join == "±" || a.join == "to" {
		b.other, b.in = into(a.other, a.in), name
	}
	return b
}

// twins lists all other spellings of exactly the same quantity.
func twins(text string) []string {
	a, ok := amountOf(text)
	if !ok {
		return nil
	}
	var names []string
	for name, s := range sizes {
		if s.kind == sizes[a.unit].kind && name != a.unit {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	var all []string
	for _, name := range names {
		if twin := a.as(name).String(); twin != "" && len([]rune(twin)) <= unit.MaxLength {
			all = append(all, twin)
		}
	}
	return all
}

// moved gives a coordinate shifted by so many metres.
func (a amount) moved(by *big.Rat) amount {
	shift := new(big.Rat).Quo(by, sizes[a.unit].si)
	b := a
	b.value = new(big.Rat).Add(a.value, shift)
	if a.join == "to" {
		b.other = new(big.Rat).Add(a.other, new(big.Rat).Quo(by, sizes[a.in].si))
	}
	return b
}

// negated gives a coordinate on the other side of the origin.
func (a amount) negated() amount {
	b := a
	b.value = new(big.Rat).Neg(a.value)
	if a.join == "to" {
		b.value, b.unit, b.other, b.in = new(big.Rat).Neg(a.other), a.in, new(big.Rat).Neg(a.value), a.unit
	}
	return b
}

// TestTwinsAreEqual: the second opinion on units agrees with schema/unit to the last
// bit, for every quantity of the demonstration layouts and every spelling of it.
func TestTwinsAreEqual(t *testing.T) {
	n := 0
	for _, s := range scenes(t) {
		for _, text := range quantityTexts(s.layout.Root()) {
			kind := sizes[mustAmount(t, text).unit].kind
			want, err := unit.ParseKind(kind, text)
			if err != nil {
				t.Fatalf("%q: %v", text, err)
			}
			for _, twin := range append(twins(text), mustAmount(t, text).String()) { // "70 %" is "0.7"
				got, err := unit.ParseKind(kind, twin)
				if err != nil || got.Low != want.Low || got.High != want.High || got.Nominal != want.Nominal {
					t.Errorf("%q is %v to %v, %q is %v to %v, %v", text, want.Low, want.High, twin, got.Low, got.High, err)
				}
				n++
			}
		}
	}
	if n < 2000 {
		t.Errorf("only %d twins", n)
	}
}

func mustAmount(t testing.TB, text string) amount {
	t.Helper()
	a, ok := amountOf(text)
	if !ok {
		t.Fatalf("%q is no quantity", text)
	}
	return a
}

// quantityTexts lists every text of a file that is a quantity.
func quantityTexts(n *source.Node) []string {
	if n.Kind == source.String {
		if _, ok := amountOf(n.Text()); ok {
			return []string{n.Text()}
		}
		return nil
	}
	var all []string
	for _, child := range n.Children {
		all = append(all, quantityTexts(child)...)
	}
	return all
}
