package text

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

const long = "Propane drains like water: what the low vent can't let out stays in the locker."

func TestPage(t *testing.T) {
	tests := []struct {
		name string
		put  func(*Page)
		want []string
	}{
		{"a paragraph is indented whole", func(p *Page) { p.Para(Plain, 4, long) }, []string{
			"    Propane drains like water: what the low vent can't let",
			"    out stays in the locker."}},
		{"an item hangs", func(p *Page) { p.Item(Plain, 2, 4, long) }, []string{
			"  Propane drains like water: what the low vent can't let out",
			"      stays in the locker."}},
		{"a field has a column for its label", func(p *Page) { p.Field(Plain, 2, "why", 8, Plain, long) }, []string{
			"  why     Propane drains like water: what the low vent can't",
			"          let out stays in the locker."}},
		{"a label that is too wide pushes to the right", func(p *Page) { p.Field(Plain, 2, "a-long-label", 8, Plain, "so it is") }, []string{
			"  a-long-label  so it is"}},
		{"a label of half a page pushes down", func(p *Page) {
			p.Field(Plain, 2, "a label that is longer than half of this page", 8, Plain, "so it is")
		}, []string{
			"  a label that is longer than half of this page",
			"          so it is"}},
		{"a field without text ends with its label", func(p *Page) { p.Field(Plain, 2, "why", 8, Plain, "") }, []string{"  why"}},
		{"a row wraps on both sides", func(p *Page) { p.Row(2, "free area of the low vents", 16, long) }, []string{
			"  free area of    Propane drains like water: what the low",
			"  the low vents   vent can't let out stays in the locker."}},
		{"a row with the longer side left", func(p *Page) { p.Row(0, "free area of the low vents", 12, "30 cm2") }, []string{
			"free area   30 cm2", "of the low", "vents"}},
		{"a marked line of a file", func(p *Page) { p.Marked("      27 | ", `"gross": "20 cm2" `, 9, 8) }, []string{
			`      27 | "gross": "20 cm2"`,
			`         |          ^^^^^^^^`}},
		{"a blank line", func(p *Page) { p.Blank() }, []string{""}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := New(Narrowest, nil)
			tt.put(p)
			if diff := cmp.Diff(strings.Join(tt.want, "\n")+"\n", p.String()); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

func TestPageKeepsToItsBounds(t *testing.T) {
	for _, tt := range []struct{ asked, got int }{{0, Narrowest}, {59, Narrowest}, {60, 60}, {80, 80}, {200, 200}, {201, Widest}, {-5, Narrowest}} {
		if got := New(tt.asked, nil).Width(); got != tt.got {
			t.Errorf("New(%d) is %d wide, want %d", tt.asked, got, tt.got)
		}
	}
}

func TestNothingIsEverWiderThanThePage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := New(rapid.IntRange(Narrowest, Widest).Draw(t, "width"), nil)
		word, label := anyText().Draw(t, "text"), anyText().Draw(t, "label")
		in := rapid.IntRange(0, 12).Draw(t, "indent")
		p.Para(Strong, in, word)
		p.Item(Plain, in, 4, word)
		p.Field(Plain, in, label, 10, Plain, word)
		p.Row(in, label, p.Width()/2, word)
		for line := range strings.SplitSeq(p.String(), "\n") {
			if Width(line) > p.Width() {
				t.Fatalf("%d columns on a page of %d: %q", Width(line), p.Width(), line)
			}
			if strings.HasSuffix(line, " ") {
				t.Fatalf("a space at the end of %q", line)
			}
		}
	})
}

func TestColoursOnlyAdd(t *testing.T) {
	put := func(p *Page) string {
		for _, style := range []Style{Plain, Strong, Danger, Warning, Caution, Notice, Mark} {
			p.Field(style, 0, "WORD", 8, style, long)
		}
		p.Marked("  1 | ", "line", 1, 2)
		return p.String()
	}
	plain, painted := put(New(80, nil)), put(New(80, Colours()))
	if plain == painted {
		t.Error("colours paint nothing")
	}
	if got := withoutColours(painted); got != plain {
		t.Errorf("colours change what is said (-plain +painted):\n%s", cmp.Diff(plain, got))
	}
}

// withoutColours takes out the terminal's commands for colour (ECMA-48 SGR).
func withoutColours(s string) string {
	for {
		from := strings.Index(s, "\x1b[")
		if from < 0 {
			return s
		}
		s = s[:from] + s[from+strings.IndexByte(s[from:], 'm')+1:]
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("no room on the disk") }

func TestWriteToTellsOfItsWriter(t *testing.T) {
	p := New(80, nil)
	p.Para(Plain, 0, "text")
	if _, err := p.WriteTo(broken{}); err == nil {
		t.Error("an error of the writer was lost")
	}
	var out strings.Builder
	if n, err := p.WriteTo(&out); err != nil || n != 5 || out.String() != "text\n" {
		t.Errorf("WriteTo gave %d, %v and %q", n, err, out.String())
	}
}
