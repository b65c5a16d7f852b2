// Package layout is the contract of the file in which a builder describes one
// dwelling's propane installation, and the strict reader of that file.
//
// [Load] turns the bytes of a file into a [Layout], or gives every fault of
// its structure at once and no layout: there is no such thing as a half-read
// dwelling. Values are in SI and in the types of schema/unit. Each is held in
// a [Given], a [Measure] or a [Words], from which it leaves only together with
// the answer to whether the file states it; a key that was left out is not
// known, while an empty [Section] states that there is none.
//
// Every value, written or not, has a [Spot]: its JSON Pointer and its place in
// the file. With [Describe] the pointer leads to the published schema's own
// words on what to measure and how, so that text exists once.
//
// The Go types, the published JSON Schema (layout.schema.json) and the reader
// are each written by hand. Tests hold that they agree, in names, types,
// required keys, choices and in what they accept; the schema, compiled from
// its compact twin, is also the second opinion on every file that the reader
// accepts.
//
// One frame serves all coordinates: the origin is the floor at the front left
// corner of the main living space, x runs from front to rear, y from left to
// right and z up.
package layout
