package propane

import "math"

// gasConstant is R in J/(mol K) as the equation of state takes it.
const gasConstant = 8.314472

// criticalMolarDensity is in mol/m³.
const criticalMolarDensity = 5000

// powerTerm is n·δ^d·τ^t·exp(−δ^l), without the exponential where l is 0.
type powerTerm struct {
	n, t float64
	d, l int
}

// bellTerm is n·δ^d·τ^t·exp[−η(δ−ε)² − β(τ−γ)²].
type bellTerm struct {
	n, t                      float64
	d                         int
	eta, epsilon, beta, gamma float64
}

// The residual part of the equation of state of Lemmon, McLinden and Wagner,
// J. Chem. Eng. Data 54 (2009) 3141, with the coefficients of the fluid file of
// the general-purpose property library CoolProp.
func powerTerms() [11]powerTerm {
	return [11]powerTerm{
		{0.042910051, 1, 4, 0},
		{1.7313671, 0.33, 1, 0},
		{-2.4516524, 0.8, 1, 0},
		{0.34157466, 0.43, 2, 0},
		{-0.46047898, 0.9, 2, 0},
		{-0.66847295, 2.46, 1, 1},
		{0.20889705, 2.09, 3, 1},
		{0.19421381, 0.88, 6, 1},
		{-0.22917851, 1.09, 6, 1},
		{-0.60405866, 3.25, 2, 2},
		{0.066680654, 4.62, 3, 2},
	}
}

func bellTerms() [7]bellTerm {
	return [7]bellTerm{
		{0.017534618, 0.76, 1, 0.963, 1.283, 2.33, 0.684},
		{0.33874242, 2.5, 1, 1.977, 0.6936, 3.47, 0.829},
		{0.22228777, 2.75, 1, 1.917, 0.788, 3.15, 1.419},
		{-0.23219062, 3.05, 2, 2.307, 0.473, 3.19, 0.817},
		{-0.09220694, 2.55, 2, 2.546, 0.8577, 0.92, 1.5},
		{-0.47575718, 8.4, 4, 3.28, 0.271, 18.8, 1.426},
		{-0.017486824, 6.75, 1, 14.6, 0.948, 547.8, 1.093},
	}
}

// idealHeatCapacity is c_v of the ideal gas over R: the Planck–Einstein terms of
// the same equation of state. The fluid file gives their temperatures over the
// critical temperature in seven digits; the authors' whole kelvins meet their
// check values to the last digit.
func idealHeatCapacity(T float64) float64 {
	sum := 3.0
	for _, k := range [4]struct{ n, theta float64 }{
		{3.043, 393}, {5.874, 1237}, {9.337, 1984}, {7.922, 4351},
	} {
		x := k.theta / T
		e := math.Exp(-x)
		sum += k.n * x * x * e / ((1 - e) * (1 - e))
	}
	return sum
}

// isotherm is the equation of state at one temperature. It holds what depends on
// temperature alone, so that a search for the density works none of it out twice.
type isotherm struct {
	T, tau float64
	power  [11]float64 // n·τ^t
	bell   [7]float64  // n·τ^t·exp[−β(τ−γ)²]
}

func isothermAt(T float64) (s isotherm) {
	s.T, s.tau = T, criticalTemperature/T
	for i, k := range powerTerms() {
		s.power[i] = k.n * math.Pow(s.tau, k.t)
	}
	for i, k := range bellTerms() {
		s.bell[i] = k.n * math.Pow(s.tau, k.t) * math.Exp(-k.beta*(s.tau-k.gamma)*(s.tau-k.gamma))
	}
	return s
}

// residual holds derivatives of the residual Helmholtz energy α, each times its
// variables: δα_δ, δ²α_δδ, δτα_δτ and τ²α_ττ.
type residual struct{ d, dd, dt, tt float64 }

// add counts in a term of value f whose logarithm has the slopes d in ln δ and t
// in ln τ, and whose slopes change by d2 and t2.
func (r *residual) add(f, d, d2, t, t2 float64) {
	r.d += f * d
	r.dd += f * (d*d + d2 - d)
	r.dt += f * d * t
	r.tt += f * (t*t + t2 - t)
}

// at works out the residual part at the molar density rho in mol/m³.
func (s *isotherm) at(rho float64) (r residual) {
	delta := rho / criticalMolarDensity
	var powers [7]float64
	powers[0] = 1
	for i := range powers[1:] {
		powers[i+1] = powers[i] * delta
	}
	decay := [3]float64{1, math.Exp(-delta), math.Exp(-delta * delta)}
	for i, k := range powerTerms() {
		l, fade := float64(k.l), 0.0
		if k.l > 0 {
			fade = l * powers[k.l]
		}
		r.add(s.power[i]*powers[k.d]*decay[k.l], float64(k.d)-fade, -l*fade, k.t, 0)
	}
	for i, k := range bellTerms() {
		off := delta - k.epsilon
		f := s.bell[i] * powers[k.d] * math.Exp(-k.eta*off*off)
		r.add(f,
			float64(k.d)-2*k.eta*delta*off, -2*k.eta*delta*(2*delta-k.epsilon),
			k.t-2*k.beta*s.tau*(s.tau-k.gamma), -2*k.beta*s.tau*(2*s.tau-k.gamma))
	}
	return r
}

// pressure returns p in Pa and dp/dρ in J/mol at the molar density rho.
func (s *isotherm) pressure(rho float64) (p, slope float64) {
	r := s.at(rho)
	return rho * gasConstant * s.T * (1 + r.d), gasConstant * s.T * (1 + 2*r.d + r.dd)
}

// heat returns c_v and c_p over R from the residual part.
func (s *isotherm) heat(r residual) (cv, cp float64) {
	cv = idealHeatCapacity(s.T) - r.tt
	push := 1 + r.d - r.dt
	return cv, cv + push*push/(1+2*r.d+r.dd)
}
