package source

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/go-json-experiment/json/jsontext"
)

// turn is what the grammar allows next.
type turn uint8

const (
	wantValue turn = iota
	wantName       // or the end of the object
	wantColon
	wantComma // or the end of the object or array
	wantEnd   // of the file
)

// site is the spot where the decoder gave up and what was being read there.
// The decoder says where; what it was is told from the bytes, for the words of
// its errors are not a contract.
type site struct {
	p     *parser
	data  []byte
	delim int  // offset of the "," or ":" before the token, -1 without
	start int  // first byte of the token that could not be read
	at    int  // first byte that does not fit; len(data) if the file ends too soon
	cut   bool // the file ends too soon
	turn  turn
}

// syntaxFault explains an error of the decoder.
func (p *parser) syntaxFault(err error) *Fault {
	s := site{p: p, data: p.doc.file.Data, delim: -1}
	s.start = s.skipBlanks(int(p.in.InputOffset()))
	if s.start < len(s.data) && strings.IndexByte(",:", s.data[s.start]) >= 0 {
		s.delim, s.start = s.start, s.skipBlanks(s.start+1)
	}
	s.at = s.start
	var syntax *jsontext.SyntacticError
	switch {
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		s.cut, s.at = true, len(s.data)
	case errors.As(err, &syntax) && s.delim >= 0 && int(syntax.ByteOffset) == s.delim:
		s.at, s.start, s.delim = s.delim, s.delim, -1
	case syntax != nil:
		s.at = max(s.start, int(syntax.ByteOffset))
	}
	s.turn = s.next()
	if s.at >= len(s.data) {
		return s.truncated()
	}
	return s.explain()
}

// atEnd looks for anything after the root.
func (p *parser) atEnd() *Fault {
	s := site{p: p, data: p.doc.file.Data, delim: -1, turn: wantEnd}
	s.start = s.skipBlanks(int(p.root.Span.End))
	if s.at = s.start; s.at == len(s.data) {
		return nil
	}
	return s.explain()
}

func (s *site) skipBlanks(from int) int {
	return len(s.data) - len(bytes.TrimLeft(s.data[from:], blanks))
}

// next tells what the grammar allowed at the token.
func (s *site) next() turn {
	open := s.p.open
	switch {
	case open == nil:
		return wantValue
	case s.p.key != (Span{}):
		if s.delim >= 0 && s.data[s.delim] == ':' {
			return wantValue
		}
		return wantColon
	case len(open.Children) > 0 && (s.delim < 0 || s.data[s.delim] != ','):
		return wantComma
	case open.Kind == Object:
		return wantName
	}
	return wantValue
}

// explain finds the plainest explanation of the bytes at the fault.
func (s *site) explain() *Fault {
	switch c := s.data[s.start]; {
	case s.at == s.start:
	case c == '"':
		return s.insideText()
	case s.turn == wantName: // a name without quotes, whatever is wrong further on in it
		s.at = s.start
	case c == '-' || isDigit(c):
		return s.brokenNumber()
	default:
		return s.bareText(s.start)
	}
	for _, look := range []func() *Fault{
		s.invisible, s.comment, s.number, s.quotes, s.comma, s.closer, s.afterAll, s.colon, s.name, s.separator, s.value,
	} {
		if fault := look(); fault != nil {
			return fault
		}
	}
	return s.fault(s.char(), "unexpected "+show(s.runeAt(s.at)), s.wanted(), "take the character out, or put what belongs there")
}

// wanted says what the grammar allows at the fault.
func (s *site) wanted() string {
	switch s.turn {
	case wantName:
		return `a name in double quotes, or } to end the object`
	case wantColon:
		return `":" between the name and its value`
	case wantComma:
		return fmt.Sprintf(`"," and a further %s, or "%c" to end the %s`, s.partName(), s.closing(), s.container())
	case wantEnd:
		return "nothing after the end of the object"
	}
	return `a value: a text in double quotes, a number, true, false, an object or an array`
}

func (s *site) closing() byte {
	if s.p.open != nil && s.p.open.Kind == Array {
		return ']'
	}
	return '}'
}

