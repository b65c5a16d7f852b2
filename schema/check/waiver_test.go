package check

import (
	"fmt"
	"testing"

	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

func waiver(id, check, subject, until string) string {
	return fmt.Sprintf(`/waivers/%s = {"check": %q, "subject": %q, "reason": "panel comes off in May", "decidedBy": "an invented fitter", "until": %q}`, id, check, subject, until)
}

// TestWaivers: in force, on its last day, expired, of what is within, of what is
// not applicable, of another subject, of no check, of a check that is never
// waived, and of something not known. None changes an outcome.
func TestWaivers(t *testing.T) {
	never := asks(standing1)
	never.ID, never.NeverWaive = "tiny.never", true
	alsoNever := never
	alsoNever.ID = "tiny.also-never"
	for _, c := range []struct {
		name, check, subject, until string
		edits                       []string
		state                       string
	}{
		{"in force", "tiny.check", "cylinders/a", "2026-12-31", []string{"/cylinders/a/upright = false"}, report.WaiverInForce},
		{"on its last day", "tiny.check", "cylinders/a", "2026-11-25", []string{"/cylinders/a/upright = false"}, report.WaiverInForce},
		{"to the end of a month", "tiny.check", "cylinders/a", "2026-11", []string{"/cylinders/a/upright = false"}, report.WaiverInForce},
		{"to the end of a year", "tiny.check", "cylinders/a", "2026", []string{"/cylinders/a/upright = false"}, report.WaiverInForce},
		{"expired yesterday", "tiny.check", "cylinders/a", "2026-11-24", []string{"/cylinders/a/upright = false"}, report.WaiverExpired},
		{"expired last month", "tiny.check", "cylinders/a", "2026-10", []string{"/cylinders/a/upright = false"}, report.WaiverExpired},
		{"expired and unused", "tiny.check", "cylinders/a", "2025", nil, report.WaiverExpired},
		{"not known", "tiny.check", "cylinders/a", "2026-12-31", []string{"delete /cylinders/a/upright"}, report.WaiverInForce},
		{"within", "tiny.check", "cylinders/a", "2026-12-31", nil, report.WaiverUnused},
		{"another subject", "tiny.check", "cylinders/b", "2026-12-31", []string{"/cylinders/a/upright = false"}, report.WaiverUnused},
		{"no such check", "tiny.chekc", "cylinders/a", "2026-12-31", []string{"/cylinders/a/upright = false"}, report.WaiverUnused},
		{"never waived", "tiny.never", "cylinders/a", "2026-12-31", []string{"/cylinders/a/upright = false"}, report.WaiverNotAllowed},
		{"never waived, expired", "tiny.never", "cylinders/a", "2020", []string{"/cylinders/a/upright = false"}, report.WaiverNotAllowed},
		{"never waived, the first of all", "tiny.also-never", "cylinders/a", "2026-12-31", []string{"/cylinders/a/upright = false"}, report.WaiverNotAllowed},
	} {
		t.Run(c.name, func(t *testing.T) {
			checks := []Check{alsoNever, asks(standing1), never}
			bare := run1(t, load(t, c.edits...), books(t, stand), checks...)
			out := run1(t, load(t, append(c.edits, waiver("w", c.check, c.subject, c.until))...), books(t, stand), checks...)
			if len(out.Waivers) != 1 || out.Waivers[0].State != c.state {
				t.Fatalf("%+v, want %s", out.Waivers, c.state)
			}
			w := out.Waivers[0]
			if w.ID != "w" || w.Check != c.check || w.Subject != "/"+c.subject || w.Reason == "" || w.DecidedBy == "" || w.Until != c.until || w.Place.Pointer != "/waivers/w" {
				t.Errorf("%+v", w)
			}
			for i, f := range out.Findings {
				if f.Outcome != bare.Findings[i].Outcome || f.Check != bare.Findings[i].Check || f.Subject != bare.Findings[i].Subject {
					t.Errorf("the waiver changed %s %s from %s to %s", f.Check, f.Subject, bare.Findings[i].Outcome, f.Outcome)
				}
				waived := f.Check == c.check && f.Subject == "/"+c.subject && c.state == report.WaiverInForce
				if waived != (f.Waiver != nil) {
					t.Errorf("%s %s carries the waiver %+v", f.Check, f.Subject, f.Waiver)
				}
				if waived && f.Waiver.ID != "w" {
					t.Errorf("%+v", f.Waiver)
				}
			}
		})
	}
}

// TestWaiversDoNotDependOnTheDayTheyWereWritten: the same file, judged later.
func TestWaiversExpire(t *testing.T) {
	l := load(t, "/cylinders/a/upright = false", waiver("w", "tiny.check", "cylinders/a", "2027-02"))
	r := &run{layout: l, options: Options{}}
	checks := []Check{asks(standing1)}
	findings := run1(t, l, books(t, stand), checks...).Findings
	for day, want := range map[unit.Date]string{
		{Year: 2026, Month: 1, Day: 1}:  report.WaiverInForce,
		{Year: 2027, Month: 2, Day: 28}: report.WaiverInForce,
		{Year: 2027, Month: 3, Day: 1}:  report.WaiverExpired,
	} {
		r.options.On = day
		if got := r.waive(checks, findings)[0].State; got != want {
			t.Errorf("on %s: %s, want %s", day, got, want)
		}
	}
}

// TestSeveralWaivers are told in the order of their names, each with its state.
func TestSeveralWaivers(t *testing.T) {
	out := run1(t, load(t, "/cylinders/a/upright = false",
		waiver("z", "tiny.check", "cylinders/a", "2027"), waiver("m", "tiny.check", "cylinders/b", "2027"), waiver("c", "tiny.check", "cylinders/a", "2020")),
		books(t, stand), asks(standing1))
	var got []string
	for _, w := range out.Waivers {
		got = append(got, w.ID+" "+w.State)
	}
	if want := []string{"c expired", "m unused", "z in force"}; fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("%v, want %v", got, want)
	}
	if n := report.Count(out.Findings, report.Danger); n.Waived != 1 || n.Danger != 1 || n.AtOrAbove != 1 {
		t.Errorf("%+v", n)
	}
}
