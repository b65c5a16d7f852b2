package source

import (
	"strings"
	"testing"
)

// lexical is one way to get a file wrong. Columns count code points from 1.
type lexical struct {
	name, text             string
	line, column           int
	marked                 string // the bytes of the place
	pointer                string
	what, expected, remedy string // parts of the message
}

var punctuation = []lexical{
	{"trailing comma in an object", "{\n  \"a\": 1,\n}", 2, 9, ",", "", "comma after the last member", `"}" right after`, "take the comma out"},
	{"trailing comma in an array", `{"a": [1, 2,  ]}`, 1, 12, ",", "/a", "comma after the last element", `"]" right after`, "take the comma out"},
	{"two commas", `{"a": 1,, "b": 2}`, 1, 9, ",", "", "two commas", "name in double quotes", "one of them"},
	{"two commas at the end", `{"a": [1,,]}`, 1, 10, ",", "/a/1", "two commas", "value", "one of them"},
	{"comma first in an object", `{, "a": 1}`, 1, 2, ",", "", "comma with nothing before", "name in double quotes", "take the comma out"},
	{"comma first in an array", `{"a": [,1]}`, 1, 8, ",", "/a/0", "comma with nothing before", "value", "take the comma out"},
	{"comma for the value", `{"é": , "b": 1}`, 1, 2, `"é"`, "/é", `"é" has no value`, "a value after the name", "not known"},
	{"closed before the value", `{"a": }`, 1, 2, `"a"`, "/a", `"a" has no value`, "a value after the name", "not known"},
	{"name alone", `{"a"}`, 1, 2, `"a"`, "/a", `"a" has no value`, "a value after the name", "not known"},
	{"comma for the colon", `{"a", 1}`, 1, 2, `"a"`, "/a", `"a" has no value`, "a value after the name", "not known"},
	{"missing colon", `{"a" 1}`, 1, 6, "1", "/a", `no ":" after the name "a"`, `":"`, `put ":" there`},
	{"equals sign for the colon", `{"a" = 1}`, 1, 6, "=", "/a", `no ":" after the name "a"`, `":"`, `instead of "="`},
	{"missing comma, next line", "{\n  \"a\": 1\n  \"b\": 2\n}", 3, 3, `"`, "", "no comma before this member", `","`, "on line 2"},
	{"missing comma after an object", `{"a": {} "b": 2}`, 1, 10, `"`, "", "no comma before this member", `","`, "on line 1"},
	{"missing comma before an object", `{"a": [{} {}]}`, 1, 11, "{", "/a", "no comma before this element", `","`, "on line 1"},
	{"missing comma and quotes", "{\"a\": \"x\"\nb: 2}", 2, 1, "b", "", "no comma before this member", `","`, "on line 1"},
	{"missing comma in an array", `{"a": [1 2]}`, 1, 10, "2", "/a", "no comma before this element", `"]" to end the array`, "on line 1"},
	{"semicolon", `{"a": 1; "b": 2}`, 1, 8, ";", "", `";" after a value`, `","`, `instead of ";"`},
	{"second colon", `{"a": "b": 1}`, 1, 10, ":", "", "second colon", `","`, "missing comma"},
	{"array not closed before a name", `{"a": [1, "b": 2}`, 1, 14, ":", "/a", "colon inside an array", `"]" to end the array`, "close the array with ]"},
	{"brace closes a bracket", "{\"a\": [\n1, 2}", 2, 5, "}", "/a", `"}" where the array that begins on line 1 is still open`, `"]"`, `put "]" before it`},
	{"bracket closes a brace", `{"a": 1]`, 1, 8, "]", "", `"]" where the object that begins on line 1 is still open`, `"}"`, `put "}" before it`},
	{"too many closing brackets", "{\"a\": 1}\n}", 2, 1, "}", "", `a "}" too many`, "as many", "take it out"},
	{"closing bracket only", "]", 1, 1, "]", "", `a "]" too many`, "as many", "take it out"},
	{"second top-level value", "{}\n{}", 2, 1, "{", "", "second value", "one object", "file of its own"},
	{"words after the end", "{} end", 1, 4, "e", "", "something more", "one object", "closes too early"},
	{"comma after the end", "{},", 1, 3, ",", "", "something more", "one object", "closes too early"},
	{"object for a name", `{{"a": 1}}`, 1, 2, "{", "", `"{" where a name belongs`, "name in double quotes", "write the name"},
	{"colon for a name", `{: 1}`, 1, 2, ":", "", `":" where a name belongs`, "name in double quotes", "write the name"},
	{"colon after a comma", `{"a": 1, : 2}`, 1, 10, ":", "", `":" where a name belongs`, "name in double quotes", "write the name"},
	{"line comment", "{\n  \"a\": 1, // left\n}", 2, 11, "//", "", "a comment", "no comments", `a "note"`},
	{"block comment", `{"a": /* left */ 1}`, 1, 7, "/*", "/a", "a comment", "no comments", `a "note"`},
	{"hash comment", "# my van\n{}", 1, 1, "#", "", "a comment", "no comments", `a "note"`},
	{"comment at the end", "{}\n// end", 2, 1, "//", "", "a comment", "no comments", `a "note"`},
	{"markup comment", "<!-- x -->{}", 1, 1, "<!--", "", "a comment", "no comments", `a "note"`},
	{"no-break space", "{\"a\":\u00a01}", 1, 6, "\u00a0", "/a", "U+00A0", "spaces, tabs", "web page"},
	{"zero-width space", "{\u200b\"a\": 1}", 1, 2, "\u200b", "", "U+200B", "spaces, tabs", "web page"},
	{"line separator", "{\"a\": 1\u2028}", 1, 8, "\u2028", "", "U+2028", "spaces, tabs", "web page"},
	{"form feed", "{\"a\": 1\f}", 1, 8, "\f", "", "U+000C", "spaces, tabs", "web page"},
	{"zero byte", "{\x00\"a\": 1}", 1, 2, "\x00", "", "zero byte", "UTF-8", "save the file again"},
	{"something else for a value", `{"a": @}`, 1, 7, "@", "/a", `unexpected "@"`, "a value", "take the character out"},
	{"something else after a value", `{"a": 1 … }`, 1, 9, "…", "", `unexpected "…" (U+2026)`, `","`, "take the character out"},
	{"three dots", `{"a": ...}`, 1, 7, ".", "/a", `unexpected "."`, "a value", "take the character out"},
}

