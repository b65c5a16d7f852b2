package unit

import (
	"math/big"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Every row of the tables is usable: reduced, positive, unambiguous.
func TestSpellingsAreSound(t *testing.T) {
	for _, k := range Kinds() {
		seen := map[string]bool{}
		for _, s := range k.info().units {
			if s.num <= 0 || s.den <= 0 {
				t.Errorf("%s %q: factor %d/%d", k, s.name, s.num, s.den)
			}
			if g := new(big.Int).GCD(nil, nil, big.NewInt(s.num), big.NewInt(s.den)); !g.IsInt64() || g.Int64() != 1 {
				t.Errorf("%s %q: factor %d/%d has a common factor %s, which costs the fast path", k, s.name, s.num, s.den, g)
			}
			for _, word := range append([]string{s.name}, s.also...) {
				if seen[word] {
					t.Errorf("%s: %q stands twice", k, word)
				}
				seen[word] = true
				if strings.ContainsAny(word, " +±\u00a0\u2009\u202f") || word == "to" {
					t.Errorf("%s: %q can't be told from what follows it", k, word)
				}
				if word != "" && isDigit(word[0]) {
					t.Errorf("%s: %q begins like a number", k, word)
				}
			}
		}
		for _, scales := range [][]scale{k.info().metric, k.info().us} {
			checkScales(t, k, scales)
		}
		if p := k.info().pair; p.big != "" && (find(k.info().units, p.big) == nil || find(k.info().units, p.small) == nil) {
			t.Errorf("%s: no units for its compound %+v", k, p)
		}
		if !seen[find(k.info().units, k.info().metric[0].unit).name] {
			t.Errorf("%s: prints in a unit it does not read", k)
		}
	}
}

func checkScales(t *testing.T, k Kind, scales []scale) {
	t.Helper()
	last := -1.0
	for _, s := range scales {
		if find(k.info().units, s.unit) == nil {
			t.Errorf("%s prints in %q but does not read it", k, s.unit)
		}
		if s.from <= last {
			t.Errorf("%s: scale %q begins at %v, not after the one before", k, s.unit, s.from)
		}
		last = s.from
	}
}

// A compound's parts fit: per small units make one big unit.
func TestCompoundsAddUp(t *testing.T) {
	for _, k := range Kinds() {
		p := k.info().pair
		if p.big == "" {
			continue
		}
		small := find(k.info().units, p.small).factor()
		if small.Mul(small, big.NewRat(p.per, 1)).Cmp(find(k.info().units, p.big).factor()) != 0 {
			t.Errorf("%s: %d %s are not one %s", k, p.per, p.small, p.big)
		}
	}
}

func TestKindNames(t *testing.T) {
	got := map[string]string{}
	for _, k := range Kinds() {
		if _, twice := got[k.String()]; twice {
			t.Errorf("%q names two kinds", k)
		}
		got[k.String()] = k.Symbol()
	}
	want := map[string]string{
		"length": "m", "area": "m2", "volume": "m3", "mass": "kg", "propaneMass": "kg", "waterMass": "kg", "force": "N",
		"gaugePressure": "Pa", "absolutePressure": "Pa", "temperature": "K", "temperatureDifference": "K",
		"power": "W", "grossPower": "W", "netPower": "W", "energy": "J", "massFlow": "kg/s", "volumeFlow": "m3/s",
		"speed": "m/s", "duration": "s", "ratio": "1", "angle": "rad", "current": "A", "voltage": "V",
		"areaPerPower": "m2/W", "areaPerMass": "m2/kg", "heatPerMass": "J/kg", "density": "kg/m3",
		"heatCapacity": "J/(kg.K)", "viscosity": "Pa.s", "heatTransfer": "W/(m2.K)",
		"number": "1",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestNoKind(t *testing.T) {
	for _, k := range []Kind{0, Kind(len(kinds)), 255} {
		if k.String() != "unknownKind" || k.Symbol() != "" || k.Accepted() != "" {
			t.Errorf("%d: %q %q %q", k, k.String(), k.Symbol(), k.Accepted())
		}
		if _, err := ParseKind(k, "1 m"); err == nil || !strings.Contains(err.Error(), "no such kind") {
			t.Errorf("ParseKind(%d): %v", k, err)
		}
		if got := WriteAtLeast(k, 1, ""); got != "" {
			t.Errorf("WriteAtLeast(%d) = %q", k, got)
		}
		if got := TextOf(k, 1); got != "1" {
			t.Errorf("TextOf(%d) = %q", k, got)
		}
	}
}

func TestAccepted(t *testing.T) {
	want := map[Kind]string{
		KindLength:                "mm, cm, m, in, ft",
		KindArea:                  "mm2, cm2, m2, in2, ft2",
		KindVolume:                "mL, L, m3, in3, ft3, galUS, galImp",
		KindMass:                  "g, kg, oz, lb",
		KindPropaneMass:           "g, kg, oz, lb",
		KindWaterMass:             "g, kg, oz, lb, mL, L, galUS",
		KindForce:                 "N, kN, lbf, kgf",
		KindGaugePressure:         "Pa, hPa, kPa, MPa, mbar, bar, psi, psig, inH2O, mmH2O, inHg",
		KindAbsolutePressure:      "Pa, kPa, bar, mbar, psia",
		KindTemperature:           "degC, °C, degF, °F, K",
		KindTemperatureDifference: "K, degC, °C, degF, °F",
		KindPower:                 "W, kW, MW, BTU/h, kBTU/h",
		KindGrossPower:            "W, kW, MW, BTU/h, kBTU/h",
		KindNetPower:              "W, kW, MW, BTU/h, kBTU/h",
		KindEnergy:                "J, kJ, MJ, kWh, BTU",
		KindMassFlow:              "g/h, kg/h, g/s, kg/s, lb/h",
		KindVolumeFlow:            "m3/h, m3/s, L/s, L/min, cfm, ft3/h, mL/h, in3/h",
		KindSpeed:                 "m/s, km/h, mph, ft/min",
		KindDuration:              "s, min, h, d, days, weeks",
		KindRatio:                 "%, no unit",
		KindAngle:                 "deg, rad",
		KindCurrent:               "mA, A",
		KindVoltage:               "mV, V",
		KindAreaPerPower:          "m2/W, cm2/kW, mm2/W, in2/(kBTU/h)",
		KindAreaPerMass:           "m2/kg, cm2/kg, in2/lb",
		KindHeatPerMass:           "J/kg, kJ/kg, MJ/kg, kWh/kg, BTU/lb",
		KindDensity:               "kg/m3, g/L, kg/L, lb/ft3",
		KindCount:                 "no unit",
		KindHeatCapacity:          "J/(kg.K), kJ/(kg.K), BTU/(lb.degF)",
		KindViscosity:             "Pa.s, mPa.s, uPa.s, cP",
		KindHeatTransfer:          "W/(m2.K), BTU/(h.ft2.degF)",
	}
	got := map[Kind]string{}
	for _, k := range Kinds() {
		got[k] = k.Accepted()
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// Every type tells its own kind, so that Parse reads what it returns.
func TestTypesTellTheirKind(t *testing.T) {
	got := []Kind{
		Length(0).Kind(), Area(0).Kind(), Volume(0).Kind(), Mass(0).Kind(), PropaneMass(0).Kind(), WaterMass(0).Kind(),
		Force(0).Kind(), GaugePressure(0).Kind(), AbsolutePressure(0).Kind(), Temperature(0).Kind(), TemperatureDifference(0).Kind(),
		Power(0).Kind(), GrossPower(0).Kind(), NetPower(0).Kind(), Energy(0).Kind(), MassFlow(0).Kind(), VolumeFlow(0).Kind(),
		Speed(0).Kind(), Duration(0).Kind(), Ratio(0).Kind(), Angle(0).Kind(), Current(0).Kind(), Voltage(0).Kind(),
		AreaPerPower(0).Kind(), AreaPerMass(0).Kind(), HeatPerMass(0).Kind(), Density(0).Kind(), Count(0).Kind(),
		HeatCapacity(0).Kind(), Viscosity(0).Kind(), HeatTransfer(0).Kind(),
	}
	if diff := cmp.Diff(Kinds(), got); diff != "" {
		t.Error(diff)
	}
}
