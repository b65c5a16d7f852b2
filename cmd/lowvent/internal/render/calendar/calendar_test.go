package calendar

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

var of = Of{Title: "Sorrel; a bus, (invented)", On: "2026-11-25", Program: "lowvent test"}

func entries() []Entry {
	return []Entry{
		{On: unit.Date{Year: 2026, Month: 12, Day: 1}, Written: "2026-12", What: "alarm gas is to be replaced", Subject: "/alarms/gas/replaceBy"},
		{On: unit.Date{Year: 2027, Month: 3, Day: 31}, Written: "2027-03-31", What: `waiver "shelf"; a\b, c ends`, Subject: "/waivers/shelf/until"},
		{On: unit.Date{Year: 2036, Month: 1, Day: 1}, Written: "2036", What: "cylinder A is to be requalified", Subject: "/cylinders/A/requalifiedBy"},
	}
}

func written(t interface{ Fatal(...any) }, of Of, all []Entry) string {
	var out strings.Builder
	if err := Write(&out, of, all); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func read(t interface{ Fatal(...any) }, of Of, all []Entry) *component {
	c, err := decoded(written(t, of, all))
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestRequired holds which properties each component has, how often, and of what form.
func TestRequired(t *testing.T) {
	const words = `^.+$`
	calendar := read(t, of, entries())
	event := calendar.inside[0]
	tests := []struct {
		section  string // of RFC 5545
		in       *component
		property string
		form     string
	}{
		{"3.6 with 3.7.4: once, and the version of this standard", calendar, "VERSION", `^2\.0$`},
		{"3.6 with 3.7.3: once, an identifier that is the only one of its kind", calendar, "PRODID", `^-//lowvent\.example//.*//EN$`},
		{"3.6.1 with 3.8.4.7: once", event, "UID", `^[0-9a-f]{64}@lowvent\.example$`},
		{"3.6.1 with 3.8.7.2: once, in UTC", event, "DTSTAMP", `^20261125T000000Z$`},
		{"3.6.1 with 3.8.2.4: once where no METHOD stands", event, "DTSTART", `^\d{8}$`},
		{"3.6.1 with 3.8.1.12: at most once", event, "SUMMARY", words},
		{"3.6.1 with 3.8.1.5: at most once", event, "DESCRIPTION", words},
		{"3.6.1 with 3.8.2.7: a reminder makes nobody busy", event, "TRANSP", `^TRANSPARENT$`},
		{"3.6.6: once", event.inside[0], "ACTION", `^DISPLAY$`},
		{"3.6.6: once; 3.3.6: a duration before the start", event.inside[0], "TRIGGER", `^-P30D$`},
		{"3.6.6: once where the action is DISPLAY", event.inside[0], "DESCRIPTION", words},
	}
	for _, tt := range tests {
		all := tt.in.values(tt.property)
		if len(all) != 1 || !regexp.MustCompile(tt.form).MatchString(all[0]) {
			t.Errorf("%s of %s is %q; RFC 5545, %s", tt.property, tt.in.name, all, tt.section)
		}
	}
}

// TestComponents holds what stands in what (RFC 5545, 3.4, 3.6, 3.6.1 and 3.6.6).
func TestComponents(t *testing.T) {
	calendar := read(t, of, entries())
	if calendar.name != "VCALENDAR" || len(calendar.inside) != len(entries()) {
		t.Fatalf("%s with %d components", calendar.name, len(calendar.inside))
	}
	for _, event := range calendar.inside {
		if event.name != "VEVENT" || len(event.inside) != 1 || event.inside[0].name != "VALARM" || len(event.inside[0].inside) != 0 {
			t.Errorf("%s holds %v", event.name, event.inside)
		}
		for _, p := range event.properties {
			if want := map[string]string{"DTSTART": ";VALUE=DATE"}[p.name]; p.parameters != want {
				t.Errorf("%s has the parameters %q, want %q (3.8.2.4: a day without a time says VALUE=DATE)", p.name, p.parameters, want)
			}
		}
	}
}

// TestEntriesComeBack holds that nothing of an entry is lost or added on the way.
func TestEntriesComeBack(t *testing.T) {
	calendar := read(t, of, entries())
	for i, want := range entries() {
		event := calendar.inside[i]
		if got, wantDay := event.text("DTSTART"), fmt.Sprintf("%04d%02d%02d", want.On.Year, want.On.Month, want.On.Day); got != wantDay {
			t.Errorf("the day is %s, want %s", got, wantDay)
		}
		if got := event.text("SUMMARY"); got != want.What+" (reminder, no proof)" {
			t.Errorf("the summary is %q", got)
		}
		for _, part := range []string{of.Title, want.Written, want.Subject, "no proof that anything is in order", report.KeepOff} {
			if !strings.Contains(event.text("DESCRIPTION"), part) {
				t.Errorf("%q is not told in %q", part, event.text("DESCRIPTION"))
			}
		}
		if got := event.inside[0].text("DESCRIPTION"); !strings.Contains(got, "no proof") {
			t.Errorf("the reminder rings with %q", got)
		}
	}
}

// TestEmpty: a calendar has one component at least (RFC 5545, 3.6), and one without any
// would read as if nothing ran out.
func TestEmpty(t *testing.T) {
	calendar := read(t, of, nil)
	if len(calendar.inside) != 1 {
		t.Fatalf("%d components", len(calendar.inside))
	}
	event := calendar.inside[0]
	if event.text("DTSTART") != "20261125" || event.text("SUMMARY") != "The file states no date that falls due: not known (reminder, no proof)" {
		t.Errorf("on %s: %s", event.text("DTSTART"), event.text("SUMMARY"))
	}
	if !strings.HasSuffix(event.text("DESCRIPTION"), proof) {
		t.Errorf("it says %q", event.text("DESCRIPTION"))
	}
}

// TestUID holds that an entry keeps its UID whatever stands around it, and that each has
// its own (RFC 5545, 3.8.4.7: globally unique, and the same for the same entry again).
func TestUID(t *testing.T) {
	uids := func(of Of, all []Entry) map[string]string {
		found := map[string]string{}
		for _, event := range read(t, of, all).inside {
			_, what, overdue := strings.Cut(event.text("SUMMARY"), ": ")
			if !overdue {
				what = event.text("SUMMARY")
			}
			found[what] = event.text("UID")
		}
		return found
	}
	first := uids(of, entries())
	turned := entries()
	slices.Reverse(turned)
	later := of
	later.On, later.Program = "2027-01-01", "lowvent later"
	for name, again := range map[string]map[string]string{"reversed": uids(of, turned), "another day": uids(later, entries()), "fewer": uids(of, entries()[1:])} {
		for what, uid := range again {
			if first[what] != uid {
				t.Errorf("%s: the UID of %s was %s and is %s", name, what, first[what], uid)
			}
		}
	}
	seen := map[string]bool{}
	other := of
	other.Title = "Teal"
	for _, all := range []map[string]string{first, uids(other, entries())} {
		for _, uid := range all {
			if seen[uid] {
				t.Errorf("the UID %s comes twice", uid)
			}
			seen[uid] = true
		}
	}
}

// TestOverdue: what is past stands on the day judged, where it reminds, and says since when.
func TestOverdue(t *testing.T) {
	event := read(t, of, []Entry{{On: unit.Date{Year: 2024, Month: 3, Day: 1}, Written: "2024-03", What: "alarm gas is to be replaced", Subject: "/alarms/gas/replaceBy"}}).inside[0]
	if event.text("DTSTART") != strings.ReplaceAll(of.On, "-", "") || !strings.HasPrefix(event.text("SUMMARY"), "OVERDUE since 2024-03: alarm gas") {
		t.Errorf("on %s: %s", event.text("DTSTART"), event.text("SUMMARY"))
	}
}

// TestSameBytes: no clock and no order but the caller's.
func TestSameBytes(t *testing.T) {
	if a, b := written(t, of, entries()), written(t, of, entries()); a != b {
		t.Error("two runs differ")
	}
}

// TestAnyText writes any text at all: the stream keeps the grammar, and each text comes
// back as it can be shown.
func TestAnyText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		of := Of{Title: rapid.String().Draw(t, "title"), On: "2026-11-25", Program: rapid.String().Draw(t, "program")}
		var all []Entry
		for range rapid.IntRange(1, 4).Draw(t, "entries") {
			all = append(all, Entry{On: unit.Date{Year: rapid.IntRange(1900, 2999).Draw(t, "year"), Month: 2, Day: 28},
				Written: rapid.String().Draw(t, "written"), What: rapid.String().Draw(t, "what"), Subject: rapid.String().Draw(t, "subject")})
		}
		for i, event := range read(t, of, all).inside {
			what := all[i].What
			if all[i].On.String() < of.On {
				what = "OVERDUE since " + all[i].Written + ": " + what
			}
			if got, want := event.text("SUMMARY"), text.Clean(what+" (reminder, no proof)"); got != want {
				t.Fatalf("%q came back as %q", want, got)
			}
			if !strings.HasPrefix(event.text("DESCRIPTION"), text.Clean(of.Title)) {
				t.Fatalf("%q came back as %q", of.Title, event.text("DESCRIPTION"))
			}
		}
	})
}

