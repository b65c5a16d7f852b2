package cylinder

import (
	"math"
	"slices"
	"strings"
	"testing"

	"lowvent.example/gas/propane"
	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/unit"
)

const (
	btuHour = 1055.05585262 / 3600 // W
	boiling = -42.11 + celsius     // the chart's least temperature
)

// cell is one figure of the published chart of draws from a 100 lb cylinder:
// generator installation manual TP-6727 10/11, appendix D, figure 1, p. 63, and a
// burner maker's page with the same figures.
type cell struct {
	pounds, fahrenheit float64
	chart              float64 // BTU/h
	unitWall           float64 // BTU/h with a wall coefficient of 1 W/(m² K), on the chart's assumption
}

// hundredPound is the cylinder of the chart with the given diameter in inches.
func hundredPound(diameter float64) Vessel {
	size, _ := TradeSizeFor(239 * lb)
	v := size.Vessel()
	v.Diameter = unit.Length(diameter * inch)
	return v
}

func chartCells(t testing.TB, diameter float64) (cells []cell) {
	t.Helper()
	for _, row := range physicstest.Published(t, "vaporization.csv") {
		if row["kind"] != "100 lb cylinder table" {
			continue
		}
		c := cell{pounds: row.Number(t, "fill_value"), fahrenheit: row.Number(t, "t_F"), chart: row.Number(t, "BTU_per_h")}
		c.unitWall = power(t, hundredPound(diameter), c, 1, boiling)
		cells = append(cells, c)
	}
	if len(cells) != 37 {
		t.Fatalf("%d cells of the chart, want 37", len(cells))
	}
	return cells
}

// power is the sustained draw in BTU/h for the contents and air of a cell.
func power(t testing.TB, v Vessel, c cell, wall, least float64) float64 {
	t.Helper()
	p, err := SustainedPower(v, unit.PropaneMass(c.pounds*lb), unit.HeatTransfer(wall), fahrenheit(c.fahrenheit), unit.Temperature(least))
	if err != nil {
		t.Fatal(err)
	}
	return float64(p) / btuHour
}

func median(values []float64) float64 {
	sorted := slices.Sorted(slices.Values(values))
	return sorted[len(sorted)/2]
}

// wallOf is the one wall coefficient set on every other cell, in the order of the
// file: the median of what each of them implies.
func wallOf(cells []cell) float64 {
	var implied []float64
	for i := 0; i < len(cells); i += 2 {
		implied = append(implied, cells[i].chart/cells[i].unitWall)
	}
	return median(implied)
}

// One wall coefficient set on half of the chart tells the other half, with the
// chart's own assumption that the liquid falls to its atmospheric boiling point.
//
// One cell stands apart, 10 lb at 0 °F: it does not lie on the chart's own line.
// From 0 to 40 °F every other row of the chart rises by a factor of 1.86 to
// 1.95, this row by 1.75; two figures of two digits are rounded there. The
// balance gives a fifth less than the chart: the cautious side.
//
// The diameter was read in two retail pages, 14.5 and 14.5 to 15 in (one page with 18 in
// contradicts the water capacity): the result holds at both ends.
func TestAgainstTheChart(t *testing.T) {
	for _, diameter := range []float64{14.5, 14.75, 15} {
		cells := chartCells(t, diameter)
		wall := wallOf(cells)
		if wall < 8 || wall > 20 {
			t.Errorf("%g in: a wall of %.2f W/(m² K) is outside 8 to 20", diameter, wall)
		}
		var off []float64
		worst := 0.0
		for i := 1; i < len(cells); i += 2 {
			c := cells[i]
			error := wall*c.unitWall/c.chart - 1
			off = append(off, math.Abs(error))
			if c.pounds == 10 && c.fahrenheit == 0 {
				if error < -0.21 || error > -0.14 {
					t.Errorf("%g in, the cell apart: %+.3f", diameter, error)
				}
				t.Logf("100 lb chart, %g in: the cell apart, 10 lb at 0 °F, %+.1f %%", diameter, error*100)
				continue
			}
			worst = max(worst, math.Abs(error))
			if math.Abs(error) > 0.12 {
				t.Errorf("%g in, %g lb at %g °F: %+.3f", diameter, c.pounds, c.fahrenheit, error)
			}
		}
		if median(off) > 0.05 {
			t.Errorf("%g in: median %.3f", diameter, median(off))
		}
		t.Logf("100 lb chart, %g in, U = %.2f W/(m² K) on 19 cells: other %d cells, worst %.1f %% (without the cell apart), median %.1f %%",
			diameter, wall, len(off), worst*100, median(off)*100)
	}
}

