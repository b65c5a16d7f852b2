// Package propane holds the physical properties of propane that the other
// physics packages build on: heats of combustion, what burning takes and makes,
// flammable limits, and the properties of liquid and vapour in balance with
// each other.
//
// Nearly all of it describes pure propane. What is sold as propane holds lighter
// and heavier hydrocarbons as well: published handbook pressures for commercial
// propane lie 9 to 15 % over the pure figure from 70 to 130 °F and 18 to 31 % over
// it at 0 °F, while a share of butane brings it below. So a figure for pure propane
// is too low for a hot cylinder and may be too high for a cold one. Whoever judges
// a pressure does it by [PressureBand], which errs outward on both sides: the
// ceiling of commercial propane for heat, a mixture with butane for cold. What is
// left out is how a cylinder grows poorer in propane as it empties, and what a
// mixture does to densities, heats and viscosity.
//
// Vapour at any pressure comes from the full equation of state, [VapourAt];
// [SaturationPressure] and its neighbours are the shorter equations that belong to
// it, good enough for liquid and vapour in balance and fit to be redone by hand.
//
// Beside each formula stands a constant named …Formula with the same formula as
// a text, in the syntax of Go expressions, its symbols in SI units. Re-evaluating
// the text gives the function's result; a test proves it.
package propane
