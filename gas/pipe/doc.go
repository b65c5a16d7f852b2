// Package pipe computes the pressure lost in pipe and tube that carries propane
// vapour: through one run, and through a tree of runs from one regulator to every
// appliance, with the appliances' input flowing all at once.
//
// It does so by two methods that know nothing of each other: the sizing equation
// of the fuel gas codes, with the longest-length method and as a sum along the
// way, and the friction law of Darcy and Weisbach with the friction factor of
// Colebrook and White, the gas's own density and viscosity, and the height that
// the line climbs. Corrugated tube follows neither and is known from its published
// table alone; for hose there is no table here, and its drop is not known.
//
// To which side it errs: over the published tables for 11 in w.c., Darcy's drop is
// 65 to 105 % of the code's, mostly three quarters; for steel at 10 psi 95 to 115 %.
// Neither method bounds the other, so a line is judged by the worse of both, never by
// the kinder one. Fittings are always added as lengths of pipe, also under the code
// equation, whose tables allow for some (common practice, no source here): that errs
// high, the cautious side.
//
// The code equation knows the air at sea level alone. On a height of 2000 m the gas is
// thinner by a fifth and the same load loses about a quarter more, which Darcy shows
// and the code does not.
//
// Left out: burrs, dents, solder and dirt in the bore, water or oil in it, gas valves
// and filters of appliances, the regulator's own droop, and the pulse of a burner that
// starts. All of them make the pressure at an appliance lower than reckoned. A line
// counts as having one temperature.
package pipe
