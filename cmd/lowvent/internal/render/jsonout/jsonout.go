// Package jsonout writes a report for machines, in the form of schema/report.
package jsonout

import (
	"encoding/json"
	"io"

	"lowvent.example/schema/report"
)

// Write writes the report of a run as indented JSON that ends in a line break.
// Characters stand as they are, without the escapes that HTML would need. The
// error is that of the writer, or tells of a number that JSON can't hold.
func Write(w io.Writer, run *report.Run) error { return Encode(w, run) }

// Encode writes any of the forms of schema/report in the same way.
func Encode(w io.Writer, of any) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(of)
}
