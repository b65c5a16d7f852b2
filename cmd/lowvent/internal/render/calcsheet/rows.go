package calcsheet

import (
	"strconv"

	"lowvent.example/schema/report"
)

// row is one line of the table, text by column.
type row map[string]string

// amount is the value of a row, with its number and band in SI.
func amount(a *report.Amount) row {
	if a == nil {
		return nil
	}
	r := row{"value": a.Text, "si_unit": a.Unit}
	for column, si := range map[string]*float64{"si_value": a.SI, "si_low": a.Low, "si_high": a.High} {
		if si != nil {
			r[column] = number(*si)
		}
	}
	return r
}

// at is the place of a row in the file.
func at(p *report.Place) row {
	if p == nil {
		return nil
	}
	r := row{"pointer": p.Pointer, "file": p.File}
	if p.Line > 0 {
		r["line"], r["column"] = strconv.Itoa(p.Line), strconv.Itoa(p.Column)
	}
	return r
}
