package main

import (
	"strings"
	"testing"

	"lowvent.example/schema/source"
)

// TestLeads: what a layout can have can be set and left out; what a mistyped name would
// make up by the way is refused, with the name that may be meant.
func TestLeads(t *testing.T) {
	root, fault := source.Parse(source.NewFile("x.json", []byte(`{"format": "lowvent-layout/1", "lockers": {"side": {"vents": {"low": {"gross": "90 cm2"}}}}, "lines": {"trunk": {"route": [["1 m", "1 m", "1 m"]]}}}`)), source.DefaultLimits())
	if fault != nil {
		t.Fatal(fault)
	}
	tests := []struct {
		pointer string
		delete  bool
		says    string // "" where it leads somewhere
	}{
		{"/lockers/side/vents/low/gross", false, ""},
		{"/lockers/side/vents/low/gross", true, ""},
		{"/lockers/side/vents/low/closable", false, ""}, // a key that was left out
		{"/lockers/side/vents/low/cover/open", false, ""},
		{"/climate/coldest", false, ""},
		{"/lockers/other", false, ""}, // a thing, whole
		{"/cylinders/A", false, ""},
		{"/lockers", true, ""},
		{"/lines/trunk/route/0/2", false, ""},
		{"/lines/trunk/route/-", false, ""},
		{"/lockers/sied/vents/low/gross", false, `the file has no "sied" in /lockers; did you mean "side"?`},
		{"/lockers/side/vents/lwo/gross", false, `did you mean "low"?`},
		{"/cylinders/A/upright", false, `the file has no "A" in /cylinders`},
		{"/lockers/side/vents/low/gros", false, `there is no key "gros" in /lockers/side/vents/low; did you mean "gross"?`},
		{"/locker/side", false, `there is no key "locker" at the top of a layout; did you mean "lockers"?`},
		{"/climat/coldest", false, `did you mean "climate"?`},
		{"/format/x", false, `a layout has no "x" in /format`},
		{"/lockers/a b", false, `a layout has no "a b" in /lockers`},
		{"/lockers/side/vents/low/closable", true, `the file has no "closable" in /lockers/side/vents/low`},
		{"/climate/coldest", true, `the file has no "climate" at the top of a layout`},
		{"/lockers/sid", true, `did you mean "side"?`},
		{"/lines/trunk/route/7/2", false, `the file has no "7" in /lines/trunk/route`},
	}
	for _, c := range tests {
		err := leads(root, source.Edit{Pointer: c.pointer, Delete: c.delete, Value: "1"})
		if (err == nil) != (c.says == "") || err != nil && (!strings.Contains(err.Error(), c.says) || !strings.Contains(err.Error(), c.pointer)) {
			t.Errorf("%s, left out %t: %v; want %q", c.pointer, c.delete, err, c.says)
		}
	}
}

// TestFaultsOfATrial: a value that makes the layout unusable gives the fault that check
// gives for the same text in a file, and says which edit of which trial it comes from.
func TestFaultsOfATrial(t *testing.T) {
	for _, c := range []struct{ edit, flag, lead string }{
		{gross + "=20 kg", "--set", gross + ` = "20 kg"`},
		{gross + "=20", "--set", gross + " = 20"},
		{gross + "=null", "--set", gross + " = null"},
		{"/lockers/skirt/vents/low-inner/level=lwo", "--set", `/lockers/skirt/vents/low-inner/level = "lwo"`},
		{"/cylinders/A/in=lockers/skrit", "--set", `/cylinders/A/in = "lockers/skrit"`},
		{"/lockers/skirt/box/from/2=1 m", "--set", `/lockers/skirt/box/from/2 = "1 m"`},
		{`/cylinders/C={"in": "lockers/skirt", "rol": 1}`, "--set", "/cylinders/C = "},
		{"/format", "--unset", "/format left out"},
		{"/where/code=none-such", "--set", `/where/code = "none-such"`},
	} {
		r, got := tried(t, sorrel, c.flag, c.edit)
		if got.status != statusUnusable || len(r.Files[0].Faults) == 0 || r.Trial == nil || r.Trial.Changed != nil || len(r.Files[0].Findings) > 0 {
			t.Errorf("%s: status %d, %+v", c.edit, got.status, r.Files[0].Faults)
			continue
		}
		edit, err := source.ParseSet(c.edit)
		if c.flag == "--unset" {
			edit, err = source.ParseUnset(c.edit)
		}
		if err != nil {
			t.Fatal(err)
		}
		base, fault := source.ReadPath(sorrel, source.DefaultLimits())
		if fault != nil {
			t.Fatal(fault)
		}
		file, err := source.Apply(base, nil, []source.Edit{edit})
		if err != nil {
			t.Fatal(err)
		}
		j := judging{}
		_, _, faults := j.load(input{name: "x", file: file})
		lead := "in the trial of " + sorrel + ", " + c.lead
		for i, f := range r.Files[0].Faults {
			if !strings.HasPrefix(f.What, lead) || !strings.HasSuffix(f.What, ": "+faults[i].What) || f.Expected != faults[i].Expected || f.Mend != faults[i].Mend || !strings.HasPrefix(f.Place.File, "TRIAL of ") {
				t.Errorf("%s: %+v; check says %v", c.edit, f, faults[i])
			}
		}
	}
}

// TestATrialThatMends: a file that can't be used as it is can be tried with an edit; then
// there is nothing to compare with, and the whole report comes.
func TestATrialThatMends(t *testing.T) {
	broken := in(t, "broken.json")
	plain, _ := tried(t, broken, "--set", "/title=x")
	if len(plain.Files[0].Faults) == 0 {
		t.Fatal("the broken layout has no fault")
	}
	dir := t.TempDir()
	put(t, dir, map[string]string{"layout.json": `{"format": "lowvent-layout/1", "cylinders": {"A": {"upright": "yes"}}}`, "torn.json": `{"format": "lowvent-layout/1"`})
	r, got := tried(t, dir+"/layout.json", "--set", "/cylinders/A/upright=true")
	if got.status == statusUnusable || len(r.Files[0].Findings) == 0 || r.Trial.Changed != nil {
		t.Errorf("status %d, %d findings, %v", got.status, len(r.Files[0].Findings), r.Trial.Changed)
	}
	if page := run(nil, "trial", dir+"/layout.json", "--set", "/cylinders/A/upright=true"); !strings.Contains(page.stdout, "Counted: ") {
		t.Errorf("no whole report:\n%s", page.stdout)
	}
	// What is no JSON can't be edited: its own fault, at its own place.
	r, got = tried(t, dir+"/torn.json", "--set", "/title=x")
	if got.status != statusUnusable || r.Trial != nil || len(r.Files[0].Faults) != 1 || r.Files[0].File != dir+"/torn.json" {
		t.Errorf("status %d, %+v", got.status, r)
	}
}
