package unit_test

import (
	"fmt"

	"lowvent.example/schema/unit"
)

func ExampleParse() {
	v, err := unit.Parse[unit.Length]("1.32 m ± 2 cm")
	fmt.Println(float64(v.Low), float64(v.Nominal), float64(v.High), err)
	_, err = unit.Parse[unit.Area]("14 sq in")
	fmt.Println(err)
	// Output:
	// 1.3 1.32 1.34 <nil>
	// "14 sq in": "sq" is none of its units; an area is written with mm2, cm2, m2, in2, ft2, for example "90 cm2"; did you mean "14 in2"?
}

func ExampleText() {
	fmt.Println(unit.Text(unit.MustParse[unit.Area]("30 cm2")))
	fmt.Println(unit.Text(unit.MustParse[unit.GaugePressure]("11 inH2O")))
	fmt.Println(unit.Text(unit.MustParse[unit.Temperature]("-12 degC")))
	// Output:
	// 30 cm2 (4.7 in2)
	// 2.74 kPa (11 inH2O)
	// -12 degC (10.4 degF)
}

func ExampleTextApart() {
	found, needed := unit.TextApart(unit.KindLength, 0.9143, 0.9144)
	fmt.Println(found, "<", needed)
	// Output:
	// 914.3 mm (35.996 in) < 914.4 mm (36 in)
}

func ExampleWriteAtLeast() {
	fmt.Println(unit.WriteAtLeast(unit.KindArea, 0.004321, "30 cm2"))
	fmt.Println(unit.WriteAtLeast(unit.KindLength, 0.6096, "20 in"))
	// Output:
	// 43.3 cm2
	// 24 in
}

func ExampleDate() {
	stamped, _ := unit.ParseDate("2031-05")
	fmt.Println(stamped.First(), stamped.Last(), stamped.AddYears(5))
	// Output:
	// 2031-05-01 2031-05-31 2036-05
}
