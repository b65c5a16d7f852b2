package saying

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/report"
)

func TestJudgedBy(t *testing.T) {
	tests := []struct {
		name string
		f    report.FileReport
		want []string
		not  string
	}{
		{"none", report.FileReport{}, []string{"no code was chosen"}, "yardstick"},
		{"one that governs", report.FileReport{Code: &report.Code{ID: "x", Title: "X", Governs: true}}, []string{"X [x]"}, "yardstick"},
		{"a borrowed one", report.FileReport{Code: &report.Code{ID: "x", Title: "X", Borrowed: "it is for boats"}}, []string{"borrowed yardstick", "it is for boats"}, "verified"},
		{"one without a reason", report.FileReport{Code: &report.Code{ID: "x", Title: "X"}}, []string{"borrowed yardstick", "not shown to fit"}, "verified"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := JudgedBy(&tt.f)
			for _, want := range tt.want {
				if !strings.Contains(got, want) {
					t.Errorf("%q is missing in %q", want, got)
				}
			}
			if strings.Contains(got, tt.not) {
				t.Errorf("%q says %q", got, tt.not)
			}
		})
	}
}

func TestUnverified(t *testing.T) {
	overlay := &report.Overlay{File: "county.json", Title: "County", Limits: []report.LocalLimit{
		{Term: "a-b", Says: "at least 1 m", Document: "Bylaw 3", State: report.LocalInForce, Loosens: true, By: "N. N.", Licence: "7", Until: "2027", Reason: "old stock"},
		{Term: "c-d", State: report.LocalInForce}, {Term: "e-f", State: report.LocalExpired, Loosens: true}}}
	tests := []struct {
		name string
		f    report.FileReport
		want []string
	}{
		{"nothing", report.FileReport{Code: &report.Code{ID: "x"}}, nil},
		{"no code", report.FileReport{}, nil},
		{"the user's own code", report.FileReport{File: "l.json", Code: &report.Code{ID: "x", File: "my.json"}},
			[]string{"Not verified by anybody: the code that l.json was judged by was read from my.json, a file of the user's own."}},
		{"local rules", report.FileReport{File: "l.json", Overlay: overlay},
			[]string{"Not verified by anybody: l.json was judged by local rules as well, County from county.json.",
				"Not verified by anybody: a local rule that may ask less than the code: a-b: at least 1 m (Bylaw 3); by N. N., licence 7, until 2027: old stock."}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff(tt.want, Unverified(&tt.f)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestChosenCode(t *testing.T) {
	chosen := &report.Code{ID: "x", Title: "X", Edition: "2021"}
	tests := []struct {
		name string
		f    report.FileReport
		want string
	}{
		{"chosen", report.FileReport{Code: chosen, Candidates: []report.Code{{ID: "y"}}}, "X [x]; 2021"},
		{"some would fit", report.FileReport{Candidates: []report.Code{{ID: "y", Title: "Y"}, {ID: "z", Title: "Z"}}}, "fits --code y (Y), --code z (Z); or name"},
		{"none would fit", report.FileReport{}, "No built-in code is shown to be the law"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := ChosenCode(&tt.f); !strings.Contains(got, tt.want) {
				t.Errorf("%q is missing in %q", tt.want, got)
			}
		})
	}
}

func TestOfAnOverlayOnlyWhatIsHeededIsCounted(t *testing.T) {
	got := Overlay(&report.Overlay{Title: "County", Limits: []report.LocalLimit{
		{State: report.LocalInForce, Loosens: true}, {State: report.LocalExpired, Loosens: true}, {State: report.LocalInForce}}})
	if want := "County: 2 local limits heeded of 3, of which 1 may ask less than the code; nobody has verified them"; got != want {
		t.Errorf("got %q\nwant %q", got, want)
	}
}
