package check

import (
	"context"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

func reported(t *testing.T, codes code.Codes, edits ...string) report.FileReport {
	t.Helper()
	out, err := Report(context.Background(), everyOutcome(), load(t, edits...), codes, Options{On: judged}, report.Warning)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestReport carries what was found, counts it, and says whose code it was.
func TestReport(t *testing.T) {
	codes := answerBooks(t)
	out := reported(t, codes, `/title = "Tiny"`, `/dwelling = {"kind": "cabin"}`, `/where = {"country": "nz"}`, waiver("w", "tiny.0", "cylinders/a", "2027"))
	if out.File != "tiny.json" || out.Title != "Tiny" || len(out.SHA256) != 64 || len(out.Findings) != 12 || len(out.Figures) != 1 || len(out.Waivers) != 1 || out.Faults != nil {
		t.Errorf("%+v", out)
	}
	if c := out.Code; c == nil || c.ID != "invented" || c.Title != "An invented code" || c.Edition != "2026" || !c.Governs || c.Borrowed != "" {
		t.Errorf("%+v", out.Code)
	}
	if diff := cmp.Diff([]string{"Everything else"}, out.NotCovered); diff != "" || out.Candidates != nil {
		t.Error(diff, out.Candidates)
	}
	want := report.Counts{Checks: 6, Subjects: 12, Danger: 2, NotKnown: 2, Within: 4, AskFitter: 2, NotCovered: 2, Waived: 1, AtOrAbove: 4, Excused: 1}
	if diff := cmp.Diff(want, out.Counts); diff != "" {
		t.Errorf("counts (-want +got):\n%s", diff)
	}
}

// TestABorrowedYardstick is called one: a code governs only what its scope shows.
func TestABorrowedYardstick(t *testing.T) {
	for _, c := range []struct {
		edits   []string
		governs bool
	}{
		{[]string{`/dwelling = {"kind": "cabin"}`, `/where = {"country": "NZ"}`}, true},
		{[]string{`/dwelling = {"kind": "boat"}`, `/where = {"country": "NZ"}`}, false},
		{[]string{`/dwelling = {"kind": "cabin"}`, `/where = {"country": "US"}`}, false},
		{[]string{`/dwelling = {"kind": "cabin"}`}, false},
		{nil, false},
	} {
		out := reported(t, answerBooks(t), c.edits...)
		if out.Code.Governs != c.governs || (out.Code.Borrowed == "") != c.governs {
			t.Errorf("%v: %+v", c.edits, out.Code)
		}
	}
}

// TestNoCodeNamesCandidates: the codes whose scope fits are offered, none is
// chosen.
func TestNoCodeNamesCandidates(t *testing.T) {
	codes := books(t)
	fits := reported(t, codes, `/dwelling = {"kind": "manufactured-home"}`, `/where = {"country": "US", "region": "IN"}`)
	var ids []string
	for _, c := range fits.Candidates {
		ids = append(ids, c.ID)
		if !c.Governs || c.Borrowed != "" {
			t.Errorf("%+v", c)
		}
	}
	if !cmp.Equal(ids, []string{"us-mobile-structure"}) {
		t.Errorf("candidates %v: expected those that can be chosen", ids)
	}
	if fits.Code != nil || fits.NotCovered != nil {
		t.Errorf("%+v %v", fits.Code, fits.NotCovered)
	}
	if none := reported(t, codes); none.Candidates != nil {
		t.Errorf("%+v", none.Candidates)
	}
}

func TestGasNow(t *testing.T) {
	for edit, want := range map[string]string{
		`/gas = {"connected": true}`:  "the file says that gas IS CONNECTED now",
		`/gas = {"connected": false}`: "the file says that gas is not connected",
		`/gas = {}`:                   "the file does not say whether gas is connected now",
	} {
		if got := reported(t, answerBooks(t), edit).Gas; got != want {
			t.Errorf("%s: %q", edit, got)
		}
	}
}

func TestReportEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	out, err := Report(ctx, everyOutcome(), load(t), answerBooks(t), Options{On: judged}, report.Warning)
	if err == nil || out.File != "" {
		t.Errorf("%v, %+v", err, out)
	}
}

// TestFaultReport keeps every fault with its places, and judges nothing.
func TestFaultReport(t *testing.T) {
	_, faults := layout.Load(source.NewFile("bad.json", []byte(`{"format": "lowvent-layout/1",`+"\n"+` "cylinders": {"a": {"height": "tall"}}, "cylinders": {}}`)))
	if faults == nil {
		t.Fatal("the file has no fault")
	}
	out := FaultReport("bad.json", faults)
	if out.File != "bad.json" || len(out.Faults) != len(faults) || out.Findings != nil || out.Counts != (report.Counts{}) {
		t.Errorf("%+v", out)
	}
	f := out.Faults[0]
	if f.What != faults[0].What || f.Expected != faults[0].Expected || f.Mend != faults[0].Mend || len(f.Related) != len(faults[0].Related) {
		t.Errorf("%+v, want %+v", f, faults[0])
	}
	if f.Place.Line != 2 || f.Place.File != "bad.json" || f.Place.Column == 0 || f.Place.EndColumn <= f.Place.Column {
		t.Errorf("%+v", f.Place)
	}
	if len(f.Related) == 0 || f.Related[0].Line == 0 {
		t.Errorf("the first of two equal keys is not told: %+v", f.Related)
	}
}

func TestPlaceOf(t *testing.T) {
	if got := PlaceOf(source.Place{Pointer: "/x"}); got != (report.Place{Pointer: "/x"}) {
		t.Errorf("a place without a file: %+v", got)
	}
	l := load(t)
	got := PlaceOf(l.Cylinders.Get("a").Height.Spot().Place())
	if got.File != "tiny.json" || got.Line != 15 || got.EndLine != 15 || got.EndColumn-got.Column != len(`"24 in"`) || got.Pointer != "/cylinders/a/height" {
		t.Errorf("%+v", got)
	}
}
