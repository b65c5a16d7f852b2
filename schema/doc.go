// Package schema is the contract of lowvent, in one page. It holds no code of its
// own; the folders below do, each importing only those to its left:
//
//	unit ← source ← layout, code ← report ← check
//
// unit has the quantities: named types in SI, exact parsing of what people write,
// printing in both systems. source turns bytes into a tree of nodes that know
// their place. layout is the typed contract of a layout file, where a key that
// was left out is not known and an empty list says "none". code holds limits of
// published codes as data with their citations. report is what a check of a file
// found, for people and machines. check puts questions to a layout by way of a
// sheet that can't answer from what nobody stated.
//
// The published JSON Schemas stand beside the types that they describe:
// layout/layout.schema.json, code/code.schema.json, report/report.schema.json.
//
// gas and vent hold the questions and the physics and are handed to check.Run as
// an argument, so nothing here knows which checks there are; cmd/lowvent joins
// them. A test in this package holds the direction of every import.
package schema
