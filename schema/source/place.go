package source

import (
	"strconv"
	"strings"
)

// Span is a half-open range of byte offsets: Start is in it, End is not.
type Span struct{ Start, End int32 }

// Len is the number of bytes in the span.
func (s Span) Len() int { return int(s.End - s.Start) }

// Place is somewhere in a file: a range of bytes, and the JSON Pointer of the
// value that stands there or that the place belongs to. The zero Place is
// nowhere.
type Place struct {
	File    *File
	Span    Span
	Pointer string
}

// IsZero reports whether the place is nowhere.
func (p Place) IsZero() bool { return p.File == nil }

// located reports whether the place can be given as a line and a column.
func (p Place) located() bool { return p.File != nil && !p.File.unread }

// Line is the line of the first byte, counted from 1; 0 when the place is
// nowhere or its file could not be read.
func (p Place) Line() int { line, _ := p.position(p.Span.Start); return line }

// Column is the column of the first byte in code points, counted from 1; 0
// where Line is 0.
func (p Place) Column() int { _, column := p.position(p.Span.Start); return column }

// EndLine is the line of the first byte after the place, counted from 1; 0
// where Line is 0.
func (p Place) EndLine() int { line, _ := p.position(p.Span.End); return line }

// EndColumn is the column of the first code point after the place, counted
// from 1; 0 where Line is 0.
func (p Place) EndColumn() int { _, column := p.position(p.Span.End); return column }

func (p Place) position(offset int32) (line, column int) {
	if !p.located() {
		return 0, 0
	}
	return p.File.Position(int(offset))
}

// String gives name:line:column, the name alone when the file could not be
// read, and nothing when the place is nowhere. Characters of the name that
// could disturb a terminal are replaced.
func (p Place) String() string {
	if p.IsZero() {
		return ""
	}
	name := strings.Map(visible, p.File.Name)
	if !p.located() {
		return name
	}
	line, column := p.position(p.Span.Start)
	return name + ":" + strconv.Itoa(line) + ":" + strconv.Itoa(column)
}