// TestFolding puts wide characters over every place where a line could be cut.
func TestFolding(t *testing.T) {
	for _, wide := range []string{"é", "€", "😀", "a\u0301"} {
		for before := range 90 {
			what := strings.Repeat("x", before) + strings.Repeat(wide, 60)
			c := read(t, of, []Entry{{On: unit.Date{Year: 2030, Month: 1, Day: 1}, What: what, Written: "2030", Subject: "/a"}})
			if got := c.inside[0].text("SUMMARY"); got != what+" (reminder, no proof)" {
				t.Fatalf("%d x and %s came back as %q", before, wide, got)
			}
		}
	}
}

// TestReader holds that the reader of these tests refuses what the standard does.
func TestReader(t *testing.T) {
	const good = "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nEND:VCALENDAR\r\n"
	if _, err := decoded(good); err != nil {
		t.Fatal(err)
	}
	for name, bad := range map[string]string{
		"line feeds alone":  strings.ReplaceAll(good, "\r\n", "\n"),
		"no last line end":  strings.TrimSuffix(good, "\r\n"),
		"a long line":       strings.Replace(good, "2.0", strings.Repeat("2", 80), 1),
		"half a character":  strings.Replace(good, "2.0", "\xc3\r\n \xa9", 1),
		"no name":           strings.Replace(good, "VERSION:", "version ", 1),
		"a control":         strings.Replace(good, "2.0", "2\x1b", 1),
		"never ended":       strings.Replace(good, "END:VCALENDAR\r\n", "", 1),
		"ended by another":  strings.Replace(good, "END:VCALENDAR", "END:VEVENT", 1),
		"ended twice":       good + "END:VCALENDAR\r\n",
		"two of them":       good + good,
		"a property before": "VERSION:2.0\r\n" + good,
	} {
		if _, err := decoded(bad); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
	if got := unquoted(`a\, b\; c\\n\nd,e`); got != "a, b; c\\n\nd<bare ,>e" {
		t.Errorf("escapes are read as %q", got)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("the disk is full") }

func TestWriterError(t *testing.T) {
	if err := Write(full{}, of, entries()); err == nil || !strings.Contains(err.Error(), "the disk is full") {
		t.Errorf("the error is %v", err)
	}
}
