package pipe

import (
	"slices"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// FromSource as a segment's parent says that it begins at the source.
const FromSource = -1

// Segment is one run of a tree of pipes: from the end of its parent to its own end,
// where the next runs begin or an appliance stands.
type Segment struct {
	Parent   int // index of the run upstream, or FromSource
	Material Material
	Bore     unit.Length // of corrugated tube and hose not used
	EHD      int         // designation of corrugated tube
	Length   unit.Length
	Rise     unit.Length // end over beginning; below 0 where it falls
	Fittings Fittings    // of corrugated tube and hose not used
	Load     unit.GrossPower
}

// SegmentResult is what one run carries and loses.
type SegmentResult struct {
	Power      unit.GrossPower // of everything downstream
	Flow       unit.MassFlow   // Power over propane.GrossHeat
	Equivalent unit.Length     // Length and the fittings

	// By Darcy, in the order of the flow; Drop is friction and height together.
	Reynolds unit.Ratio
	Velocity unit.Speed // at the end
	Head     unit.GaugePressure
	Drop     unit.GaugePressure
	Outlet   unit.GaugePressure

	// By the code equation: over its own length, as a share of the sum along the
	// way, and over the length to the farthest sink (the longest-length method).
	CodeOwn     unit.GaugePressure
	CodeLongest unit.GaugePressure

	// NotKnown is nil, or a *NoTableError (a hose, corrugated tube beyond its table,
	// or anything downstream of one) or an *ExhaustedError (the load cannot pass,
	// here or upstream). The pressures are then zero and mean nothing; Power, Flow
	// and Equivalent stand.
	NotKnown error
}

// SinkResult is the pressure at one end of the tree.
type SinkResult struct {
	Segment int // the run that ends here
	Load    unit.GrossPower
	Length  unit.Length // from the source, fittings counted

	Pressure    unit.GaugePressure // by Darcy
	Darcy       unit.GaugePressure // lost since the source, with height
	CodeSum     unit.GaugePressure // by the code equation, run by run
	CodeLongest unit.GaugePressure // by the longest-length method: of the worst run on the way
	NotKnown    error              // as in SegmentResult, of the first run on the way; the pressures are then zero
}

// Worst is the largest of the three drops.
func (s SinkResult) Worst() unit.GaugePressure { return max(s.Darcy, s.CodeSum, s.CodeLongest) }

// Result is what [Network] finds.
type Result struct {
	Segments []SegmentResult // by the index of the segment
	Sinks    []SinkResult    // by rising index of their segment
	Longest  unit.Length     // from the source to the farthest sink, fittings counted
	WorstAt  int             // index into Sinks of the largest drop that is known, or -1
	Unknown  int             // how many sinks have NotKnown set
}

// Network computes a tree of runs with every load drawn at once. The order of the
// segments has no meaning. A sink is a run with a load or without a run downstream;
// the load stands at its end.
//
// By Darcy the pressure over the outside air is followed from the source down each
// run, [Darcy] and [Head] with the gas at the pressure of the run's inlet.
//
// By the code, each run counts with the load that it carries, once over its own
// length, and once over the length from the source to the farthest sink (the
// longest-length method). A sink's CodeLongest is the greatest over the runs on its
// way: if that is within the allowance, so is the sum along the way, which is never
// more. From 1.5 psi at the outlet the equation's high-pressure form is used.
//
// The equivalent lengths of the fittings are added in every method, and a hose counts
// with its length for the farthest sink though its drop is not known. Corrugated tube
// has the drop of its table in all methods, at inlets under 1.5 psi alone; its table
// allows for its own fittings.
//
// It fails with *[TreeError] when the parents make no tree and with *[SegmentError] or
// *[propane.RangeError] when a value is out of range. Time and memory are linear in
// the number of segments, for a chain as for a bush.
//
// Error size and direction: those of [Darcy], [Head] and [CodeDrop]. A gas temperature
// that is taken too low errs low on Darcy's drop, by 1 % for 3 K: warm gas is thinner
// and has to move faster.
//
// Source: 2018 International Fuel Gas Code 402.4.1 (longest-length method) and
// 402.4.2 (branch by branch; both from memory, held by the worked examples).
func Network(supply Supply, segments []Segment) (*Result, error) {
	if err := supply.check(); err != nil {
		return nil, err
	}
	if err := checkAll(segments); err != nil {
		return nil, err
	}
	order, err := upstreamLast(segments)
	if err != nil {
		return nil, err
	}
	n := newNetwork(supply, segments, order)
	n.loads()
	n.lengths()
	n.pressures()
	n.sinks()
	return &n.result, nil
}

func checkAll(segments []Segment) error {
	for i := range segments {
		if err := segments[i].check(); err != nil {
			return &SegmentError{Segment: i, Err: err}
		}
	}
	return nil
}

func (s *Segment) check() error {
	if err := checkLength(s.Length); err != nil {
		return err
	}
	if err := propane.Within("rise", float64(s.Rise), -mostRise, mostRise, "m"); err != nil {
		return err
	}
	if err := checkPower(s.Load); err != nil {
		return err
	}
	if err := s.Fittings.check(); err != nil {
		return err
	}
	if !s.smooth() {
		return nil
	}
	return checkBore(s.Bore)
}

// smooth tells whether bore and roughness tell the friction.
func (s *Segment) smooth() bool { return s.Material != Corrugated && s.Material != Hose }

// upstreamLast returns the indexes of the segments so that each stands before its
// parent, without recursion.
func upstreamLast(segments []Segment) ([]int, error) {
	waiting := make([]int, len(segments))
	for i := range segments {
		parent := segments[i].Parent
		if parent == FromSource {
			continue
		}
		if parent < 0 || parent >= len(segments) {
			return nil, &TreeError{Segment: i, Reason: "its parent is no segment"}
		}
		waiting[parent]++
	}
	order := make([]int, 0, len(segments))
	for i, children := range waiting {
		if children == 0 {
			order = append(order, i)
		}
	}
	for next := 0; next < len(order); next++ {
		parent := segments[order[next]].Parent
		if parent == FromSource {
			continue
		}
		if waiting[parent]--; waiting[parent] == 0 {
			order = append(order, parent)
		}
	}
	if len(order) == len(segments) {
		return order, nil
	}
	// What is left has children that wait, so that it stands in a ring: what hangs on
	// a ring is in the order, and nothing is upstream of one.
	left := slices.IndexFunc(waiting, func(children int) bool { return children > 0 })
	return nil, &TreeError{Segment: left, Reason: "it stands in a ring"}
}
