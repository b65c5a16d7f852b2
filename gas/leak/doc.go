// Package leak computes how much propane comes out of a hole, an unlit burner or
// a flame guard that takes its time, and what a pressure test can and cannot see.
//
// The hole is what nobody knows. Its size comes from published tables of leak
// openings, and the flow follows the size: a figure from here says what such a
// hole would do, not what this installation does. It may add a finding. It never
// makes a vent, a seal or a distance smaller.
//
// Vapour is taken with the density of the real gas: an ideal gas lets 9 % too
// little out of a cylinder at 20 °C, 14 % at 41 °C, 19 % at 55 °C. Left out, all of
// it to the side of a figure too high: droplets that form as the vapour expands,
// the length and roughness of a real crack, and the fall of pressure as a cylinder
// chills. Left out to the other side: what is sold as propane can stand at up to
// 1.18 times the pressure of pure propane (propane.CeilingPressure) and leaks up to
// as much more.
package leak