// The row of 10 lb is the one that does not rise as the others do.
func TestTheCellApart(t *testing.T) {
	at := map[[2]float64]float64{}
	for _, c := range chartCells(t, 14.5) {
		at[[2]float64{c.pounds, c.fahrenheit}] = c.chart
	}
	compared := 0
	for key, cold := range at {
		mild, both := at[[2]float64{key[0], 40}]
		if key[1] != 0 || !both {
			continue
		}
		compared++
		if rise := mild / cold; key[0] == 10 && rise > 1.76 || key[0] != 10 && (rise < 1.85 || rise > 1.96) {
			t.Errorf("%g lb: from 0 to 40 °F by a factor of %.3f", key[0], rise)
		}
	}
	if compared < 5 {
		t.Errorf("%d rows compared", compared)
	}
}

// Against a dished bottom, half an ellipsoid half as deep as wide, the flat one
// errs high by what the doc comment states; and the chart's last row by more.
func TestAgainstADishedBottom(t *testing.T) {
	v := hundredPound(14.5)
	D := float64(v.Diameter)
	head, bowl := math.Pi*D*D*D/24, math.Pi/4*D*D*(1+0.25/math.Sqrt(0.75)*math.Atanh(math.Sqrt(0.75)))
	wall := wallOf(chartCells(t, 14.5))
	for _, c := range []struct{ pounds, from, to float64 }{{100, 0.03, 0.035}, {10, 0.19, 0.205}} {
		s, err := stateOf(v, unit.PropaneMass(c.pounds*lb), boiling)
		if err != nil {
			t.Fatal(err)
		}
		dished := bowl + 4*(s.volume-head)/D
		if over := s.area/dished - 1; s.volume < head || over < c.from || over > c.to {
			t.Errorf("%g lb: %+.3f over a dished bottom", c.pounds, over)
		}
	}
	for _, c := range chartCells(t, 14.5) {
		if over := c.chart/(wall*c.unitWall) - 1; c.pounds == 10 && (over < 0.11 || over > 0.24) {
			t.Errorf("10 lb at %g °F: the chart is %+.3f over the balance", c.fahrenheit, over)
		}
	}
}

// tenPSI is the temperature at which 10 psi over the air still stand over the
// liquid: the least that a regulator is fed with in these tests, an example.
func tenPSI(t testing.TB) float64 {
	return value[unit.Temperature](t)(propane.SaturationTemperature(101325 + 10*6894.757))
}

// The figure the program judges by, low wall and a regulator to be fed, stands
// below the chart, and below half of it, in every cell.
func TestConservativeFigureIsBelowTheChart(t *testing.T) {
	least, low := tenPSI(t), float64(WallInStillAir().Low)
	var share []float64
	for _, diameter := range []float64{14.5, 15} {
		for _, c := range chartCells(t, diameter) {
			got := power(t, hundredPound(diameter), c, low, least)
			share = append(share, got/c.chart)
			if got > c.chart/2 {
				t.Errorf("%g in, %g lb at %g °F: %.0f BTU/h, chart %.0f", diameter, c.pounds, c.fahrenheit, got, c.chart)
			}
		}
	}
	if slices.Min(share) < 0.15 || slices.Max(share) > 0.36 {
		t.Errorf("%.2f to %.2f of the chart, documented 0.16 to 0.35", slices.Min(share), slices.Max(share))
	}
	t.Logf("conservative figure over the chart: %d cells, %.2f to %.2f, median %.2f", len(share), slices.Min(share), slices.Max(share), median(share))
}

// The rule for horizontal tanks, Q = D·L·K with the liquid chilled to −20 °F in
// air of 0 °F (same page as the chart), put to the 100 lb cylinder of 14.5 by 48 in.
// It asks for a wall of 18 to 28 W/(m² K), half as much again as the chart or more,
// and about twice still air at its best: it is for tanks lying in the open, which
// wet more wall than an upright one when little is left.
func TestAgainstTheRuleForTanks(t *testing.T) {
	v, compared := hundredPound(14.5), 0
	least := float64(fahrenheit(-20))
	liquid := value[unit.Density](t)(propane.LiquidDensity(unit.Temperature(least)))
	wall := wallOf(chartCells(t, 14.5))
	for _, row := range physicstest.Published(t, "vaporization.csv") {
		if row["kind"] != "K factor" {
			continue
		}
		compared++
		rule := 14.5 * 48 * row.Number(t, "value")
		c := cell{pounds: row.Number(t, "fill_value") / 100 * liquid * float64(Volume(v.Water)) / lb}
		asked := rule / power(t, v, c, 1, least)
		if asked < 18 || asked > 28 || asked < 1.4*wall || asked < 1.8*float64(WallInStillAir().High) {
			t.Errorf("%s %% full: the rule's %.0f BTU/h asks for %.1f W/(m² K)", row["fill_value"], rule, asked)
		}
		t.Logf("rule for tanks, %s %% full: %.0f BTU/h asks for U = %.1f; low wall gives %.2f of it", row["fill_value"], rule, asked,
			power(t, v, c, float64(WallInStillAir().Low), least)/rule)
	}
	if compared != 2 {
		t.Errorf("%d factors compared, want 2", compared)
	}
}

