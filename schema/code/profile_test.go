package code

import (
	"strings"
	"testing"
)

func TestGoverns(t *testing.T) {
	p := use(t, "us-mobile-structure").Profile
	cases := []struct {
		kind, country, region string
		want                  bool
		why                   string // the beginning
	}{
		{"manufactured-home", "US", "IN", true, "The part from 24 CFR 3280 is law"},
		{"manufactured-home", "us", " in ", true, "The part from 24 CFR 3280 is law"},
		{"manufactured-home", "US", "OH", false, "it governs the region IN, and this one is OH. The part from 24 CFR 3280 is law for manufactured homes anywhere in the United States"},
		{"manufactured-home", "US", "", false, "the region is not stated. "},
		{"manufactured-home", "", "IN", false, "the country is not stated. "},
		{"manufactured-home", " ", "IN", false, "the country is not stated. "},
		{"", "US", "IN", false, "the kind of dwelling is not stated. "},
		{"", "", "", false, "the kind of dwelling is not stated; the country is not stated; the region is not stated. "},
		{"road-vehicle", "US", "IN", false, "it governs the kind of dwelling manufactured-home, and this one is road-vehicle. "},
		{"boat", "FR", "IN", false, "it governs the kind of dwelling manufactured-home, and this one is boat; it governs the country US, and this one is FR. "},
	}
	for _, c := range cases {
		got, why := p.Governs(c.kind, c.country, c.region)
		if got != c.want || !strings.HasPrefix(why, c.why) {
			t.Errorf("%q %q %q: %v, %s", c.kind, c.country, c.region, got, why)
		}
	}
}

func TestGovernsNothingByDefault(t *testing.T) {
	c := use(t, "")
	for _, p := range []*Profile{nil, {}, c.Practice, c.Own, {Scope: Scope{Dwellings: []string{"boat"}}}, {Scope: Scope{Countries: []string{"US"}}}} {
		if governs, why := p.Governs("boat", "US", "IN"); governs || why == "" {
			t.Errorf("%+v governs: %s", p, why)
		}
	}
	if governs, _ := c.Component.Governs("boat", "US", ""); !governs {
		t.Error("49 CFR 173 does not reach a cylinder on a boat in the United States")
	}
	if governs, _ := c.Component.Governs("boat", "CA", ""); governs {
		t.Error("49 CFR 173 reaches a cylinder in Canada")
	}
}

func TestCite(t *testing.T) {
	cases := []struct{ document, clause, want string }{
		{"675 IAC 15-2-74", "(c)(2)", "675 IAC 15-2-74(c)(2)"},
		{"NFPA 58", "6.24.3.2", "NFPA 58 6.24.3.2"},
		{"EN 1949:2002", "cl. 2.3", "EN 1949:2002 cl. 2.3"},
		{"24 CFR 3280.709", "", "24 CFR 3280.709"},
		{"", "", ""},
	}
	for _, c := range cases {
		if got := (&Entry{Document: c.document, Clause: c.clause}).Cite(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
