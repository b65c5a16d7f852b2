package propane

import "math"

// viscosity is the correlation of Vogel, Küchenmeister, Bich and Laesecke, J.
// Phys. Chem. Ref. Data 27 (1998) 947, in Pa s, at T in K and the molar density
// rho in mol/m³, with the coefficients of the fluid file of CoolProp:
//
//	η = η₀(T)·[1 + B_η(T)·ρ] + Δη(T, ρ)
func viscosity(T, rho float64) float64 {
	star := T / 263.88 // T over ε/k
	return diluteViscosity(T, star)*(1+viscosityVirial(star)*rho) + denseViscosity(T, rho)
}

// sigma is the length scale of the molecule in nm.
const sigma = 0.49748

// diluteViscosity is that of the gas at no density, in Pa s.
func diluteViscosity(T, star float64) float64 {
	x := math.Log(star)
	section := math.Exp(0.25104574 - 0.47271238*x + 0.060836515*x*x*x)
	return 0.021357e-6 * math.Sqrt(44.0956*T) / (sigma * sigma * section)
}

// viscosityVirial is the initial density dependence after Rainwater and Friend,
// in m³/mol.
func viscosityVirial(star float64) float64 {
	sum := 0.0
	for i, b := range [7]float64{-19.572881, 219.73999, -1015.3226, 2471.01251, -3375.1717, 2491.6597, -787.26086} {
		sum += b * math.Pow(star, -0.25*float64(i))
	}
	sum += 14.085455*math.Pow(star, -2.5) - 0.34664158*math.Pow(star, -5.5)
	return 6.02214129e23 * (sigma * sigma * sigma * 1e-27) * sum
}

// denseViscosity is what a dense gas and the liquid add, in Pa s: a double
// polynomial and a free-volume term.
func denseViscosity(T, rho float64) float64 {
	delta, tau := rho/5000, T/369.825
	sum, power := 0.0, delta
	for _, e := range [4][3]float64{
		{35.9873030195, -180.512188564, 87.7124888223},
		{-105.773052525, 205.319740877, -129.21093261},
		{58.9491587759, -129.7400331, 76.6280419971},
		{-9.59407868475, 21.0726986598, -14.3971968187},
	} {
		power *= delta
		sum += power * (e[0] + (e[1]+e[2]/tau)/tau)
	}
	packed := 2.50053938863 * (1 + 0.860516059264*math.Sqrt(tau))
	return 1e-6 * (sum + 1616.88405374*(delta/(packed-delta)-delta/packed))
}