func (s *site) container() string {
	if s.closing() == ']' {
		return "array"
	}
	return "object"
}

// truncated explains a file that ends too soon.
func (s *site) truncated() *Fault {
	end := len(s.data)
	if s.start < end && s.data[s.start] == '"' {
		return s.fault(s.span(s.start, s.start+1), "the text that begins here is not closed before the file ends", `a closing "`, `put " at the end of the text, and check that the rest of the file was saved`)
	}
	f := s.fault(s.span(end, end), "the file ends too soon", s.wanted(), "check that the whole file was saved")
	if open := s.p.open; open != nil {
		first := Place{File: s.p.doc.file, Span: Span{open.Span.Start, open.Span.Start + 1}, Pointer: open.Pointer()}
		f.Related = []Place{first}
		f.What += fmt.Sprintf(": the %s that begins on line %d is not closed", s.container(), first.Line())
		f.Expected = fmt.Sprintf(`the rest of it and "%c"`, s.closing())
	}
	return f
}

// insideText explains what is wrong between double quotes.
func (s *site) insideText() *Fault {
	switch c := s.data[s.at]; {
	case c == '\n' || c == '\r':
		return s.fault(s.span(s.start, s.start+1), "the text that begins here is not closed on its line", `a closing "`, `put " at the end of the text; a line break inside a text is written \n`)
	case c == '\t':
		return s.fault(s.char(), "a tab inside a text", "a space", `put spaces there, or write the tab as \t`)
	case c == '\\' && s.byteAt(s.at+1) == 'u':
		return s.fault(s.escape(), `an escape \u that is not a character`, `\u and four hexadecimal digits; two such for a character beyond FFFF`, "write the character itself")
	case c == '\\':
		return s.fault(s.escape(), `a backslash before a character that has no meaning there`, `one of \" \\ \/ \b \f \n \r \t \u after the backslash`, `write two backslashes for one`)
	}
	return s.fault(s.char(), "a control character inside a text: "+show(s.runeAt(s.at)), "characters that can be seen", "take it out")
}

// fault makes a fault at a span of the file.
func (s *site) fault(span Span, what, expected, mend string) *Fault {
	pointer := s.p.awaited()
	if s.turn == wantComma {
		pointer = s.p.open.Pointer()
	}
	return &Fault{Place: Place{File: s.p.doc.file, Span: span, Pointer: pointer}, What: what, Expected: expected, Mend: mend}
}

// span keeps an end that was guessed within the file.
func (s *site) span(from, to int) Span {
	return Span{int32(from), int32(min(to, len(s.data)))}
}

// char is the span of the code point at the fault.
func (s *site) char() Span {
	_, size := utf8.DecodeRune(s.data[s.at:])
	return s.span(s.at, s.at+size)
}

// escape is the span of the faulty escape at the fault: the backslash, the
// character after it, and after \u what there is of four hexadecimal digits.
func (s *site) escape() Span {
	_, size := utf8.DecodeRune(s.data[s.at+1:])
	end := s.at + 1 + size
	if s.byteAt(s.at+1) == 'u' {
		for end < s.at+6 && strings.IndexByte("0123456789abcdefABCDEF", s.byteAt(end)) >= 0 {
			end++
		}
	}
	return s.span(s.at, end)
}

func (s *site) runeAt(i int) rune {
	r, _ := utf8.DecodeRune(s.data[i:])
	return r
}

// byteAt gives 0 past the end of the file.
func (s *site) byteAt(i int) byte {
	if i < len(s.data) {
		return s.data[i]
	}
	return 0
}

// last is the member or element written before the fault, nil if none is.
func (s *site) last() *Node {
	if open := s.p.open; open != nil && len(open.Children) > 0 {
		return open.Children[len(open.Children)-1]
	}
	return nil
}

// show names a character in a message.
func show(r rune) string {
	switch {
	case ' ' < r && r < 0x7F:
		return fmt.Sprintf(`"%c"`, r)
	case visible(r) != r || unicode.Is(unicode.Zs, r) || r == utf8.RuneError:
		return fmt.Sprintf("U+%04X", r)
	}
	return fmt.Sprintf(`"%c" (U+%04X)`, r, r)
}
