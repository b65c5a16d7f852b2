package code

import (
	"errors"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/unit"
)

// TestFaults damages the good profile in one place and holds the whole message:
// where, what, what was expected, how to mend it. In the file each edit stands
// at the beginning of a line and its faults are indented below it.
func TestFaults(t *testing.T) {
	const path = "testdata/faults.txt"
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var got strings.Builder
	for line := range strings.Lines(string(data)) {
		if strings.HasPrefix(line, "    ") {
			continue
		}
		p, faults := Load("mine.json", edited(t, mine(t), line))
		if p != nil || faults == nil {
			t.Errorf("accepted: %s", line)
		}
		got.WriteString(line)
		for fault := range strings.Lines(faults.Error() + "\n") {
			got.WriteString("    " + fault)
		}
	}
	if *update {
		if err := os.WriteFile(path, []byte(got.String()), 0o666); err != nil {
			t.Fatal(err)
		}
		return
	}
	if diff := cmp.Diff(string(data), got.String()); diff != "" {
		t.Error(diff)
	}
}

// TestFaultsOfUnits holds that what package unit has against a text reaches the
// reader, at the text's own place.
func TestFaultsOfUnits(t *testing.T) {
	_, area := unit.ParseKind(unit.KindArea, "1 m")
	_, month := unit.ParseDate("2010-13")
	_, slip := unit.ParseKind(unit.KindLength, "24 inch")
	why := func(err error) *unit.ParseError {
		var refused *unit.ParseError
		if !errors.As(err, &refused) {
			t.Fatalf("not refused: %v", err)
		}
		return refused
	}
	cases := []struct{ edit, want string }{
		{`/entries/locker.low-vent-area/rule = {"fixed": "1 m"}`,
			`mine.json:17:25: "1 m" is no area: ` + why(area).Why + "; expected a number with one of the units " + unit.KindArea.Accepted()},
		{`/entries/locker.low-vent-area/from = "2010-13"`, `mine.json:15:15: "2010-13" is no date: ` + why(month).Why},
		{`/entries/clearance.above/rule/fixed = "24 inch"`,
			`mine.json:42:25: "24 inch" is no length: ` + why(slip).Why + "; expected a number with one of the units " + unit.KindLength.Accepted() + `; mend: write "` + why(slip).Try + `"`},
	}
	for _, c := range cases {
		_, faults := Load("mine.json", edited(t, mine(t), c.edit))
		if got := faults.Error(); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.edit, got, c.want)
		}
	}
}
