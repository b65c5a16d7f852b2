// Package check is how a question is put to a layout and answered honestly.
//
// A check is a function over a Sheet. It takes every value through the sheet
// (Measure, Read, List, Fig), every limit through the sheet (Limit, Words, Duty)
// and can end only in one of the rulings that this package makes. The sheet is
// sticky: once a value is missing or a code is silent, nothing more is computed
// and whatever the function returns is thrown away. So the theorem of SAFETY.md
// holds by construction: a finding is within its limit only when every input it
// read was stated, every limit came from a book that says so, and every list it
// ranged over was surveyed complete.
package check
