package unit

import (
	"cmp"
	"strings"
)

// Kind names a physical dimension as lowvent writes and checks it. Two kinds
// may share an SI unit and still differ: gross and net power, propane and
// water, a temperature and a difference of temperatures. The zero Kind is no
// kind.
type Kind uint8

// The kinds, each with the SI unit that its type holds.
const (
	KindLength                Kind = iota + 1 // m
	KindArea                                  // m²
	KindVolume                                // m³
	KindMass                                  // kg
	KindPropaneMass                           // kg of propane
	KindWaterMass                             // kg of water that fills a vessel
	KindForce                                 // N
	KindGaugePressure                         // Pa above the air outside
	KindAbsolutePressure                      // Pa above vacuum
	KindTemperature                           // K
	KindTemperatureDifference                 // K
	KindPower                                 // W, basis not decided
	KindGrossPower                            // W on the higher heating value
	KindNetPower                              // W on the lower heating value
	KindEnergy                                // J on the higher heating value
	KindMassFlow                              // kg/s
	KindVolumeFlow                            // m³/s
	KindSpeed                                 // m/s
	KindDuration                              // s
	KindRatio                                 // 1, so that 100 % is 1
	KindAngle                                 // rad
	KindCurrent                               // A
	KindVoltage                               // V
	KindAreaPerPower                          // m²/W of gross power
	KindAreaPerMass                           // m²/kg
	KindHeatPerMass                           // J/kg
	KindDensity                               // kg/m³
	KindCount                                 // how many, a whole number
	KindHeatCapacity                          // J/(kg K)
	KindViscosity                             // Pa s
	KindHeatTransfer                          // W/(m² K)
)

// Kinds lists every kind, in the order of the constants.
func Kinds() []Kind {
	all := make([]Kind, 0, len(kinds)-1)
	for k := KindLength; int(k) < len(kinds); k++ {
		all = append(all, k)
	}
	return all
}

// KindNamed finds the kind whose name, as [Kind.String] gives it, is the word; false when
// there is none.
func KindNamed(word string) (Kind, bool) {
	for _, k := range Kinds() {
		if k.String() == word {
			return k, true
		}
	}
	return 0, false
}

// String gives the kind's name in camelCase, such as "length" or
// "gaugePressure". It is also the name of the kind's definition in the JSON
// Schemas. A value that is no kind gives "unknownKind".
func (k Kind) String() string { return k.info().name }

// Symbol gives the SI symbol of the unit in which the kind is held, such as
// "m" or "kg/s"; a ratio has "1", a value that is no kind has "".
func (k Kind) Symbol() string { return k.info().symbol }

// Accepted lists the spellings that Parse takes, the way an error message
// shows them: "mm, cm, m, in, ft". Superscript twins ("cm²" for "cm2") and
// the singular of "days" and "weeks" are taken as well and not listed.
func (k Kind) Accepted() string {
	var names []string
	for _, s := range k.info().units {
		names = append(names, cmp.Or(s.name, "no unit"))
	}
	return strings.Join(names, ", ")
}

// valid tells whether k is one of the constants.
func (k Kind) valid() bool { return k >= KindLength && int(k) < len(kinds) }

// info gives the kind's row, or that of no kind.
func (k Kind) info() *kindInfo {
	if !k.valid() {
		return &kinds[0]
	}
	return &kinds[k]
}

// phrase puts the kind's name into words: "gaugePressure" → "gauge pressure".
func (k Kind) phrase() string {
	var b strings.Builder
	for _, r := range k.String() {
		if r >= 'A' && r <= 'Z' {
			b.WriteByte(' ')
			r += 'a' - 'A'
		}
		b.WriteRune(r)
	}
	return b.String()
}
