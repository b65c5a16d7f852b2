package source

import (
	"bytes"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Each function here looks for one kind of slip at the fault and gives nil if
// it is not that one.

// invisible finds characters that look like white space or like nothing.
func (s *site) invisible() *Fault {
	r := s.runeAt(s.at)
	if !unicode.In(r, unicode.Zs, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp) {
		return nil
	}
	if r == 0 {
		return s.fault(s.char(), "a zero byte, as a file written in UTF-16 has them", "UTF-8", saveAsUTF8)
	}
	return s.fault(s.char(), "a character that cannot be seen or looks like a space: "+show(r), "spaces, tabs and line ends only, outside a text", "take it out and type a space; it often comes with text copied from a web page")
}

func (s *site) comment() *Fault {
	rest := s.data[s.at:]
	for _, mark := range []string{"//", "/*", "#", "<!--"} {
		if bytes.HasPrefix(rest, []byte(mark)) {
			return s.fault(s.span(s.at, s.at+len(mark)), "a comment", "JSON, which has no comments", `take it out, or put it into a "note" as a text`)
		}
	}
	return nil
}

// quoteMarks are what people and word processors write instead of ".
const quoteMarks = "'`´‘’‚‛“”„‟«»‹›"

func (s *site) quotes() *Fault {
	r := s.runeAt(s.at)
	if !strings.ContainsRune(quoteMarks, r) {
		return nil
	}
	return s.fault(s.char(), "a quotation mark that JSON does not know: "+show(r), `the straight double quote "`, `write " at both ends of the text; use a plain text editor, not a word processor`)
}

func (s *site) comma() *Fault {
	if s.data[s.at] != ',' {
		return nil
	}
	what, expected, mend := "a comma with nothing before it", s.wanted(), "take the comma out"
	switch {
	case s.turn == wantEnd:
		return nil
	case s.turn == wantComma:
		what = fmt.Sprintf("a comma after the last %s", s.partName())
		expected = fmt.Sprintf(`"%c" right after it`, s.closing())
	case s.turn == wantColon, s.p.key != (Span{}):
		return s.noValue()
	case s.last() != nil:
		what, mend = "two commas with nothing between them", "take one of them out"
	}
	return s.fault(s.char(), what, expected, mend)
}

func (s *site) partName() string {
	if s.closing() == ']' {
		return "element"
	}
	return "member"
}

// noValue explains a name that nothing follows.
func (s *site) noValue() *Fault {
	name := quoted(s.p.doc.unquote(s.p.key))
	return s.fault(s.p.key, fmt.Sprintf("the name %s has no value", name), `":" and a value after the name`, "write the value, or take the name out: what is left out counts as not known")
}

func (s *site) closer() *Fault {
	c := s.data[s.at]
	open := s.p.open
	switch {
	case c != '}' && c != ']', c == s.closing() && s.p.open != nil && s.p.key == (Span{}):
		return nil
	case open == nil:
		return s.fault(s.char(), fmt.Sprintf(`a "%c" too many`, c), "as many closing brackets as opening ones", "take it out, or look above for one that closes too early")
	case c == s.closing():
		return s.noValue()
	}
	f := s.fault(s.char(), fmt.Sprintf(`"%c" where the %s that begins on line %d is still open`, c, s.container(), open.Place().Line()), fmt.Sprintf(`"%c"`, s.closing()), fmt.Sprintf(`put "%c" before it`, s.closing()))
	f.Related = []Place{{File: s.p.doc.file, Span: Span{open.Span.Start, open.Span.Start + 1}, Pointer: open.Pointer()}}
	return f
}

func (s *site) afterAll() *Fault {
	if s.turn != wantEnd {
		return nil
	}
	what := "something more after the end of the object: " + show(s.runeAt(s.at))
	if strings.IndexByte(`{["`, s.data[s.at]) >= 0 {
		what = "a second value after the end of the first"
	}
	return s.fault(s.char(), what, "one object in one file", "look above for a bracket that closes too early; put a second dwelling in a file of its own")
}

func (s *site) colon() *Fault {
	if s.turn != wantColon {
		return nil
	}
	name := quoted(s.p.doc.unquote(s.p.key))
	mend := `put ":" there`
	if s.data[s.at] == '=' {
		mend = `write ":" instead of "="`
	}
	return s.fault(s.char(), fmt.Sprintf(`no ":" after the name %s`, name), s.wanted(), mend)
}

func (s *site) name() *Fault {
	if s.turn != wantName {
		return nil
	}
	r := s.runeAt(s.at)
	if r == '_' || r == '$' || r == '-' || unicode.IsLetter(r) || unicode.IsDigit(r) {
		return s.fault(s.span(s.at, s.wordEnd(s.at)), "a name without quotes", "a name in double quotes", fmt.Sprintf(`write %s`, quoted(string(s.data[s.at:s.wordEnd(s.at)]))))
	}
	return s.fault(s.char(), show(r)+" where a name belongs", s.wanted(), "write the name and a colon before it, or close the object")
}

// wordEnd is the end of the run of letters, digits, "_", "$", "-" and "." from i.
func (s *site) wordEnd(i int) int {
	for i < len(s.data) {
		r, size := utf8.DecodeRune(s.data[i:])
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) && !strings.ContainsRune("_$-.", r) {
			break
		}
		i += size
	}
	return i
}

// separator explains what follows a value instead of a comma or a closing bracket.
func (s *site) separator() *Fault {
	if s.turn != wantComma {
		return nil
	}
	last, r := s.last(), s.runeAt(s.at)
	adjacent := int(last.Span.End) == s.at
	words := unicode.IsLetter(r) && !s.nameFollows()
	switch {
	case r == ';':
		return s.fault(s.char(), `";" after a value`, s.wanted(), `write "," instead of ";"`)
	case r == ':' && s.p.open.Kind == Array:
		return s.fault(s.char(), "a colon inside an array", s.wanted(), `close the array with ] before the name, or put the name and its value between { and }`)
	case r == ':':
		return s.fault(s.char(), "a second colon after a value", s.wanted(), `look before it for a missing comma, or for a missing { before the name`)
	case last.Kind == String && words, adjacent && last.Kind == String && r != '"' && r != '{' && r != '[':
		return s.fault(s.char(), `a text goes on after its closing "`, s.wanted(), `write a double quote inside a text as \", or inches as "in"`)
	case adjacent && unicode.IsLetter(r):
		return s.bareText(int(last.Span.Start))
	case r == '"' || r == '{' || r == '[' || r == '-' || r == '_' || unicode.IsLetter(r) || unicode.IsDigit(r):
		line, _ := s.p.doc.file.Position(int(last.Span.End))
		return s.fault(s.char(), "no comma before this "+s.partName(), s.wanted(), fmt.Sprintf(`put "," at the end of the value before it, on line %d`, line))
	}
	return nil
}
