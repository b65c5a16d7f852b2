package source

import "testing"

func TestPlaceLinesAndColumns(t *testing.T) {
	f := NewFile("a.json", []byte("{\"é\": [1,\r\n 22]}\n"))
	tests := []struct {
		name                             string
		span                             Span
		line, column, endLine, endColumn int
		text                             string
	}{
		{"a name", Span{1, 5}, 1, 2, 1, 5, "a.json:1:2"},
		{"over two lines", Span{7, 16}, 1, 7, 2, 5, "a.json:1:7"},
		{"second line", Span{13, 15}, 2, 2, 2, 4, "a.json:2:2"},
		{"nothing wide", Span{13, 13}, 2, 2, 2, 2, "a.json:2:2"},
		{"end of the file", Span{18, 18}, 3, 1, 3, 1, "a.json:3:1"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := Place{File: f, Span: test.span}
			if p.Line() != test.line || p.Column() != test.column || p.EndLine() != test.endLine || p.EndColumn() != test.endColumn {
				t.Errorf("from %d:%d to %d:%d", p.Line(), p.Column(), p.EndLine(), p.EndColumn())
			}
			if p.String() != test.text || p.IsZero() {
				t.Errorf("%q, zero: %v", p, p.IsZero())
			}
		})
	}
}

func TestPlacesWithoutALine(t *testing.T) {
	if p := (Place{}); !p.IsZero() || p.String() != "" || p.Line() != 0 || p.EndColumn() != 0 || p.Excerpt(80) != (Excerpt{}) {
		t.Errorf("the zero place is %q", p)
	}
	p := Place{File: unreadFile("gone.json")}
	if p.IsZero() || p.String() != "gone.json" || p.Line() != 0 || p.Column() != 0 || p.Excerpt(80) != (Excerpt{}) {
		t.Errorf("a place in an unread file is %q", p)
	}
}

func TestPlaceNamesCannotDriveATerminal(t *testing.T) {
	p := Place{File: NewFile("a\x1b[2J\u202e\n.json", []byte("{}"))}
	if got, want := p.String(), "a\ufffd[2J\ufffd\ufffd.json:1:1"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