// The planning rule of the same page, 50,000 BTU/h for each 100 lb cylinder at
// 0 °F: the chart meets it down to 40 lb and misses it below; the conservative
// figure stays under it at any contents, at half of it and less.
func TestAgainstThePlanningRule(t *testing.T) {
	const rule = 50000
	least, low := tenPSI(t), float64(WallInStillAir().Low)
	compared := 0
	for _, c := range chartCells(t, 14.5) {
		if c.fahrenheit != 0 {
			continue
		}
		compared++
		if (c.chart >= rule) != (c.pounds >= 40) {
			t.Errorf("%g lb: chart %.0f", c.pounds, c.chart)
		}
		if got := power(t, hundredPound(14.5), c, low, least); got > rule/2 {
			t.Errorf("%g lb: %.0f BTU/h, the rule says %d", c.pounds, got, rule)
		}
	}
	if compared != 9 {
		t.Errorf("%d cells at 0 °F, want 9", compared)
	}
}

// The implied wall coefficients of the published table were worked out by others
// from the same chart with rounder figures (184 BTU/lb, 21,591 BTU/lb): within 7 %.
func TestAgainstTheImpliedWall(t *testing.T) {
	compared := 0
	for _, row := range physicstest.Table(t, "vaporization.csv") {
		if row["kind"] != "implied U" || !strings.HasPrefix(row["container"], "100 lb") {
			continue
		}
		for _, c := range chartCells(t, 14.5) {
			if c.fahrenheit == 0 && c.pounds == row.Number(t, "fill_value") {
				compared++
				got, want := c.chart/c.unitWall, row.Number(t, "value")
				if math.Abs(got/want-1) > 0.07 {
					t.Errorf("%g lb: %.2f, published %.2f", c.pounds, got, want)
				}
			}
		}
	}
	if compared != 2 {
		t.Errorf("%d compared, want 2", compared)
	}
}

// The table of the documentation, in thousand BTU/h.
func TestTableOfTheDocumentation(t *testing.T) {
	least := tenPSI(t)
	wall := wallOf(chartCells(t, 14.5))
	for _, c := range []struct{ pounds, fahrenheit, chart, chartWall, nominal, low float64 }{
		{100, 0, 113, 115.7, 33.5, 23.93},
		{50, 0, 64, 64.0, 18.44, 13.17},
		{20, 0, 36, 33.0, 9.40, 6.72},
		{100, 60, 277, 274.1, 127.7, 91.21},
		{50, 60, 154, 151.7, 70.28, 50.2},
		{20, 60, 83, 78.2, 35.84, 25.6},
	} {
		at := cell{pounds: c.pounds, fahrenheit: c.fahrenheit}
		if !slices.ContainsFunc(chartCells(t, 14.5), func(k cell) bool {
			return k.pounds == c.pounds && k.fahrenheit == c.fahrenheit && k.chart == c.chart*1000
		}) {
			t.Errorf("the chart has no %g for %g lb at %g °F", c.chart, c.pounds, c.fahrenheit)
		}
		for _, k := range []struct {
			name             string
			got, want, slack float64
		}{
			{"chart's wall", power(t, hundredPound(14.5), at, wall, boiling) / 1000, c.chartWall, 0.05},
			{"nominal", power(t, hundredPound(14.5), at, 7, least) / 1000, c.nominal, 0.05},
			{"low", power(t, hundredPound(14.5), at, 5, least) / 1000, c.low, 0.05},
		} {
			if math.Abs(k.got-k.want) > k.slack {
				t.Errorf("%g lb at %g °F, %s: %.2f, documented %g", c.pounds, c.fahrenheit, k.name, k.got, k.want)
			}
		}
	}
}
