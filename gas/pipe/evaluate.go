package pipe

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// network is one run of [Network].
type network struct {
	supply   Supply
	segments []Segment
	order    []int // each before its parent
	states   []state
	result   Result

	form   form    // of the code equation
	high   bool    // it is the high-pressure form
	source float64 // Pa absolute at the outlet of the supply
}

// state is what a segment's end inherits from the way to it. The code drops are in
// the unit of the form in use: Pa, or Pa² at 1.5 psi and over.
type state struct {
	length     float64 // m from the source, fittings counted
	pressure   float64 // Pa over the outside air, by Darcy
	sum, worst float64 // code drop on the way; worst CodeLongest on the way
	goesOn     bool    // has a segment downstream
}

func newNetwork(supply Supply, segments []Segment, order []int) *network {
	n := &network{
		supply: supply, segments: segments, order: order, states: make([]state, len(segments)),
		form: lowForm(supply.Code), high: supply.Outlet >= HighPressureFrom,
		source: float64(supply.Outlet) + float64(supply.Atmosphere),
	}
	if n.high {
		n.form = highForm(supply.Code)
	}
	n.result.Segments = make([]SegmentResult, len(segments))
	return n
}

// loads adds the loads up, from the ends to the source.
func (n *network) loads() {
	for _, i := range n.order {
		r := &n.result.Segments[i]
		r.Power += n.segments[i].Load
		r.Flow = unit.MassFlow(float64(r.Power) / float64(propane.GrossHeat))
		if parent := n.segments[i].Parent; parent != FromSource {
			n.result.Segments[parent].Power += r.Power
			n.states[parent].goesOn = true
		}
	}
}

// lengths follows the lengths from the source and finds the farthest sink.
func (n *network) lengths() {
	n.result.Longest = 0
	for k := len(n.order) - 1; k >= 0; k-- {
		i := n.order[k]
		s, r := &n.segments[i], &n.result.Segments[i]
		r.Equivalent = s.Length
		if s.smooth() {
			r.Equivalent += unit.Length(s.Fittings.bores() * float64(s.Bore))
		}
		n.states[i].length = float64(r.Equivalent)
		if s.Parent != FromSource {
			n.states[i].length += n.states[s.Parent].length
		}
		n.result.Longest = max(n.result.Longest, unit.Length(n.states[i].length))
	}
}

// pressures follows the pressures from the source.
func (n *network) pressures() {
	for k := len(n.order) - 1; k >= 0; k-- {
		i := n.order[k]
		before := state{pressure: float64(n.supply.Outlet)}
		if parent := n.segments[i].Parent; parent != FromSource {
			before = n.states[parent]
			n.result.Segments[i].NotKnown = n.result.Segments[parent].NotKnown
		}
		if n.result.Segments[i].NotKnown == nil {
			n.result.Segments[i].NotKnown = n.segment(i, before)
		}
	}
}

// segment fills in what one run loses, given the state at its inlet.
func (n *network) segment(i int, before state) error {
	s, r, after := &n.segments[i], &n.result.Segments[i], &n.states[i]
	slope, err := n.slope(i)
	if err != nil {
		return err
	}
	loss, err := n.lose(i, before, slope)
	if err != nil {
		return err
	}
	sum, longest := before.sum+slope*float64(r.Equivalent), slope*float64(n.result.Longest)
	if n.high && !(n.source*n.source > max(sum, longest)) {
		return &ExhaustedError{Segment: i, Inlet: unit.AbsolutePressure(n.source), Method: codeMethod}
	}
	density := float64(n.supply.Gas.Density) / n.source * (float64(n.supply.Atmosphere) + before.pressure - float64(loss.Drop)/2)
	r.Head = unit.GaugePressure((density - float64(n.supply.Air)) * gravity * float64(s.Rise))
	r.Reynolds, r.Velocity, r.Drop = loss.Reynolds, loss.Velocity, loss.Drop+r.Head
	r.CodeOwn = n.drop(sum) - n.drop(before.sum)
	r.CodeLongest = n.drop(longest)
	after.pressure, after.sum, after.worst = before.pressure-float64(r.Drop), sum, max(before.worst, float64(r.CodeLongest))
	r.Outlet = unit.GaugePressure(after.pressure)
	return nil
}

