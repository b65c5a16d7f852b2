package source

import (
	"bytes"
	"fmt"
	"unicode/utf8"
)

// checkBytes refuses what can be told without reading the file as JSON.
func checkBytes(f *File, l Limits) *Fault {
	switch {
	case len(f.Data) > l.Bytes:
		return tooLarge(f, l)
	case len(f.Data) == 0:
		return fileFault(f, Span{}, "the file is empty", "one JSON object", "check that the file was saved, and that it is the one that was meant")
	}
	if fault := checkEncoding(f); fault != nil {
		return fault
	}
	if len(bytes.Trim(f.Data, blanks)) == 0 {
		return fileFault(f, Span{}, "the file holds nothing but white space", "one JSON object", "check that the file was saved, and that it is the one that was meant")
	}
	return nil
}

// blanks is the white space of JSON (RFC 8259, section 2).
const blanks = " \t\r\n"

const saveAsUTF8 = `save the file again as "UTF-8" (not "UTF-8 with BOM", not "Unicode") in the editor's "save as"`

// checkEncoding looks for a byte order mark (RFC 8259, section 8.1: a text
// must not begin with one) and for bytes that are not UTF-8.
func checkEncoding(f *File) *Fault {
	switch {
	case bytes.HasPrefix(f.Data, []byte("\xef\xbb\xbf")):
		return fileFault(f, Span{0, 3}, "the file begins with a byte order mark (BOM)", "UTF-8 without a mark", saveAsUTF8)
	case bytes.HasPrefix(f.Data, []byte("\xff\xfe")), bytes.HasPrefix(f.Data, []byte("\xfe\xff")):
		return fileFault(f, Span{0, 2}, "the file is written in UTF-16", "UTF-8", saveAsUTF8)
	}
	if utf8.Valid(f.Data) {
		return nil
	}
	at := int32(firstInvalid(f.Data))
	what := fmt.Sprintf("a byte that is not UTF-8 (hexadecimal %02X)", f.Data[at])
	return fileFault(f, Span{at, at + 1}, what, "UTF-8", saveAsUTF8)
}

func firstInvalid(data []byte) int {
	at := 0
	for at < len(data) {
		r, size := utf8.DecodeRune(data[at:])
		if r == utf8.RuneError && size == 1 {
			break
		}
		at += size
	}
	return at
}

// tooLarge speaks of the whole file, so its place is the beginning.
func tooLarge(f *File, l Limits) *Fault {
	what := fmt.Sprintf("the file is larger than %d bytes", l.Bytes)
	return fileFault(f, Span{}, what, fmt.Sprintf("at most %d bytes", l.Bytes), "check that this is the file that was meant; put one dwelling in one file")
}

func fileFault(f *File, span Span, what, expected, mend string) *Fault {
	return &Fault{Place: Place{File: f, Span: span}, What: what, Expected: expected, Mend: mend}
}
