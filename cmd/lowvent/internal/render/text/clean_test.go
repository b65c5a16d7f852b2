package text

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func TestCleanKeepsTheTerminalItsOwn(t *testing.T) {
	tests := []struct{ name, in, want string }{
		{"plain", "vent low", "vent low"},
		{"letters of many scripts stay", "Küche, 廚房, ≤ 30 cm²", "Küche, 廚房, ≤ 30 cm²"},
		{"a tab and line ends become spaces", "a\tb\nc\r\nd", "a b c  d"},
		{"the escape that begins a command", "\x1b[2Jgone", "�[2Jgone"},
		{"a bell, a backspace, a delete", "\a\b\x7f", "���"},
		{"right-to-left override", "safe\u202eevas", "safe�evas"},
		{"zero-width space", "a\u200bb", "a�b"},
		{"line separator", "a\u2028b", "a�b"},
		{"no UTF-8", "a\xffb", "a�b"},
		{"empty", "", ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Clean(tt.in); got != tt.want {
				t.Errorf("Clean(%q) = %q, want %q", tt.in, got, tt.want)
			}
		})
	}
}

func TestCleanLeavesNothingThatDrivesATerminal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := anyText().Draw(t, "in")
		got := Clean(in)
		if !utf8.ValidString(got) {
			t.Fatalf("Clean(%q) is no UTF-8: %q", in, got)
		}
		if i := strings.IndexFunc(got, func(r rune) bool { return unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp) }); i >= 0 {
			t.Fatalf("Clean(%q) = %q keeps a control or format character at byte %d", in, got, i)
		}
		if Clean(got) != got {
			t.Fatalf("Clean is not settled: %q, then %q", got, Clean(got))
		}
	})
}

func TestWidth(t *testing.T) {
	tests := []struct {
		in   string
		want int
	}{
		{"", 0}, {"vent", 4}, {"Küche", 5}, {"廚房", 4}, {"e\u0301", 1}, {"�", 1}, {"…", 1},
	}
	for _, tt := range tests {
		if got := Width(tt.in); got != tt.want {
			t.Errorf("Width(%q) = %d, want %d", tt.in, got, tt.want)
		}
	}
}

// anyText draws what a file could hold: words, long words, wide characters,
// marks that combine, controls, and bytes that are no text.
func anyText() *rapid.Generator[string] {
	piece := rapid.OneOf(
		rapid.StringMatching(`[a-z]{1,12}`),
		rapid.StringMatching(`[a-z/.:-]{30,120}`),
		rapid.SampledFrom([]string{" ", "  ", "\n", "\t", "廚房用瓦斯", "e\u0301\u0302", "❤\ufe0f", "👩\u200d🍳", "🇨🇭", "한글", "\x1b[31m", "\u202e", "\xff", "ﷺ", "க்ஷ"}),
		rapid.String(),
	)
	return rapid.Custom(func(t *rapid.T) string {
		return strings.Join(rapid.SliceOfN(piece, 0, 12).Draw(t, "pieces"), "")
	})
}
