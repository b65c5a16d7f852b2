package source

import (
	"crypto/sha256"
	"encoding/hex"
	"sort"
	"sync"
	"unicode/utf8"
)

// blockBytes is the distance between two marks of the column index. One very
// long line (a minified file) then costs at most this many bytes per look-up,
// instead of its whole length.
const blockBytes = 1024

// File is the content of one file and the name it is reported under. Neither
// may be changed once the file is in use. Its methods are safe for concurrent
// use.
type File struct {
	Name string // as printed in messages; need not be a path
	Data []byte

	unread bool // the content never arrived: places in it have no line

	indexing sync.Once
	starts   []int // offset of the first byte of each line
	points   []int // code points that begin before each block

	hashing sync.Once
	hash    string
}

// NewFile gives the file of that name and content. The data is kept, not
// copied.
func NewFile(name string, data []byte) *File {
	return &File{Name: name, Data: data}
}

// unreadFile stands for a file whose content could not be had.
func unreadFile(name string) *File {
	return &File{Name: name, unread: true}
}

// Position gives the line and the column, both counted from 1, of a byte
// offset. A line ends with LF, CR LF or a lone CR, and its end belongs to it.
// A column is a count of code points. An offset inside a code point is taken
// as its first byte, and an offset outside the file as the nearer end of it.
func (f *File) Position(offset int) (line, column int) {
	f.indexing.Do(f.index)
	offset = f.pointStart(min(max(offset, 0), len(f.Data)))
	line = sort.SearchInts(f.starts, offset+1)
	return line, f.pointsBefore(offset) - f.pointsBefore(f.starts[line-1]) + 1
}

// SHA256 gives the SHA-256 digest (FIPS 180-4) of the content in lower-case
// hexadecimal, so that a report can be held against the file it speaks of.
func (f *File) SHA256() string {
	f.hashing.Do(func() {
		sum := sha256.Sum256(f.Data)
		f.hash = hex.EncodeToString(sum[:])
	})
	return f.hash
}

func (f *File) index() {
	f.starts = []int{0}
	points := 0
	for i, b := range f.Data {
		if i%blockBytes == 0 {
			f.points = append(f.points, points)
		}
		if utf8.RuneStart(b) {
			points++
		}
		if endsLine(f.Data, i) {
			f.starts = append(f.starts, i+1)
		}
	}
	if len(f.Data)%blockBytes == 0 {
		f.points = append(f.points, points)
	}
}

// endsLine reports whether the byte at i is the last of its line.
func endsLine(data []byte, i int) bool {
	switch data[i] {
	case '\n':
		return true
	case '\r':
		return i+1 == len(data) || data[i+1] != '\n'
	}
	return false
}

// pointsBefore counts the code points that begin before the offset.
func (f *File) pointsBefore(offset int) int {
	block := offset / blockBytes
	n := f.points[block]
	if block+1 < len(f.points) && f.points[block+1]-n == blockBytes {
		return n + offset - block*blockBytes // a block of one-byte points
	}
	for _, b := range f.Data[block*blockBytes : offset] {
		if utf8.RuneStart(b) {
			n++
		}
	}
	return n
}

// pointStart moves an offset inside a code point back to its first byte. A
// stray continuation byte is inside nothing and stays where it is.
func (f *File) pointStart(offset int) int {
	for back := 1; back < utf8.UTFMax && back <= offset && offset < len(f.Data); back++ {
		if !utf8.RuneStart(f.Data[offset-back]) {
			continue
		}
		if _, size := utf8.DecodeRune(f.Data[offset-back:]); size > back {
			return offset - back
		}
		break
	}
	return offset
}

// lineSpan gives the line that holds the offset, without its end.
func (f *File) lineSpan(offset int) (from, to int) {
	line, _ := f.Position(offset)
	from, to = f.starts[line-1], len(f.Data)
	if line < len(f.starts) {
		to = f.starts[line]
	}
	if to > from && f.Data[to-1] == '\n' {
		to--
	}
	if to > from && f.Data[to-1] == '\r' {
		to--
	}
	return from, to
}