// slope is the code's drop per metre in one run, in Pa or Pa².
func (n *network) slope(i int) (float64, error) {
	s, power := &n.segments[i], n.result.Segments[i].Power
	reason := ""
	switch {
	case s.smooth():
		return n.form.slopeOf(n.supply.Code.flow(power), float64(s.Bore)), nil
	case s.Material == Hose:
		reason = "its maker's table tells the drop"
	case n.high:
		reason = "the table here is for 11 in w.c."
	case power > 0:
		var slope float64
		if slope, reason = corrugatedSlope(s.EHD, float64(power)); reason == "" {
			return slope, nil
		}
	default:
		return 0, nil
	}
	return 0, &NoTableError{Segment: i, What: string(s.Material), Reason: reason}
}

// lose finds Darcy's loss in one run; in corrugated tube it is that of the table.
func (n *network) lose(i int, before state, slope float64) (Loss, error) {
	s, r := &n.segments[i], &n.result.Segments[i]
	inlet := float64(n.supply.Atmosphere) + before.pressure
	if !s.smooth() {
		drop := slope * float64(r.Equivalent)
		if !(drop < inlet) {
			return Loss{}, &ExhaustedError{Segment: i, Inlet: unit.AbsolutePressure(max(0, inlet)), Method: tableMethod}
		}
		return Loss{Drop: unit.GaugePressure(drop)}, nil
	}
	rough, known := RoughnessOf(s.Material)
	if !known {
		return Loss{}, &NoTableError{Segment: i, What: string(s.Material), Reason: "the material is not listed here and has no roughness"}
	}
	here := stream{p: inlet, perDensity: n.source / float64(n.supply.Gas.Density), viscosity: float64(n.supply.Gas.Viscosity)}
	if inlet > 0 {
		if loss, ok := here.lose(float64(r.Flow), float64(s.Bore), float64(rough.Height), float64(r.Equivalent)); ok {
			return loss, nil
		}
	}
	return Loss{}, &ExhaustedError{Segment: i, Inlet: unit.AbsolutePressure(max(0, inlet)), Method: darcyMethod}
}

// drop turns a code drop into Pa: itself, or p1 − √(p1² − drop) at high pressure,
// written without the difference of near equals.
func (n *network) drop(drop float64) unit.GaugePressure {
	if !n.high {
		return unit.GaugePressure(drop)
	}
	return unit.GaugePressure(drop / (n.source + math.Sqrt(n.source*n.source-drop)))
}

// sinks gathers the ends.
func (n *network) sinks() {
	n.result.WorstAt = -1
	count := 0
	for i := range n.segments {
		if n.isSink(i) {
			count++
		}
	}
	n.result.Sinks = make([]SinkResult, 0, count)
	for i := range n.segments {
		if n.isSink(i) {
			n.sink(i)
		}
	}
}

func (n *network) isSink(i int) bool { return !n.states[i].goesOn || n.segments[i].Load > 0 }

func (n *network) sink(i int) {
	r, at := &n.result.Segments[i], &n.states[i]
	s := SinkResult{Segment: i, Load: n.segments[i].Load, Length: unit.Length(at.length), NotKnown: r.NotKnown}
	if s.NotKnown == nil {
		s.Pressure, s.Darcy = unit.GaugePressure(at.pressure), n.supply.Outlet-unit.GaugePressure(at.pressure)
		s.CodeSum, s.CodeLongest = n.drop(at.sum), unit.GaugePressure(at.worst)
		if n.result.WorstAt < 0 || s.worseThan(n.result.Sinks[n.result.WorstAt]) {
			n.result.WorstAt = len(n.result.Sinks)
		}
	} else {
		n.result.Unknown++
	}
	n.result.Sinks = append(n.result.Sinks, s)
}

// worseThan compares the largest drop, then the sum by the code, then Darcy's.
func (s SinkResult) worseThan(o SinkResult) bool {
	if s.Worst() != o.Worst() {
		return s.Worst() > o.Worst()
	}
	if s.CodeSum != o.CodeSum {
		return s.CodeSum > o.CodeSum
	}
	return s.Darcy > o.Darcy
}