var textFaults = []lexical{
	{"single quotes at a value", `{"a": 'x'}`, 1, 7, "'", "/a", "quotation mark", `straight double quote "`, "both ends"},
	{"single quotes at a name", `{'a': 1}`, 1, 2, "'", "", "quotation mark", `straight double quote "`, "both ends"},
	{"typographic quotes", `{"a": “x”}`, 1, 7, "“", "/a", "quotation mark", `straight double quote "`, "plain text editor"},
	{"backtick", "{\"a\": `x`}", 1, 7, "`", "/a", "quotation mark", `straight double quote "`, "both ends"},
	{"single quotes after a comma was left out", `{"a": "x" 'b': 1}`, 1, 11, "'", "", "quotation mark", `straight double quote "`, "both ends"},
	{"name without quotes", `{floor: 1}`, 1, 2, "floor", "", "name without quotes", "double quotes", `write "floor"`},
	{"second name without quotes", `{"a": 1, low_vent-2: 1}`, 1, 10, "low_vent-2", "", "name without quotes", "double quotes", `write "low_vent-2"`},
	{"number for a name", `{1: 2}`, 1, 2, "1", "", "name without quotes", "double quotes", `write "1"`},
	{"literal for a name", `{true: 2}`, 1, 2, "true", "", "name without quotes", "double quotes", `write "true"`},
	{"broken literal for a name", `{none: 2}`, 1, 2, "none", "", "name without quotes", "double quotes", `write "none"`},
	{"words for a value", `{"a": left side, "b": 1}`, 1, 7, "left side", "/a", `"left side" without quotes`, "a value", `"left side"`},
	{"True", `{"a": True}`, 1, 7, "True", "/a", `"True" without quotes`, "a value", "small letters: true"},
	{"yes", `{"a": yes}`, 1, 7, "yes", "/a", `"yes" without quotes`, "a value", "write true"},
	{"no", `{"a": no}`, 1, 7, "no", "/a", `"no" without quotes`, "a value", "write false"},
	{"None", `{"a": None}`, 1, 7, "None", "/a", `"None" without quotes`, "a value", "not known"},
	{"NaN", `{"a": NaN}`, 1, 7, "NaN", "/a", `"NaN" without quotes`, "a value", "measured"},
	{"literal with a letter too few", `{"a": tru}`, 1, 7, "tru", "/a", `"tru" without quotes`, "a value", `"tru"`},
	{"literal with a letter too many", `{"a": truely}`, 1, 7, "truely", "", `"truely" without quotes`, `","`, `"truely"`},
	{"words for a file", "hello\n", 1, 1, "hello", "", `"hello" without quotes`, "a value", `"hello"`},
	{"line break in a text", "{\n \"a\": \"left\n side\"}", 2, 7, `"`, "/a", "not closed on its line", `closing "`, `\n`},
	{"carriage return in a text", "{\"a\": \"left\rside\"}", 1, 7, `"`, "/a", "not closed on its line", `closing "`, `\n`},
	{"line break in a name", "{\"a\n: 1}", 1, 2, `"`, "", "not closed on its line", `closing "`, `\n`},
	{"tab in a text", "{\"a\": \"é\tx\"}", 1, 9, "\t", "/a", "tab inside a text", "a space", `\t`},
	{"control character in a text", "{\"a\": \"x\x07\"}", 1, 9, "\x07", "/a", "U+0007", "can be seen", "take it out"},
	{"unknown escape", `{"a": "C:\Users"}`, 1, 10, `\U`, "/a", "backslash", `\n`, "two backslashes"},
	{"unknown escape of a wide character", `{"a": "x\€"}`, 1, 9, `\€`, "/a", "backslash", `\n`, "two backslashes"},
	{"unknown escape in a name", `{"a\qb": 1}`, 1, 4, `\q`, "", "backslash", `\n`, "two backslashes"},
	{"short unicode escape", `{"a": "\u12"}`, 1, 8, `\u12`, "/a", `\u`, "four hexadecimal digits", "character itself"},
	{"unicode escape without digits", `{"a": "\uzzzz"}`, 1, 8, `\u`, "/a", `\u`, "four hexadecimal digits", "character itself"},
	{"first half of a surrogate pair", `{"a": "\ud834x"}`, 1, 8, `\ud834`, "/a", `\u`, "two such", "character itself"},
	{"second half of a surrogate pair", `{"a": "\udd1e"}`, 1, 8, `\udd1e`, "/a", `\u`, "two such", "character itself"},
	{"quotes inside a text", `{"a": "say "hi" now"}`, 1, 13, "h", "", `goes on after its closing "`, `","`, `\"`},
	{"inch mark inside a text", `{"a": "24" wide"}`, 1, 12, "w", "", `goes on after its closing "`, `","`, `"in"`},
	{"text goes on with a digit", `{"a": "x"5}`, 1, 10, "5", "", `goes on after its closing "`, `","`, `\"`},
}

