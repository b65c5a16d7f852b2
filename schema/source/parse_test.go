package source

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// Each row is a production of the grammar of RFC 8259 (December 2017). The
// text is a value, tried as the value of a member.
func TestGrammarOfRFC8259(t *testing.T) {
	accepted := []struct{ section, text string }{
		{"2 ws", " \t\n\r1\r\n\t "},
		{"3 value", "false"}, {"3 value", "null"}, {"3 value", "true"},
		{"4 object", "{}"}, {"4 object", "{ }"}, {"4 object", `{"":0}`}, {"4 object", `{"a":{},"b":[]}`},
		{"5 array", "[]"}, {"5 array", "[\n]"}, {"5 array", `[1,"1",null,[[]],{}]`},
		{"6 number: int", "0"}, {"6 number: int", "-0"}, {"6 number: int", "10"}, {"6 number: minus", "-1"},
		{"6 number: frac", "0.0"}, {"6 number: frac", "-1.50"}, {"6 number: exp", "1e5"}, {"6 number: exp", "1E+5"}, {"6 number: exp", "0e-0"}, {"6 number: exp", "1.5e01"},
		{"7 string", `""`}, {"7 string: unescaped", `" !#[]~é€𝄞"`}, {"7 string: unescaped DEL", "\"\x7f\""},
		{"7 string: escapes", `"\"\\\/\b\f\n\r\t"`}, {"7 string: escape u", `"\u0041\u00e9\uABCD\u0000"`},
		{"7 string: surrogate pair, the G clef of the RFC", `"\uD834\uDD1E"`},
	}
	for _, test := range accepted {
		if _, fault := Parse(NewFile("", []byte(`{"v":`+test.text+`}`)), Limits{}); fault != nil {
			t.Errorf("section %s: %s is refused: %v", test.section, test.text, fault)
		}
	}
	refused := []struct{ section, text string }{
		{"2 ws", "\v1"}, {"2 ws", "\u00851"}, {"2 ws", "\ufeff1"},
		{"2 separators", "1,"}, {"2 separators", ":1"}, {"2 separators", ""},
		{"3 names in lower case", "False"}, {"3 names in lower case", "NULL"}, {"3 no other names", "nil"}, {"3 no other names", "Infinity"},
		{"4 object", `{"a"}`}, {"4 object", `{"a":}`}, {"4 object", `{"a":1,}`}, {"4 object", `{a:1}`}, {"4 object", `{1:1}`}, {"4 object", `{null:1}`}, {"4 object", `{"a":1 "b":2}`}, {"4 object", `{`}, {"4 object", `{]`},
		{"5 array", "[1,]"}, {"5 array", "[,1]"}, {"5 array", "[1,,2]"}, {"5 array", "[1 2]"}, {"5 array", "["}, {"5 array", "[}"}, {"5 array", "[1:2]"},
		{"6 no leading zeros", "01"}, {"6 no leading zeros", "-01"}, {"6 no plus", "+1"}, {"6 int before the point", ".1"}, {"6 digits after the point", "1."}, {"6 digits in exp", "1e"}, {"6 digits in exp", "1e+"}, {"6 integers only in exp", "1e1.5"}, {"6 decimal only", "0x1"}, {"6 one minus", "--1"}, {"6 minus alone", "-"},
		{"7 quotation marks", `'a'`}, {"7 quotation marks", `"a`}, {"7 control characters", "\"\n\""}, {"7 control characters", "\"\x00\""}, {"7 control characters", "\"\x1f\""},
		{"7 escapes", `"\a"`}, {"7 escapes", `"\'"`}, {"7 escapes", `"\x41"`}, {"7 escapes", `"\u12"`}, {"7 escapes", `"\U0041"`}, {"7 escapes", `"\`},
		// Section 8.2 lets parsers behave unpredictably on lone surrogates.
		{"8.2", `"\uD834"`}, {"8.2", `"\uDD1E"`}, {"8.2", `"\uDD1E\uD834"`},
		// Section 4 tells that behaviour on equal names is unpredictable.
		{"4 names should be unique", `{"a":1,"a":1}`},
	}
	for _, test := range refused {
		if _, fault := Parse(NewFile("", []byte(`{"v":`+test.text+`}`)), Limits{}); fault == nil {
			t.Errorf("section %s: %q is accepted", test.section, test.text)
		}
	}
}

func TestLimits(t *testing.T) {
	nested := func(depth int) string {
		return `{"a":` + strings.Repeat("[", depth-1) + strings.Repeat("]", depth-1) + "}"
	}
	listed := func(values int) string {
		return `{"a":[` + strings.TrimSuffix(strings.Repeat("1,", values-2), ",") + "]}"
	}
	tests := []struct {
		name, text string
		limits     Limits
		what       string // "" when within
		column     int
	}{
		{"bytes at the limit", `{"a":1}`, Limits{Bytes: 7}, "", 0},
		{"bytes past the limit", `{"a":12}`, Limits{Bytes: 7}, "larger than 7 bytes", 1},
		{"bytes told before anything else", "\xff\xff\xff", Limits{Bytes: 2}, "larger than 2 bytes", 1},
		{"depth at the limit", nested(3), Limits{Depth: 3}, "", 0},
		{"depth past the limit", nested(4), Limits{Depth: 3}, "more than 3 deep", 8},
		{"default depth", nested(64), Limits{}, "", 0},
		{"past the default depth", nested(65), Limits{}, "more than 64 deep", 69},
		{"the greatest depth", nested(deepest), Limits{Depth: 1 << 30}, "", 0},
		{"past the greatest depth", nested(deepest + 1), Limits{Depth: 1 << 30}, "more than 1000 deep", deepest + 5},
		{"depth is of what is open", `{"a":[],"b":[],"c":[[]]}`, Limits{Depth: 3}, "", 0},
		{"values at the limit", listed(5), Limits{Nodes: 5}, "", 0},
		{"values past the limit", listed(6), Limits{Nodes: 5}, "more than 5 values", 13},
		{"negative is default", `{"a":[1]}`, Limits{-1, -1, -1}, "", 0},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			root, fault := Parse(NewFile("", []byte(test.text)), test.limits)
			switch {
			case test.what == "" && (fault != nil || root == nil):
				t.Errorf("refused: %v", fault)
			case test.what != "" && fault == nil:
				t.Error("accepted")
			case test.what != "" && (!strings.Contains(fault.What, test.what) || fault.Place.Column() != test.column):
				t.Errorf("got %v, want %q at column %d", fault, test.what, test.column)
			}
		})
	}
}

func TestDefaultLimits(t *testing.T) {
	want := Limits{Bytes: 8 * 1024 * 1024, Depth: 64, Nodes: 400000}
	if got := DefaultLimits(); got != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
	if got := (Limits{}).filled(); got != want {
		t.Errorf("the zero limits stand for %+v", got)
	}
}

// A file nested as deep as it is long ends quickly and with a fault.
func TestEndlessNesting(t *testing.T) {
	for _, bracket := range []string{"[", `{"a":`} {
		_, fault := Parse(NewFile("", []byte(`{"a":`+strings.Repeat(bracket, 1<<20))), Limits{})
		if fault == nil || !strings.Contains(fault.What, "deep") {
			t.Errorf("%q: %v", bracket, fault)
		}
	}
}

func TestParseOfNothing(t *testing.T) {
	if _, fault := Parse(nil, Limits{}); fault == nil {
		t.Error("no file parses")
	}
	if _, fault := Parse(&File{}, Limits{}); fault == nil {
		t.Error("the zero file parses")
	}
}

// A name used twice is found at any depth, among few members or many, however
// it is spelled, and both places are told.
func TestDuplicatesAtAnyDepth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.IntRange(2, 40).Draw(t, "size")
		keys := rapid.SliceOfNDistinct(names(), size, size, rapid.ID[string]).Draw(t, "names")
		first := rapid.IntRange(0, size-2).Draw(t, "first")
		second := rapid.IntRange(first+1, size-1).Draw(t, "second")
		keys[second] = keys[first]
		members := make([]string, size)
		for i, key := range keys {
			members[i] = string(appendQuoted(nil, key)) + ":" + values(1).Draw(t, "value")
		}
		members[second] = escapeAll(keys[second]) + ":0"
		text, pointer := "{"+strings.Join(members, ",")+"}", ""
		for range rapid.IntRange(0, 20).Draw(t, "depth") {
			if rapid.Bool().Draw(t, "array") {
				text, pointer = "[0,"+text+"]", "/1"+pointer
			} else {
				text, pointer = `{"d":`+text+"}", "/d"+pointer
			}
		}
		text, pointer = `{"r":`+text+"}", "/r"+pointer
		checkDuplicate(t, text, Join(pointer, keys[first]), escapeAll(keys[second]))
	})
}

func checkDuplicate(t *rapid.T, text, pointer, spelled string) {
	_, fault := Parse(NewFile("", []byte(text)), Limits{})
	if fault == nil || !strings.Contains(fault.What, "second time") || len(fault.Related) != 1 {
		t.Fatalf("%q: %v", text, fault)
	}
	if fault.Place.Pointer != pointer || fault.Related[0].Pointer != pointer {
		t.Fatalf("pointers %q and %q, want %q", fault.Place.Pointer, fault.Related[0].Pointer, pointer)
	}
	span := fault.Place.Span
	if text[span.Start:span.End] != spelled || fault.Related[0].Span.End > span.Start {
		t.Fatalf("marks %q, want %q", text[span.Start:span.End], spelled)
	}
}

// Damage to one byte of a good file gives a good file or one complete fault.
func TestDamagedFiles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		data := []byte(rapid.SampledFrom([]string{sample, rfc6901, rfc8259Object}).Draw(t, "file"))
		at := rapid.IntRange(0, len(data)-1).Draw(t, "at")
		switch rapid.SampledFrom([]string{"replace", "cut", "drop"}).Draw(t, "how") {
		case "replace":
			data[at] = rapid.SampledFrom([]byte("{}[]:,\"'\\/0-.eE ax\n\t\x00\xff")).Draw(t, "byte")
		case "cut":
			data = data[:at]
		case "drop":
			data = append(data[:at], data[at+1:]...)
		}
		checkParse(t, data)
	})
}

type failer interface {
	Helper()
	Fatalf(format string, args ...any)
}

// checkParse holds what is true of any input: a whole tree or a fault with a
// place and words, and agreement with the standard library on what is JSON.
func checkParse(t failer, data []byte) *Node {
	t.Helper()
	root, fault := Parse(NewFile("f.json", data), Limits{Bytes: 1 << 16})
	if (root == nil) == (fault == nil) {
		t.Fatalf("%q: tree %v and fault %v", data, root, fault)
	}
	if fault != nil {
		checkFault(t, data, fault)
		return nil
	}
	if !json.Valid(data) {
		t.Fatalf("%q is no JSON and is accepted", data)
	}
	if root.Span.End > int32(len(data)) || strings.Trim(string(data[:root.Span.Start])+string(data[root.Span.End:]), blanks) != "" {
		t.Fatalf("%q: the root spans %v", data, root.Span)
	}
	return root
}

func checkFault(t failer, data []byte, fault *Fault) {
	t.Helper()
	p := fault.Place
	if p.Span.Start < 0 || p.Span.End < p.Span.Start || int(p.Span.End) > len(data) {
		t.Fatalf("%q: span %v", data, p.Span)
	}
	if p.Line() < 1 || p.Column() < 1 || p.EndLine() < p.Line() {
		t.Fatalf("%q: %d:%d to line %d", data, p.Line(), p.Column(), p.EndLine())
	}
	if fault.What == "" || fault.Expected == "" || fault.Mend == "" || strings.Contains(fault.Error(), "\n") {
		t.Fatalf("%q: incomplete: %v", data, fault)
	}
	if !utf8.ValidString(fault.Error()) || !wellFormed(p.Pointer) {
		t.Fatalf("%q: %q at %q", data, fault.Error(), p.Pointer)
	}
	if e := p.Excerpt(60); e.From >= e.To {
		t.Fatalf("%q: excerpt %+v", data, e)
	}
	if !json.Valid(data) {
		return
	}
	for _, reason := range []string{"second time", "number too long", "larger than", "deep", "values in one file", "not UTF-8", "at its top", `an escape \u`} {
		if strings.Contains(fault.What, reason) {
			return
		}
	}
	t.Fatalf("%q is JSON and is refused: %v", data, fault)
}

func FuzzParse(f *testing.F) {
	for _, group := range [][]lexical{punctuation, textFaults, numberFaults, endings} {
		for _, seed := range group {
			f.Add([]byte(seed.text))
		}
	}
	for _, seed := range []string{sample, rfc6901, rfc8259Object} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		root := checkParse(t, data)
		if root == nil {
			return
		}
		walk(root, func(n *Node) {
			if root.At(n.Pointer()) != n {
				t.Fatalf("%q: %q does not lead back", data, n.Pointer())
			}
		})
		if !json.Valid([]byte(root.Compact())) {
			t.Fatalf("%q: its compact form %s is no JSON", data, root.Compact())
		}
	})
}

// Parsing must not slow down with the number of members of one object; a
// slip would make this test last for minutes instead of a moment.
func TestVeryManyMembers(t *testing.T) {
	const size = 200_000
	var b strings.Builder
	for i := range size {
		fmt.Fprintf(&b, `,"k%d":0`, i)
	}
	root := parsed(t, "{"+b.String()[1:]+"}")
	for i := range size {
		if root.Member(fmt.Sprintf("k%d", i)) == nil {
			t.Fatalf("k%d is lost", i)
		}
	}
}
