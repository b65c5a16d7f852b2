// Package unit holds the physical quantities of lowvent: how they are typed,
// read, printed and compared.
//
// Every quantity inside the program is in SI and has a type of its own, so
// that a gauge pressure can't be handed over as an absolute one, a net heat
// input as a gross one, or a temperature difference as a temperature. The
// types are plain float64 beneath: a formula converts to float64 once, uses
// the symbols of its source, and converts back once. A test of this package
// forbids products of two unit types, and bare numbers beside one, anywhere
// else in the module.
//
// Texts such as "5/8 in", "4 ft 6 in" or "1.32 m ± 2 cm" are read by [Parse]
// as exact rationals and rounded once, to the nearest float64. That is why
// "24 in" and "609.6 mm" are the same number and why no comparison in lowvent
// needs an allowance. A tolerance or a range becomes the band of a [Value].
//
// Spelling is strict, one spelling a unit, because "mW" and "MW" differ by a
// factor of a billion; every refusal lists the accepted spellings, shows an
// example and, where there is one, the text that was probably meant.
//
// [Text] prints in both systems of units. [TextApart] prints a pair with as
// many digits as the difference needs. [WriteAtLeast] and [WriteAtMost] write
// a size back in the reader's own unit, rounded to the demanding side.
//
// [Date] and [ClockTime] are read here as well, since a layout writes them as
// texts too. Nothing in this package reads a clock, a file or the environment.
package unit