var numberFaults = []lexical{
	{"unit after a space", `{"a": 24 in, "b": 1}`, 1, 7, "24 in", "/a", "measure with its unit", "text in double quotes", `"24 in"`},
	{"unit right after", `{"a": 24mm}`, 1, 7, "24mm", "/a", "measure with its unit", "text in double quotes", `"24 in"`},
	{"inch mark", `{"a": 24"}`, 1, 7, `24"`, "/a", "measure with its unit", "text in double quotes", `"24 in"`},
	{"foot mark", `{"a": [6' 2"]}`, 1, 8, "6' 2", "/a/0", "measure with its unit", "text in double quotes", `"24 in"`},
	{"fraction", `{"a": 3/8 in}`, 1, 7, "3/8 in", "/a", "measure with its unit", "text in double quotes", `"24 in"`},
	{"degrees", "{\"a\": -5 °C\n}", 1, 7, "-5 °C", "/a", "measure with its unit", "text in double quotes", `"24 in"`},
	{"per cent", `{"a": 5%}`, 1, 7, "5%", "/a", "measure with its unit", "text in double quotes", `"24 in"`},
	{"unit at the end of the file", `{"a": 24 in`, 1, 7, "24 in", "/a", "measure with its unit", "text in double quotes", `"24 in"`},
	{"name after a number is not a unit", `{"a": 24 b: 1}`, 1, 10, "b", "", "no comma before this member", `","`, "line 1"},
	{"half a name after a number", `{"a": 24 b": 1}`, 1, 10, "b", "", "no comma before this member", `","`, "line 1"},
	{"decimal comma", `{"a": 1,5, "b": 2}`, 1, 7, "1,5", "/a", "decimal comma", "decimal point", "1.5 for 1,5"},
	{"a number after a comma and a space is no decimal", `{"a": 1, 5}`, 1, 10, "5", "", "name without quotes", "double quotes", `write "5"`},
	{"gap for thousands", `{"a": 12 000}`, 1, 7, "12 000", "/a", "gap", "digits without spaces", "12000"},
	{"underscore for thousands", `{"a": 12_000}`, 1, 7, "12_000", "/a", "gap", "digits without spaces", "12000"},
	{"two points", `{"a": 1.2.3}`, 1, 7, "1.2.3", "/a", "second point", "one decimal point", "12000"},
	{"leading zero", `{"a": 05}`, 1, 7, "05", "/a", "begins with a zero", "without zeros before", "5 for 05"},
	{"negative leading zero", `{"a": -05}`, 1, 7, "-05", "/a", "begins with a zero", "without zeros before", "5 for 05"},
	{"hexadecimal", `{"a": 0x1F}`, 1, 7, "0x1F", "/a", "begins with a zero", "without zeros before", "hexadecimal"},
	{"plus sign", `{"a": +5}`, 1, 7, "+5", "/a", `begins with "+"`, "digit first", "5 for +5"},
	{"leading point", `{"a": .5}`, 1, 7, ".5", "/a", `begins with "."`, "digit first", "0.5 for .5"},
	{"trailing point", `{"a": 5.}`, 1, 7, "5.", "/a", "breaks off", "a digit after", "1.0"},
	{"minus alone", `{"a": -}`, 1, 7, "-", "/a", "breaks off", "a digit after", "1.0"},
	{"exponent without digits", `{"a": [1e+]}`, 1, 8, "1e+", "/a/0", "breaks off", "a digit after", "1.0"},
	{"exponent too large", `{"a": 1e401}`, 1, 7, "1e401", "/a", "too large an exponent", "-400 to 400", "round"},
	{"exponent too small", `{"a": [0, 1e-401]}`, 1, 11, "1e-401", "/a/1", "too large an exponent", "-400 to 400", "round"},
	{"too many digits", `{"a": ` + strings.Repeat("7", 41) + `}`, 1, 7, strings.Repeat("7", 41), "/a", "too long", "40 characters", "round"},
}

