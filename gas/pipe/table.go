package pipe

import (
	"fmt"

	"lowvent.example/schema/unit"
)

// Table is a published table of the loads that pipe carries, by size and length,
// for one inlet pressure and one drop.
type Table struct {
	Material Material
	Inlet    unit.GaugePressure // the pressure that the table is for
	Drop     unit.GaugePressure // what a run loses at the load of its cell
	Source   string
	Clause   string
	columns  []column
}

// column is one size of a table, the lengths rising.
type column struct {
	size  string
	bore  float64 // in; of corrugated tube 0
	ehd   int
	cells []cell
}

// cell is a length in ft and a load in thousands of BTU/h, as printed.
type cell struct{ length, load float64 }

// Entry is one cell of a table.
type Entry struct {
	Size   string
	Bore   unit.Length // of corrugated tube 0
	EHD    int         // of corrugated tube
	Length unit.Length
	Load   unit.GrossPower
}

// kiloBTU is 1000 BTU/h in W.
const kiloBTU = 1000 * btuPerHour

func (c column) entry(k cell) Entry {
	return Entry{
		Size: c.size, Bore: unit.Length(c.bore * inch), EHD: c.ehd,
		Length: unit.Length(k.length * foot), Load: unit.GrossPower(k.load * kiloBTU),
	}
}

// Entries returns every cell, size by size, the lengths rising.
func (t *Table) Entries() []Entry {
	var entries []Entry
	for _, c := range t.columns {
		for _, k := range c.cells {
			entries = append(entries, c.entry(k))
		}
	}
	return entries
}

// TableFor returns the published table for a material at an inlet pressure, and
// false when there is none here: for steel, copper and polyethylene the tables of
// the International Fuel Gas Code 2018 for 11 in w.c. with a drop of 0.5 in, for
// steel and copper also those for 10 psi with a drop of 1 psi; for corrugated tube
// that for 11 in w.c. The first kind answers for inlets under 1.5 psi, the second
// for 10 psi and over: a gas under more pressure loses less of it.
//
// An inlet below 11 in w.c. has a density less by at most 3 %, which the tables
// do not show: their loads are then up to 1.5 % too high.
func TableFor(m Material, inlet unit.GaugePressure) (*Table, bool) {
	low, high := tablesOf(m)
	switch {
	case inlet > 0 && inlet < HighPressureFrom:
		return low, low != nil
	case float64(inlet) >= 10*psi*(1-1e-9):
		return high, high != nil
	}
	return nil, false
}

func tablesOf(m Material) (low, high *Table) {
	switch m {
	case SteelPipe:
		return &steelTable, &steelHighTable
	case CopperK, CopperL, CopperACR:
		return &copperTable, &copperHighTable
	case Polyethylene:
		return &polyethyleneTable, nil
	case Corrugated:
		return &corrugatedTable, nil
	}
	return nil, nil
}

// Capacity returns the cell that a bore and a length may be judged by: of all the
// cells for a bore no wider and a length no shorter, that of the greatest load. So
// a bore between two sizes counts as the narrower, a length between two rows as the
// longer, and a cell that nobody could read is bridged to the cautious side. Beyond
// the table it fails with *[NoTableError], and on a figure that is none with
// *[propane.RangeError].
//
// Source: the longest-length rule of International Fuel Gas Code 402.4.1, "the next
// longer length" (from memory).
func (t *Table) Capacity(bore, length unit.Length) (Entry, error) {
	if err := checkBore(bore); err != nil {
		return Entry{}, err
	}
	// A thousandth of an inch of slack: a bore read as 15.80 mm is the 0.622 in one.
	return t.best(length, func(c column) bool { return c.bore > 0 && c.bore <= float64(bore)/inch+1e-3 })
}

// CapacityEHD is [Table.Capacity] for corrugated tube, by its designation: that one
// alone, since a designation is a class and not a bore.
func (t *Table) CapacityEHD(ehd int, length unit.Length) (Entry, error) {
	return t.best(length, func(c column) bool { return c.ehd == ehd && ehd > 0 })
}

func (t *Table) best(length unit.Length, fits func(column) bool) (Entry, error) {
	if err := checkLength(length); err != nil {
		return Entry{}, err
	}
	var best Entry
	for _, c := range t.columns {
		if !fits(c) {
			continue
		}
		for _, k := range c.cells {
			if e := c.entry(k); float64(e.Length) >= float64(length)*(1-1e-9) && e.Load > best.Load {
				best = e
			}
		}
	}
	if best.Load == 0 {
		return Entry{}, &NoTableError{Segment: -1, What: string(t.Material),
			Reason: fmt.Sprintf("%s, %s, has no such size, or ends before %.4g m", t.Source, t.Clause, float64(length))}
	}
	return best, nil
}

// Allowed returns the load that a run may carry by the table and by the code
// equation for the table's own inlet and drop, whichever is less: in the table for
// steel at 11 in w.c. the rows labelled 80 and 100 ft hold the loads of 70 and
// 80 ft, up to 13 % too high. It fails as [Table.Capacity]; for corrugated tube,
// which has no equation, ask [Table.CapacityEHD].
func (t *Table) Allowed(gas CodeGas, bore, length unit.Length) (unit.GrossPower, error) {
	entry, err := t.Capacity(bore, length)
	if err != nil {
		return 0, err
	}
	run := unit.Length(max(float64(length), leastLength))
	equation, err := CodeCapacity(gas, bore, run, t.Drop)
	if t.Inlet >= HighPressureFrom {
		inlet := unit.AbsolutePressure(float64(t.Inlet) + standardAtmosphere)
		equation, err = CodeHighCapacity(gas, bore, run, inlet, inlet-unit.AbsolutePressure(t.Drop))
	}
	if err != nil {
		return 0, err
	}
	return min(entry.Load, equation), nil
}

// standardAtmosphere in Pa: 14.7 psi in the tables is this within 0.03 %.
const standardAtmosphere = 101325.0

// corrugatedSlope is the drop per metre, in Pa, of a load in corrugated tube: the
// drop of the table over the greatest length at which it still lets the load pass.
// Each such length of tube loses no more than that by the table, and lengths add
// up; a load less than that of the longest row counts as that row's.
func corrugatedSlope(ehd int, power float64) (slope float64, reason string) {
	reason = "it has no such designation"
	longest := 0.0
	for _, c := range corrugatedTable.columns {
		if c.ehd != ehd {
			continue
		}
		reason = "the load is more than it lets pass at its shortest length"
		for _, k := range c.cells {
			if k.load*kiloBTU >= power {
				longest = max(longest, k.length*foot)
			}
		}
	}
	if longest == 0 {
		return 0, reason
	}
	return float64(corrugatedTable.Drop) / longest, ""
}
