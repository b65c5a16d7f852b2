package pipe

import (
	"slices"

	"lowvent.example/schema/unit"
)

// inch in metres.
const inch = 0.0254

// Size is a standard size of a material. Trade names of copper differ by a size:
// "½ in" is ⅝ in outside in types K and L and ½ in outside in ACR coil. So a size
// is known by its outside diameter.
type Size struct {
	Material      Material
	Name          string // the trade name in its own series
	Outside, Wall unit.Length
	Bore          unit.Length // Outside − 2·Wall; of corrugated tube 0
	EHD           int         // of corrugated tube its designation, else 0
	Source        string
}

// dimension is an outside diameter and a wall in inches.
type dimension struct {
	name          string
	outside, wall float64
}

const (
	b3610 = "ASME B36.10, standard weight, as reprinted in a table of wall thicknesses (grinnell.com/e-catalog, Mechanical Installation Handbook page 360, read)"
	b88   = "ASTM B88, as reprinted at www.engineeringtoolbox.com/astm-copper-tubes-d_779.html (read)"
	b280  = "ASTM B280, annealed, as reprinted at www.engineeringtoolbox.com/copper-tube-astm-280-d_1084.html (read)"
	peIPS = "iron pipe size outside (ASME B36.10, read); wall as half the difference to the bore of International Fuel Gas Code 2018 Table 402.4(35) (read)"
)

// series are the standard sizes by material, least bore first.
var series = map[Material]struct {
	source     string
	dimensions []dimension
}{
	SteelPipe: {b3610, []dimension{
		{"1/8", 0.405, 0.068}, {"1/4", 0.540, 0.088}, {"3/8", 0.675, 0.091}, {"1/2", 0.840, 0.109},
		{"3/4", 1.050, 0.113}, {"1", 1.315, 0.133}, {"1-1/4", 1.660, 0.140}, {"1-1/2", 1.900, 0.145},
		{"2", 2.375, 0.154}, {"2-1/2", 2.875, 0.203}, {"3", 3.500, 0.216}, {"4", 4.500, 0.237},
	}},
	CopperK: {b88, []dimension{
		{"1/4", 0.375, 0.035}, {"3/8", 0.500, 0.049}, {"1/2", 0.625, 0.049}, {"5/8", 0.750, 0.049},
		{"3/4", 0.875, 0.065}, {"1", 1.125, 0.065}, {"1-1/4", 1.375, 0.065}, {"1-1/2", 1.625, 0.072}, {"2", 2.125, 0.083},
	}},
	CopperL: {b88, []dimension{
		{"1/4", 0.375, 0.030}, {"3/8", 0.500, 0.035}, {"1/2", 0.625, 0.040}, {"5/8", 0.750, 0.042},
		{"3/4", 0.875, 0.045}, {"1", 1.125, 0.050}, {"1-1/4", 1.375, 0.055}, {"1-1/2", 1.625, 0.060}, {"2", 2.125, 0.070},
	}},
	CopperACR: {b280, []dimension{
		{"1/8", 0.125, 0.030}, {"3/16", 0.187, 0.030}, {"1/4", 0.250, 0.030}, {"5/16", 0.312, 0.032},
		{"3/8", 0.375, 0.032}, {"1/2", 0.500, 0.032}, {"5/8", 0.625, 0.035}, {"3/4", 0.750, 0.042},
		{"3/4 thin", 0.750, 0.035}, {"7/8", 0.875, 0.045}, {"1-1/8", 1.125, 0.050}, {"1-3/8", 1.375, 0.055},
	}},
	Polyethylene: {peIPS, []dimension{
		{"1/2 SDR 9", 0.840, 0.090}, {"3/4 SDR 11", 1.050, 0.095}, {"1 SDR 11", 1.315, 0.119}, {"1-1/4 SDR 10", 1.660, 0.166},
		{"1-1/2 SDR 11", 1.900, 0.173}, {"2 SDR 11", 2.375, 0.216}, {"3 SDR 11", 3.500, 0.318}, {"4 SDR 11", 4.500, 0.409},
	}},
}

// Sizes returns the standard sizes of a material, the narrowest first, in a slice
// of the caller's own; nil for a material without a series here. Corrugated tube
// comes in the designations of its table. Which of the sizes a code lets carry gas
// is the code's matter.
//
// Source: named in each size.
func Sizes(m Material) []Size {
	if m == Corrugated {
		return corrugatedSizes()
	}
	found := series[m]
	var sizes []Size
	for _, d := range found.dimensions {
		sizes = append(sizes, Size{
			Material: m, Name: d.name, Source: found.source,
			Outside: unit.Length(d.outside * inch), Wall: unit.Length(d.wall * inch),
			Bore: unit.Length((d.outside - 2*d.wall) * inch),
		})
	}
	return sizes
}

func corrugatedSizes() []Size {
	var sizes []Size
	for _, c := range corrugatedTable.columns {
		sizes = append(sizes, Size{Material: Corrugated, Name: c.size, EHD: c.ehd, Source: corrugatedTable.Source + ", " + corrugatedTable.Clause})
	}
	return sizes
}

// sameOutside is how far an outside diameter may lie from the standard one, in m:
// the tolerance of ASTM B88 for tube up to ½ in. It keeps 8 mm tube apart from
// 5/16 in.
const sameOutside = 5.1e-5

// FindSize returns the standard size of a material by its outside diameter, within
// 0.05 mm, and false when there is none. Where two walls share an outside diameter
// it returns the narrower bore, which errs high on the drop.
func FindSize(m Material, outside unit.Length) (Size, bool) {
	sizes := Sizes(m)
	i := slices.IndexFunc(sizes, func(s Size) bool {
		away := float64(s.Outside - outside)
		return s.Outside > 0 && away <= sameOutside && away >= -sameOutside
	})
	if i < 0 {
		return Size{}, false
	}
	return sizes[i], true
}
