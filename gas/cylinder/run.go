package cylinder

import (
	"math"

	"lowvent.example/gas/propane"
	"lowvent.example/gas/solve"
	"lowvent.example/schema/unit"
)

// The tolerances of a step and its greatest length in s, with and without a
// swing of the air. The longest step keeps the coldest of a night and a draw
// that only just reaches the least temperature from being passed over.
const (
	relative               = 1e-10
	massOff, heatOff, TOff = 1e-9, 1e-2, 1e-8 // kg, J, K
	longest, longestSteady = 1800.0, 21600.0
	mostSteps, mostTurns   = 100_000, 1_000 // in one stretch
)

// Run follows a supply from midnight of the first day until a draw can no longer
// be fed or the horizon is reached.
//
// In each vessel liquid and vapour stand in balance at one temperature, the metal
// at the same, and take up heat from the air through the wetted wall; vapour
// leaves with its enthalpy, and the vapour that fills the room of the liquid is
// counted. Once the least temperature is met in a draw the supply is taken as
// ended, though a smaller draw, or a warmer hour, might still be fed.
//
// Valid for the ranges named at [Supply] and −45 to +70 °C, else
// [*propane.RangeError]. A [*solve.StepError] says that a step could not be
// taken; none is known that leads to it.
//
// Error size: mass and energy close to 1e-6. The wall coefficient is known to a
// factor of two, which moves the least temperature met in proportion, and the pattern
// of use to tens of percent. What is left out makes the time shorter: frost, humid
// air, a nearly closed locker that cools with its cylinders, layers in the liquid (the
// surface, which makes the pressure, is colder than the rest), a pressure drop
// between vessels; heat through the wall above the liquid and the last vapour drawn
// from a vessel without liquid make it longer. The end Emptied leaves
// that vapour, one per cent of a full vessel in frost and four at 20 °C. For a gas that is a mixture
// the caller gives its own least temperature, and the lighter part, which goes
// first, leaves a rest that feeds worse than the mixture did.
//
// Source: first law of an open vessel; [propane.LatentHeat] and its neighbours.
func Run(s Supply) (Outcome, error) {
	r, err := newRun(s)
	if err != nil {
		return Outcome{}, err
	}
	if err := r.follow(); err != nil {
		return Outcome{}, err
	}
	return r.outcome(), nil
}

// run is a run under way.
type run struct {
	Supply
	*bank
	in     *solve.Integrator
	parts  []stretch
	watch  [2]solve.Watch // with the valves shut, and open
	t      float64
	y      []float64
	start  []float64
	at     []float64 // for a point of the series
	points int       // of the series so far
	ended  bool
	out    Outcome
}

func newRun(s Supply) (*run, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	b, y, err := newBank(&s)
	if err != nil {
		return nil, err
	}
	absolute := make([]float64, len(y))
	for i := range b.tanks {
		absolute[2*i], absolute[2*i+1] = massOff, TOff
	}
	absolute[len(y)-2], absolute[len(y)-1] = heatOff, heatOff
	step := longest
	if s.Air.Swing == 0 {
		step = longestSteady
	}
	in, err := solve.NewIntegrator(relative, absolute, step, mostSteps)
	if err != nil {
		return nil, err
	}
	r := &run{Supply: s, bank: b, in: in, parts: stretches(s.Spells), y: y, start: append([]float64(nil), y...), at: make([]float64, len(y))}
	r.watch = [2]solve.Watch{{Step: r.step}, {Step: r.step, Event: b.event}}
	if s.Interval > 0 {
		r.out.Series = make([]Sample, 0, int(float64(s.Horizon)/float64(s.Interval))+2)
	}
	r.out.Lowest = r.sample(0, y)
	r.series(0)
	return r, nil
}

// follow goes from stretch to stretch.
func (r *run) follow() error {
	horizon := float64(r.Horizon)
	for days := 0.0; !r.ended && r.t < horizon; days++ {
		for _, part := range r.parts {
			end := min(days*day+part.end, horizon)
			if r.ended || r.t >= end { // ended, or shorter than the rounding of t
				continue
			}
			if err := r.stretch(end, part.flow); err != nil {
				return err
			}
		}
	}
	return nil
}

// stretch follows one draw to its end, or to that of the supply.
func (r *run) stretch(end, flow float64) (err error) {
	r.rest()
	watch := r.watch[0]
	if flow > 0 {
		r.flow = flow
		r.engage(r.y)
		watch = r.watch[1]
	}
	for turns := 0; !r.ended && r.t < end; turns++ {
		var stopped bool
		if r.t, stopped, err = r.in.Advance(r.slope, r.t, end, r.y, watch); err != nil {
			return err
		}
		if stopped {
			r.turn()
		}
		if turns > mostTurns {
			return &solve.StepError{T: r.t, Reason: "the valves change without end"}
		}
	}
	return nil
}

