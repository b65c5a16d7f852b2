// Package source turns the bytes of one JSON file into a tree of nodes that
// know where they were written, tells what is wrong with bytes that are not
// JSON, and edits a file by JSON Pointer without touching the rest of it.
//
// It knows the grammar of JSON (RFC 8259) and of JSON Pointer (RFC 6901) and
// nothing about gas, air or dwellings. A file is all or nothing: [Parse] gives
// either a whole tree or exactly one [Fault], never a part of a tree, so that
// nothing downstream can judge half a file.
//
// A [Place] is kept for every value as two byte offsets; lines and columns are
// worked out only when somebody asks for them. Columns count code points from
// 1, and ends are exclusive.
package source
