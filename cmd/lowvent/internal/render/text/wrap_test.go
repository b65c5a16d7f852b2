package text

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestWrap(t *testing.T) {
	tests := []struct {
		name        string
		in          string
		first, rest int
		want        []string
	}{
		{"nothing is one empty line", "", 10, 10, []string{""}},
		{"spaces alone are nothing", "   ", 10, 10, []string{""}},
		{"just fits", "keep it off", 11, 11, []string{"keep it off"}},
		{"one column too few", "keep it off", 10, 10, []string{"keep it", "off"}},
		{"the first line is shorter", "keep it off now", 4, 11, []string{"keep", "it off now"}},
		{"the first line is too short for the first word", "keep it", 2, 10, []string{"", "keep it"}},
		{"spaces are drawn together", "keep  it\n off", 20, 20, []string{"keep it off"}},
		{"a path breaks at a stroke", "layouts/willow/bus.json", 12, 12, []string{"layouts/", "willow/", "bus.json"}},
		{"a word without a good place breaks anywhere", "abcdefghij", 4, 4, []string{"abcd", "efgh", "ij"}},
		{"wide characters take two", "廚房用瓦斯", 4, 4, []string{"廚房", "用瓦", "斯"}},
		{"widths below two are two", "廚房", 0, -3, []string{"廚", "房"}},
		{"a control is shown", "a\x1bb", 9, 9, []string{"a�b"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff(tt.want, Wrap(tt.in, tt.first, tt.rest)); diff != "" {
				t.Errorf("Wrap(%q, %d, %d) (-want +got):\n%s", tt.in, tt.first, tt.rest, diff)
			}
		})
	}
}

func TestWrapKeepsEveryLetterAndTheWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := anyText().Draw(t, "in")
		first, rest := rapid.IntRange(2, 60).Draw(t, "first"), rapid.IntRange(2, 60).Draw(t, "rest")
		lines := Wrap(in, first, rest)
		for i, line := range lines {
			room := rest
			if i == 0 {
				room = first
			}
			if Width(line) > room {
				t.Fatalf("line %d of Wrap(%q, %d, %d) takes %d columns: %q", i, in, first, rest, Width(line), line)
			}
			if strings.TrimSpace(line) != line {
				t.Fatalf("line %d begins or ends in a space: %q", i, line)
			}
		}
		if got, want := letters(strings.Join(lines, "")), letters(Clean(in)); got != want {
			t.Fatalf("Wrap(%q) changed what is said:\n got %q\nwant %q", in, got, want)
		}
	})
}

func letters(s string) string { return strings.Join(strings.Fields(s), "") }

func FuzzWrap(f *testing.F) {
	f.Add("In many places only a licensed person may cut pipe.", 20, 30)
	f.Add("/lockers/gas/vents/low/gross", 6, 9)
	f.Add("\xff\x1b[0m廚房 e\u0301", 3, 4)
	f.Fuzz(func(t *testing.T, in string, first, rest int) {
		first, rest = min(max(first, 2), 300), min(max(rest, 2), 300)
		for i, line := range Wrap(in, first, rest) {
			room := rest
			if i == 0 {
				room = first
			}
			if Width(line) > room {
				t.Fatalf("line %d of Wrap(%q, %d, %d) takes %d columns: %q", i, in, first, rest, Width(line), line)
			}
		}
	})
}