var endings = []lexical{
	{"empty", "", 1, 1, "", "", "file is empty", "one JSON object", "saved"},
	{"white space only", " \n\t\r\n", 1, 1, "", "", "nothing but white space", "one JSON object", "saved"},
	{"ends after the opening bracket", "{", 1, 2, "", "", "ends too soon: the object that begins on line 1", `"}"`, "whole file"},
	{"ends after a value", "{\n  \"a\": [1", 2, 10, "", "/a", "ends too soon: the array that begins on line 2", `"]"`, "whole file"},
	{"ends after a comma", "{\"a\": 1,\n", 2, 1, "", "", "ends too soon: the object that begins on line 1", `"}"`, "whole file"},
	{"ends after a name", `{"a"`, 1, 5, "", "/a", "ends too soon", `"}"`, "whole file"},
	{"ends after a colon", `{"a":`, 1, 6, "", "/a", "ends too soon", `"}"`, "whole file"},
	{"ends in a literal", `{"a": tr`, 1, 9, "", "/a", "ends too soon", `"}"`, "whole file"},
	{"ends in a number", `{"a": -`, 1, 8, "", "/a", "ends too soon", `"}"`, "whole file"},
	{"ends in a text", `{"a": "é`, 1, 7, `"`, "/a", "not closed before the file ends", `closing "`, "put \" at the end"},
	{"ends in an escape", `{"a": "x\`, 1, 7, `"`, "/a", "not closed before the file ends", `closing "`, "put \" at the end"},
	{"ends in a name", `{"a": 1, "b`, 1, 10, `"`, "", "not closed before the file ends", `closing "`, "put \" at the end"},
	{"byte order mark", "\ufeff{}", 1, 1, "\ufeff", "", "byte order mark", "UTF-8 without a mark", `not "UTF-8 with BOM"`},
	{"UTF-16, little end first", "\xff\xfe{\x00}\x00", 1, 1, "\xff\xfe", "", "UTF-16", "UTF-8", "save the file again"},
	{"UTF-16, big end first", "\xfe\xff\x00{\x00}", 1, 1, "\xfe\xff", "", "UTF-16", "UTF-8", "save the file again"},
	{"Latin-1", "{\n \"a\": \"caf\xe9\"}", 2, 11, "\xe9", "", "hexadecimal E9", "UTF-8", "save the file again"},
	{"overlong UTF-8", "{\"€\": \"\xc0\xaf\"}", 1, 8, "\xc0", "", "hexadecimal C0", "UTF-8", "save the file again"},
	{"surrogate in UTF-8", "{\"a\": \"\xed\xa0\x80\"}", 1, 8, "\xed", "", "hexadecimal ED", "UTF-8", "save the file again"},
	{"array for a root", "\n [1]", 2, 2, "[1]", "", "holds an array at its top", "one object", "end it with }"},
	{"text for a root", `"x"`, 1, 1, `"x"`, "", "holds a text at its top", "one object", "end it with }"},
	{"number for a root", "5", 1, 1, "5", "", "holds a number at its top", "one object", "end it with }"},
	{"null for a root", "null", 1, 1, "null", "", "holds null at its top", "one object", "end it with }"},
	{"truth for a root", "true", 1, 1, "true", "", "holds true or false at its top", "one object", "end it with }"},
	{"broken array for a root", "[1", 1, 3, "", "", "ends too soon", `"]"`, "whole file"},
	{"name twice", "{\n \"a\": 1,\n \"a\": 2}", 3, 2, `"a"`, "/a", `"a" is used a second time in one object; the first is on line 2`, "once", "take one"},
	{"name twice, spelled otherwise", `{"x": {"é": 1, "\u00e9": 2}}`, 1, 16, `"\u00e9"`, "/x/é", `"é" is used a second time`, "once", "take one"},
	{"empty name twice", `{"": 1, "": 2}`, 1, 9, `""`, "/", `"" is used a second time`, "once", "take one"},
}

func TestLexicalFaults(t *testing.T) {
	for _, group := range [][]lexical{punctuation, textFaults, numberFaults, endings} {
		for _, test := range group {
			t.Run(test.name, func(t *testing.T) { test.check(t) })
		}
	}
}

func (want lexical) check(t *testing.T) {
	root, fault := Parse(NewFile("van.json", []byte(want.text)), Limits{})
	if fault == nil {
		t.Fatalf("%q parses", want.text)
	}
	if root != nil {
		t.Error("part of a tree is given")
	}
	p := fault.Place
	if p.Line() != want.line || p.Column() != want.column {
		t.Errorf("at %d:%d, want %d:%d", p.Line(), p.Column(), want.line, want.column)
	}
	if got := want.text[p.Span.Start:p.Span.End]; got != want.marked {
		t.Errorf("marks %q, want %q", got, want.marked)
	}
	if p.Pointer != want.pointer {
		t.Errorf("pointer %q, want %q", p.Pointer, want.pointer)
	}
	for _, part := range []struct{ got, want string }{{fault.What, want.what}, {fault.Expected, want.expected}, {fault.Mend, want.remedy}} {
		if !strings.Contains(part.got, part.want) {
			t.Errorf("%q does not speak of %q", part.got, part.want)
		}
	}
}

// A fault that speaks of another place gives it.
func TestRelatedPlaces(t *testing.T) {
	tests := []struct {
		name, text   string
		line, column int
	}{
		{"first of two names", "{\n \"a\": 1,\n \"a\": 2}", 2, 2},
		{"opening of what is not closed", "{\n \"a\": [\n1", 2, 7},
		{"opening of what is closed otherwise", "{\n \"a\": [\n1}", 2, 7},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, fault := Parse(NewFile("", []byte(test.text)), Limits{})
			if len(fault.Related) != 1 || fault.Related[0].Line() != test.line || fault.Related[0].Column() != test.column {
				t.Errorf("got %v", fault.Related)
			}
		})
	}
}

// Of several faults the first in the file is told.
func TestFirstFaultOnly(t *testing.T) {
	tests := []struct{ text, what string }{
		{`{"a": 1, "a": 2,}`, "second time"},
		{`{"a": 1,, "a": 2}`, "two commas"},
		{`{"a": 1e999, "b": 'x'}`, "exponent"},
		{`{"b": 'x', "a": 1e999}`, "quotation mark"},
		{`[1, 2`, "ends too soon"},
	}
	for _, test := range tests {
		_, fault := Parse(NewFile("", []byte(test.text)), Limits{})
		if fault == nil || !strings.Contains(fault.What, test.what) {
			t.Errorf("%s: %v", test.text, fault)
		}
	}
}
