package solve

import "math"

const stages = 7

// The pair of Dormand and Prince: nodes, weights of the stages, weights of the
// difference between the orders 5 and 4, and those of the interpolation. The
// last row of the stages is the fifth-order solution, so that its slope serves
// the next step.
var (
	nodes  = [stages]float64{0, 1. / 5, 3. / 10, 4. / 5, 8. / 9, 1, 1}
	matrix = [stages][stages - 1]float64{
		1: {1. / 5},
		2: {3. / 40, 9. / 40},
		3: {44. / 45, -56. / 15, 32. / 9},
		4: {19372. / 6561, -25360. / 2187, 64448. / 6561, -212. / 729},
		5: {9017. / 3168, -355. / 33, 46732. / 5247, 49. / 176, -5103. / 18656},
		6: {35. / 384, 0, 500. / 1113, 125. / 192, -2187. / 6784, 11. / 84},
	}
	difference = [stages]float64{71. / 57600, 0, -71. / 16695, 71. / 1920, -17253. / 339200, 22. / 525, -1. / 40}
	curvature  = [stages]float64{-12715105075. / 11282082432, 0, 87487479700. / 32700410799,
		-10690763975. / 1880347072, 701980252875. / 199316789632, -1453857185. / 822651844, 69997945. / 29380423}
)

// attempt takes a step of the given width and tells whether it is within the
// tolerance; either way it proposes the next width.
func (in *Integrator) attempt(f Slope, t, width float64) bool {
	in.walk(f, t, width)
	f(t+width, in.after, in.k[stages-1])
	off := in.excess()
	if !(off <= math.MaxFloat64) {
		in.step = width / 10
		return false
	}
	growth := min(5, max(0.2, 0.9*math.Pow(off, -0.2)))
	proposed := width * growth
	if growth == 5 {
		proposed = max(proposed, in.step) // a short last step before an end says little
	}
	in.step = min(proposed, in.longest)
	return off <= 1
}

// walk works out the stages of a step from before and leaves the fifth-order
// solution in after.
func (in *Integrator) walk(f Slope, t, width float64) {
	in.start, in.width = t, width
	for s := 1; s < stages; s++ {
		to := in.trial
		if s == stages-1 {
			to = in.after
		}
		for i, y := range in.before {
			sum := 0.0
			for j := range s {
				sum += matrix[s][j] * in.k[j][i]
			}
			to[i] = y + width*sum
		}
		if s < stages-1 {
			f(t+nodes[s]*width, to, in.k[s])
		}
	}
}

// excess is the greatest error of the step in units of the tolerance; NaN or
// infinite when the step left the numbers.
func (in *Integrator) excess() float64 {
	worst := 0.0
	for i, a := range in.absolute {
		sum := 0.0
		for j, d := range difference {
			sum += d * in.k[j][i]
		}
		off := math.Abs(in.width*sum) / (a + in.relative*max(math.Abs(in.before[i]), math.Abs(in.after[i])))
		if !(off <= worst) {
			worst = off
		}
	}
	return worst
}

// onward makes the end of the step the start of the next.
func (in *Integrator) onward() {
	copy(in.before, in.after)
	in.k[0], in.k[stages-1] = in.k[stages-1], in.k[0]
}

// Interpolate writes the values at t, which must lie in the last step taken,
// into values. It is for [Watch.Step] and is of fourth order: as exact as the
// steps to within a small factor.
func (in *Integrator) Interpolate(t float64, values []float64) {
	share := (t - in.start) / in.width
	rest := 1 - share
	for i, y := range in.before {
		change := in.after[i] - y
		first := in.width*in.k[0][i] - change
		last := change - in.width*in.k[stages-1][i] - first
		sum := 0.0
		for j, c := range curvature {
			sum += c * in.k[j][i]
		}
		values[i] = y + share*(change+rest*(first+share*(last+rest*in.width*sum)))
	}
}
