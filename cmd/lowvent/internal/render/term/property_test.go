package term

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

func written(t interface{ Fatal(...any) }, run *report.Run, o Options) string {
	var out bytes.Buffer
	if err := Write(&out, run, o); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// flat draws all spaces and line ends together.
func flat(s string) string { return strings.Join(strings.Fields(s), " ") }

func TestAnyReport(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run := anyRun().Draw(t, "run")
		o := Options{Width: rapid.IntRange(40, 220).Draw(t, "width"),
			Excerpt: line(rapid.SampledFrom([]string{`"gross": "20 cm2",`, strings.Repeat("廚房", 80), strings.Repeat("x", 400)}).Draw(t, "line"))}
		got := written(t, run, o)
		width := min(max(o.Width, text.Narrowest), text.Widest)
		for one := range strings.SplitSeq(strings.TrimSuffix(got, "\n"), "\n") {
			if text.Width(one) > width {
				t.Fatalf("%d columns on a page of %d: %q", text.Width(one), width, one)
			}
			if strings.HasSuffix(one, " ") {
				t.Fatalf("a space at the end of %q", one)
			}
		}
		plain := flat(got)
		if !strings.HasPrefix(plain, flat(strings.Join(report.Cautions(), " "))) {
			t.Fatalf("the caution does not come first:\n%s", got)
		}
		if !strings.HasSuffix(plain, flat(report.KeepOff)) || !strings.Contains(plain, "Result of this file check: ") {
			t.Fatalf("the result does not come last:\n%s", got)
		}
		for _, f := range run.Files {
			for _, one := range f.Findings {
				if !strings.Contains(got, one.Check) {
					t.Fatalf("%s (%s, %s) fell silent:\n%s", one.Check, one.Outcome, one.Reason, got)
				}
			}
		}
		if strings.ContainsAny(got, "\x1b\u202e\u200b") {
			t.Fatalf("what a file says reaches the terminal as a command: %q", got)
		}
	})
}

func TestColourOnlyRepeats(t *testing.T) {
	colours := regexp.MustCompile("\x1b\\[[0-9;]*m")
	rapid.Check(t, func(t *rapid.T) {
		run := anyRun().Draw(t, "run")
		plain := written(t, run, Options{Width: 80})
		painted := written(t, run, Options{Width: 80, Colour: true})
		if got := colours.ReplaceAllString(painted, ""); got != plain {
			t.Fatalf("colour changes the words:\n%s\nplain:\n%s", got, plain)
		}
	})
}

func TestWithoutExcerptsNothingElseIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run := anyRun().Draw(t, "run")
		with := written(t, run, Options{Width: 100, Excerpt: line(`"gross": "20 cm2",`)})
		without := written(t, run, Options{Width: 100})
		for one := range strings.SplitSeq(without, "\n") {
			if !strings.Contains(with, one) {
				t.Fatalf("only without excerpts: %q", one)
			}
		}
	})
}