// turn does what the bank says has come.
func (r *run) turn() {
	r.lowest(r.t, r.y)
	switch _, what, i := r.next(r.t, r.y); what {
	case shut:
		r.tanks[i].gives = false
		if i == r.feeding {
			r.refeed()
		}
	case opens:
		r.tanks[i].gives = true
		r.level(r.t, r.y)
	case dry:
		r.giveOut(i, Emptied)
		r.goOn(Emptied)
	case cold:
		r.giveOut(i, Chilled)
		for k := range r.tanks { // the others are colder still
			if !r.Changeover && !r.tanks[k].spent {
				r.giveOut(k, Chilled)
			}
		}
		r.goOn(Chilled)
	}
}

// refeed names another tank that gives as the feeding one.
func (r *run) refeed() {
	for k := range r.tanks {
		if r.tanks[k].gives {
			r.feeding = k
			return
		}
	}
}

// giveOut notes that the vessels of a tank have given out.
func (r *run) giveOut(i int, end End) {
	k := &r.tanks[i]
	k.spent = true
	for _, v := range k.members {
		r.out.Changes = append(r.out.Changes, Change{unit.Duration(r.t), v, end, unit.PropaneMass(r.y[2*i])})
	}
}

// goOn goes on with the vessels that have not given out, or ends the run.
func (r *run) goOn(end End) {
	if !r.engage(r.y) {
		r.ended, r.out.End = true, end
	}
}

// step looks at the end of each step of the integrator.
func (r *run) step(t float64, y []float64) {
	r.lowest(t, y)
	r.series(t)
}

// lowest notes the coldest; its pressure is worked out at the end.
func (r *run) lowest(t float64, y []float64) {
	if T := y[2*r.feeder(y)+1]; T < float64(r.out.Lowest.Temperature) {
		r.out.Lowest = Sample{Time: unit.Duration(t), Propane: unit.PropaneMass(r.mass(y)), Temperature: unit.Temperature(T)}
	}
}

// series adds the points that have come up to t.
func (r *run) series(t float64) {
	interval := float64(r.Interval)
	for interval > 0 && float64(r.points)*interval <= t {
		at := float64(r.points) * interval
		if at == 0 {
			copy(r.at, r.y)
		} else {
			r.in.Interpolate(at, r.at)
		}
		r.out.Series = append(r.out.Series, r.sample(at, r.at))
		r.points++
	}
}

// sample is the state at t as a caller sees it.
func (r *run) sample(t float64, y []float64) Sample {
	return pressed(Sample{Time: unit.Duration(t), Propane: unit.PropaneMass(r.mass(y)), Temperature: unit.Temperature(y[2*r.feeder(y)+1])})
}

// pressed adds the pressure over the liquid. The rounding of a step can leave the
// range of the properties by a hair, at its very ends.
func pressed(s Sample) Sample {
	s.Temperature = min(max(s.Temperature, propane.LeastTemperature), propane.GreatestTemperature)
	s.Pressure, _ = propane.SaturationPressure(s.Temperature) // which cannot fail in its range
	return s
}

// outcome puts the result together.
func (r *run) outcome() Outcome {
	out := r.out
	out.Time, out.Lowest = unit.Duration(r.t), pressed(out.Lowest)
	out.Left = unit.PropaneMass(r.mass(r.y))
	out.Used = unit.PropaneMass(r.mass(r.start) - r.mass(r.y))
	if n := len(out.Series); n > 0 && out.Series[n-1].Time < out.Time {
		out.Series = append(out.Series, r.sample(r.t, r.y))
	}
	due := r.t
	if r.Changeover && len(out.Changes) > 0 {
		due = float64(out.Changes[0].Time)
	}
	out.Days, out.Spare = int(math.Floor(due/day)), unit.Duration(r.t-due)
	out.SpellsFed, out.SpellsNotFed = r.spells()
	return out
}

// spells counts those that began before the horizon by whether they were fed to
// their end, or to the horizon.
func (r *run) spells() (fed, notFed int) {
	for _, s := range r.Spells {
		for t := float64(s.Start); t < float64(r.Horizon); t += day {
			if !r.ended || float64(s.Draw) == 0 || t+float64(s.Lasts) <= r.t {
				fed++
			} else {
				notFed++
			}
		}
	}
	return fed, notFed
}
