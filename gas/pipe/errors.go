package pipe

import (
	"fmt"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// NoTableError says that a drop or a capacity is not known because it can come
// from a published table alone and none covers the case.
type NoTableError struct {
	Segment int    // index of the run, or -1 outside a network
	What    string // what has no table, such as "hose"
	Reason  string // why none serves
}

// Error tells what has no table and why.
func (e *NoTableError) Error() string {
	if e.Segment < 0 {
		return fmt.Sprintf("no published table for %s: %s", e.What, e.Reason)
	}
	return fmt.Sprintf("segment %d: no published table for %s: %s", e.Segment, e.What, e.Reason)
}

// ExhaustedError says that a run cannot carry its load: by one of the methods it
// would lose all the pressure there is at its inlet. That is a finding (the load
// is not delivered), not a lack of knowledge.
type ExhaustedError struct {
	Segment int // index of the run, or -1 outside a network
	Inlet   unit.AbsolutePressure
	Method  string // the method that runs out: "Darcy", "code equation" or "table"
}

// Error tells the run, the method and the pressure at hand.
func (e *ExhaustedError) Error() string {
	where := ""
	if e.Segment >= 0 {
		where = fmt.Sprintf("segment %d: ", e.Segment)
	}
	return fmt.Sprintf("%sby the %s method the flow would take all of the %.6g Pa (absolute) at the inlet; it cannot pass", where, e.Method, float64(e.Inlet))
}

// SegmentError says that a value of a run is outside what the formulas take.
type SegmentError struct {
	Segment int
	Err     error
}

// Error tells the run and what is wrong with it.
func (e *SegmentError) Error() string { return fmt.Sprintf("segment %d: %v", e.Segment, e.Err) }

// Unwrap gives the error of the value itself.
func (e *SegmentError) Unwrap() error { return e.Err }

// TreeError says that the runs handed over do not make up a tree below one source.
type TreeError struct {
	Segment int    // a run at fault
	Reason  string // what is wrong with it
}

// Error tells the run and what is wrong.
func (e *TreeError) Error() string {
	return fmt.Sprintf("segment %d: %s; expected the index of the segment upstream, or %d at the source", e.Segment, e.Reason, FromSource)
}

// NoSizeError says that no standard size keeps the drop within the allowance.
type NoSizeError struct {
	Segment   int
	Material  Material
	Allowance unit.GaugePressure
}

// Error tells the run, the material and the allowance.
func (e *NoSizeError) Error() string {
	return fmt.Sprintf("segment %d: no standard size of %s keeps the drop within %.6g Pa", e.Segment, e.Material, float64(e.Allowance))
}

// The ranges of the inputs: far outside any dwelling to either side, so that only
// a figure that is no figure is refused.
const (
	leastBore, mostBore         = 1e-3, 1.0  // m
	mostLength                  = 1e5        // m
	mostRise                    = 1e3        // m
	mostPower                   = 1e8        // W
	mostFittings                = 10000      // of one kind
	leastOutlet, mostOutlet     = 100, 1e6   // Pa over the outside air
	leastOutside, mostOutside   = 4e4, 1.2e5 // Pa absolute
	leastDensity, mostDensity   = 0.1, 50    // kg/m³
	leastViscosity, mostViscous = 1e-6, 1e-4 // Pa s
	mostCr                      = 10
)

func checkBore(bore unit.Length) error {
	return propane.Within("bore", float64(bore), leastBore, mostBore, "m")
}

func checkLength(length unit.Length) error {
	return propane.Within("length", float64(length), 0, mostLength, "m")
}

func checkPower(power unit.GrossPower) error {
	return propane.Within("power", float64(power), 0, mostPower, "W")
}
