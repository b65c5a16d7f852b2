// Package locker computes what a leak does in a locker with openings: how rich the
// mixture grows, how long it takes, whether and when it clears.
//
// Vents alone do not make a leak on the cylinder's side of the regulator harmless.
// With a hole of a quarter of a square millimetre there, two vents of 40 cm² hold nine
// times the lower flammable limit and two of 200 cm² still
// three times. What protects is a seal towards the dwelling, an opening to the
// outside, no ignition source, and a closed cylinder valve. A figure from here may add a finding; it never makes a vent, a seal or a
// distance smaller.
//
// The locker is one well-mixed volume whose openings pass what package flow
// balances. Real gas lies in layers: [Near] and [Far] are how much richer than
// mixed the richest place was in experiments with helium, and [Displacement] is the
// law for two layers, which lies above them. A box of helium is a locker of propane
// upside down, so that the same code is checked against the helium.
//
// A figure for still air at one temperature is no bound. A locker a few kelvins
// warmer than the air holds mixtures that weigh as much as the air outside, and
// then nothing moves: two states are stable, the lean one that starts from clean
// air and the rich one that starts full. [Assess] takes the worst over a band of
// differences, started full. Wind can stop the exchange as well, and the wind it
// takes is told.
//
// Left out, so that the figure errs low: a leak that sprays liquid, clothes and gear
// that shelter a pocket. Left out, so that it errs high: gusts, diffusion, warmth that
// comes and goes, which all thin the gas out where the model says never.
package locker
