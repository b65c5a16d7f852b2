// Package flow computes how gas and air change places through openings: what
// goes out and what comes in when the inside of a box or a room holds another
// density than the outside, when a source pushes from within, and when wind
// presses on the openings. The gas, the outside air, the openings and the source
// are inputs: helium that rises and propane that sinks run through the same code.
//
// The inside is one mixture of one density. Each opening passes what the pressure
// across it drives (Bernoulli), outwards with the density inside, inwards with that
// outside; the pressure inside settles so that the volumes balance. Whoever knows
// of layers uses the densities of the layers.
//
// Left out, and to which side: the momentum of a jet that stirs or sweeps an
// opening (either side); gusts, which push gas and air in and out of every opening
// (a figure for still air then errs to too little exchange); the head of a drain
// pipe that goes down and fills with heavy gas, and of any chimney (too little
// exchange). Wind is an input at each opening: steady wind may help the exchange
// or stop it, and nobody knows beforehand which.
package flow
