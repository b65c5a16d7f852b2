package source

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// shown gives an excerpt and its underline as a terminal would.
func shown(e Excerpt) string {
	return e.Text + "\n" + strings.Repeat(" ", e.From) + strings.Repeat("^", e.To-e.From)
}

const longLine = `{"cylinders": [{"id": "left", "capacity": "11 kg", "valve": "G.12"}, {"id": "right", "capacity": "5 kg"}]}`

func TestExcerpt(t *testing.T) {
	const (
		esc  = "{\"a\":\t\"x\x1b[31m\u202e\u200b\"}"
		wide = `{"наклон": "5 мм", "тип": "нижний", "имя": "Ящик"}`
	)
	tests := []struct {
		name, text, mark string
		width            int
		want             string
	}{
		{"whole line", "{\n  \"a\": 1\n}", `"a"`, 80, "  \"a\": 1\n  ^^^"},
		{"fits exactly", `{"abcdefghij": 12345}`, "12345", 21, "{\"abcdefghij\": 12345}\n               ^^^^^"},
		{"one too long", `{"abcdefghij": 123456}`, "123456", 21, "…abcdefghij\": 123456}\n              ^^^^^^"},
		{"start at 20", longLine, `"cylinders"`, 20, "{\"cylinders\": [{\"id…\n ^^^^^^^^^^^"},
		{"middle at 20", longLine, `"G.12"`, 20, "…lve\": \"G.12\"}, {\"i…\n       ^^^^^^"},
		{"end at 20", longLine, `"5 kg"`, 20, "…apacity\": \"5 kg\"}]}\n           ^^^^^^"},
		{"middle at 40", longLine, `"G.12"`, 40, "…1 kg\", \"valve\": \"G.12\"}, {\"id\": \"right…\n                 ^^^^^^"},
		{"end at 40", longLine, `"5 kg"`, 40, "…, {\"id\": \"right\", \"capacity\": \"5 kg\"}]}\n                               ^^^^^^"},
		{"middle at 80", longLine, `"11 kg"`, 80, "…ders\": [{\"id\": \"left\", \"capacity\": \"11 kg\", \"valve\": \"G.12\"}, {\"id\": \"right\", …\n                                    ^^^^^^^"},
		{"whole at 200", longLine, `"11 kg"`, 200, longLine + "\n" + strings.Repeat(" ", 42) + "^^^^^^^"},
		{"mark longer than the width", longLine, longLine[15:68], 20, "…{\"id\": \"left\", \"ca…\n ^^^^^^^^^^^^^^^^^^^"},
		{"mark at the start longer than the width", longLine, longLine, 20, "{\"cylinders\": [{\"id…\n^^^^^^^^^^^^^^^^^^^^"},
		{"widths below 8 are 8", longLine, `"G.12"`, 1, "…\"G.12\"…\n ^^^^^^"},
		{"unsafe characters", esc, `"x`, 80, "{\"a\": \"x\ufffd[31m\ufffd\ufffd\"}\n      ^^"},
		{"other scripts", wide, `"нижний"`, 24, "…\"тип\": \"нижний\", \"имя\"…\n        ^^^^^^^^"},
		{"over several lines", "{\"a\": [1,\r\n2]}", "[1,\r\n2]", 80, "{\"a\": [1,\n      ^^^"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			at := strings.Index(test.text, test.mark)
			p := Place{File: NewFile("", []byte(test.text)), Span: Span{int32(at), int32(at + len(test.mark))}}
			if got := shown(p.Excerpt(test.width)); got != test.want {
				t.Errorf("got\n%s\nwant\n%s", got, test.want)
			}
		})
	}
}

func TestExcerptOfNothingWide(t *testing.T) {
	tests := []struct {
		name, text string
		offset     int32
		want       Excerpt
	}{
		{"empty file", "", 0, Excerpt{1, " ", 0, 1}},
		{"before a character", "{}", 1, Excerpt{1, "{}", 1, 2}},
		{"end of the file", "{", 1, Excerpt{1, "{ ", 1, 2}},
		{"end of a line", "{\n}", 1, Excerpt{1, "{ ", 1, 2}},
		{"on LF of CR LF", "{\r\n}", 2, Excerpt{1, "{ ", 1, 2}},
		{"after the last line end", "{}\n", 3, Excerpt{2, " ", 0, 1}},
		{"end of a full line", "{12345678}", 10, Excerpt{1, "…45678} ", 7, 8}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := Place{File: NewFile("", []byte(test.text)), Span: Span{test.offset, test.offset}}
			if got := p.Excerpt(8); got != test.want {
				t.Errorf("got %+v, want %+v", got, test.want)
			}
		})
	}
}

func TestExcerptAlwaysHolds(t *testing.T) {
	piece := rapid.SampledFrom([]string{"a", "é", "€", "𝄞", " ", "\t", "\x00", "\x1b", "\u0085", "\u202e", "\u2028", "\ufeff", "\xff", "\n", "\r", "abcdefghijklmno"})
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOfN(piece, 0, 60).Draw(t, "pieces"), "")
		start := rapid.IntRange(0, len(text)).Draw(t, "start")
		end := rapid.IntRange(start, len(text)).Draw(t, "end")
		width := rapid.IntRange(minExcerpt, 200).Draw(t, "width")
		e := Place{File: NewFile("", []byte(text)), Span: Span{int32(start), int32(end)}}.Excerpt(width)
		n := utf8.RuneCountInString(e.Text)
		if n > width || e.From < 0 || e.From >= e.To || e.To > n {
			t.Fatalf("width %d: %+v of %d", width, e, n)
		}
		for _, r := range e.Text {
			if r != ' ' && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || r == '\u2028') {
				t.Fatalf("%q gets through", r)
			}
		}
		if !utf8.ValidString(e.Text) {
			t.Fatalf("not UTF-8: %q", e.Text)
		}
	})
}

// What is underlined is what the place spans, when it fits.
func TestExcerptUnderlinesThePlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.RuneFrom([]rune("abé€𝄞 ")), 1, 120, -1).Draw(t, "text")
		runes := []rune(text)
		from := rapid.IntRange(0, len(runes)-1).Draw(t, "from")
		to := rapid.IntRange(from+1, min(len(runes), from+10)).Draw(t, "to")
		mark := string(runes[from:to])
		start := len(string(runes[:from]))
		e := Place{File: NewFile("", []byte(text)), Span: Span{int32(start), int32(start + len(mark))}}.Excerpt(rapid.IntRange(12, 150).Draw(t, "width"))
		if got := string([]rune(e.Text)[e.From:e.To]); got != mark {
			t.Fatalf("%q instead of %q in %q", got, mark, e.Text)
		}
	})
}
