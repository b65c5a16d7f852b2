package check

import (
	"encoding/json"
	"strconv"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// Raise is the edit that brings a quantity up to a value, written in the unit
// that the file uses and rounded to the demanding side.
func Raise[Q unit.Quantity](m *layout.Measure[Q], to Q) report.Edit {
	return quantityEdit(m, unit.WriteAtLeast(to.Kind(), float64(to), asUnit(m)), to.Kind(), "least")
}

// Lower is the edit that brings a quantity down to a value.
func Lower[Q unit.Quantity](m *layout.Measure[Q], to Q) report.Edit {
	return quantityEdit(m, unit.WriteAtMost(to.Kind(), float64(to), asUnit(m)), to.Kind(), "most")
}

// SetWord is the edit that writes a word.
func SetWord[W ~string](g *layout.Given[W], word W) report.Edit {
	return report.Edit{Pointer: g.Spot().Pointer(), Value: quote(string(word))}
}

// SetBool is the edit that writes true or false.
func SetBool(g *layout.Given[bool], to bool) report.Edit {
	return report.Edit{Pointer: g.Spot().Pointer(), Value: strconv.FormatBool(to)}
}

// RaiseAt is the edit that brings a coordinate, which stands in a list, up to a
// value.
func RaiseAt(pointer string, now unit.Value[unit.Length], to unit.Length) report.Edit {
	return report.Edit{Pointer: pointer, Value: quote(unit.WriteAtLeast(to.Kind(), float64(to), now.Written)), Kind: to.Kind().String(), Sense: "least"}
}

func quantityEdit[Q unit.Quantity](m *layout.Measure[Q], text string, kind unit.Kind, sense string) report.Edit {
	return report.Edit{Pointer: m.Spot().Pointer(), Value: quote(text), Kind: kind.String(), Sense: sense}
}

// asUnit is the text whose unit an edit of the quantity keeps.
func asUnit[Q unit.Quantity](m *layout.Measure[Q]) string {
	v, _ := m.Get()
	return v.Written
}

func quote(text string) string {
	b, err := json.Marshal(text)
	if err != nil {
		panic(err) // a Go string always encodes
	}
	return string(b)
}
