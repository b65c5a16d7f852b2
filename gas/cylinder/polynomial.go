package cylinder

import "math"

// terms is how many coefficients a polynomial has. The nearest thing that is not
// smooth is the critical point, so that 18 follow the properties to 1e-7.
const terms = 18

// polynomial is Σ c[i]·xⁱ in the reduced temperature x of [reduced].
type polynomial [terms]float64

func (p *polynomial) at(x float64) float64 {
	sum := 0.0
	for i := terms - 1; i >= 0; i-- {
		sum = sum*x + p[i]
	}
	return sum
}

// slope is the derivative by x.
func (p *polynomial) slope() (d polynomial) {
	for i := 1; i < terms; i++ {
		d[i-1] = float64(i) * p[i]
	}
	return d
}

// integral is the one that is 0 at x = 0; its highest term is dropped, which is
// below rounding for a property.
func (p *polynomial) integral() (d polynomial) {
	for i := 1; i < terms; i++ {
		d[i] = p[i-1] / float64(i)
	}
	return d
}

// minus is p − q.
func (p *polynomial) minus(q *polynomial) (d polynomial) {
	for i := range d {
		d[i] = p[i] - q[i]
	}
	return d
}

// places are the zeros of the Chebyshev polynomial, where a polynomial through
// given values stays close to them in between.
func places() (x [terms]float64) {
	for j := range x {
		x[j] = math.Cos(math.Pi * (float64(j) + 0.5) / terms)
	}
	return x
}

// through is the polynomial with the given values at [places], by the Chebyshev
// sum, whose polynomials follow T₀ = 1, T₁ = x, Tₖ₊₁ = 2x·Tₖ − Tₖ₋₁.
func through(values *[terms]float64) (p polynomial) {
	before, now := polynomial{}, polynomial{1}
	for k := range terms {
		weight := 0.0
		for j, v := range values {
			weight += v * math.Cos(math.Pi*float64(k)*(float64(j)+0.5)/terms)
		}
		weight *= 2.0 / terms
		if k == 0 {
			weight /= 2
		}
		next := polynomial{}
		for i := range terms {
			p[i] += weight * now[i]
			if i+1 < terms {
				next[i+1] = 2 * now[i]
			}
			next[i] -= before[i]
		}
		if k == 0 {
			next = polynomial{0, 1}
		}
		before, now = now, next
	}
	return p
}
