package code

import "testing"

func inUse(use string) known { return known{FactSpaceUse: use} }

// Appliances: the rows APP and COK of the table.
var workedAppliances = []byHand{
	{"us-mobile-structure", ApplianceFlueByRoom.Term, kindIn("space-heater", "sleeping"), "24 CFR 3280.709", "room-sealed", "", ""},
	{"us-mobile-structure", ApplianceFlueByRoom.Term, kindIn("cooktop", "sleeping"), "24 CFR 3280.709", "not asked", "", ""},
	{"us-mobile-structure", ApplianceService.Term, kind("water-heater"), "24 CFR 3280.713", "asked", "", ""},

	{"us-commercial-vehicle", ApplianceFlueByRoom.Term, kindIn("water-heater", "washroom"), "WAC 296-307-43519", "room-sealed", "", ""},
	{"us-commercial-vehicle", ApplianceFlueByRoom.Term, kindIn("lamp", "sleeping"), "WAC 296-307-43519", "silent", "", ""},
	{"us-commercial-vehicle", ApplianceFlameGuard.Term, kind("water-heater"), "WAC 296-307-43519", "asked", "", ""},
	{"us-commercial-vehicle", ApplianceFlameGuard.Term, kind("cooktop"), "WAC 296-307-43519", "silent", "", ""},
	{"us-commercial-vehicle", AppliancePortable.Term, kind("space-heater"), "49 CFR 393.77(a)", "asked", "", ""},
	{"us-commercial-vehicle", AppliancePortable.Term, kind("cooktop"), "49 CFR 393.77(a)", "silent", "", ""},
	{"us-commercial-vehicle", ExitClear.Term, nil, "WAC 296-307-43519", "asked", "", ""},

	{"us-inspected-vessel", ApplianceListed.Term, kind("range"), "46 CFR 58.16-10", "asked", "", ""},
	{"us-inspected-vessel", AppliancePilot.Term, kind("water-heater"), "46 CFR 184.240", "none, electronic, manual", "", ""},
	{"us-inspected-vessel", ApplianceFlameGuard.Term, kind("oven"), "46 CFR 169.703(c)", "asked", "", ""},
	{"us-inspected-vessel", ApplianceFlameGuard.Term, kind("cooktop"), "46 CFR 169.703(c)", "silent", "", ""},

	{"eu-inland-vessel", ApplianceFlueByRoom.Term, kindIn("cooktop", "sleeping"), "Directive 2006/87/EC 14.10", "room-sealed", "", ""},
	{"eu-inland-vessel", ApplianceFlueByRoom.Term, kindIn("water-heater", "washroom"), "Directive 2006/87/EC 14.10", "silent", "", ""},
	{"eu-inland-vessel", ApplianceFlameGuard.Term, kind("cooktop"), "Directive 2006/87/EC 14.10", "asked", "", ""},

	{"uk-inland-boat", ApplianceFlueByRoom.Term, kindIn("refrigerator", "sleeping"), "BSS 8", "room-sealed", "", ""},
	{"uk-inland-boat", ApplianceFlueByRoom.Term, kindIn("range", "sleeping"), "BSS 8", "not asked", "", ""},
	{"uk-inland-boat", ApplianceFlameGuard.Term, kind("oven"), "BSS 8", "asked", "", ""},

	{"fr-small-craft", ApplianceFlameGuard.Term, kind("oven"), "French division 244", "asked", "", ""},

	{"eu-leisure-vehicle", CookingNotForHeat.Term, nil, "German rule", "asked", "", ""},

	{"fr-dwelling", ApplianceFlueByRoom.Term, kindIn("water-heater", "washroom"), "French arrêté 1977 art. 15", "room-sealed", "", ""},
	{"fr-dwelling", ApplianceFlueByRoom.Term, kindIn("water-heater", "sleeping"), "French arrêté 1977 art. 15", "silent", "", ""},
}

// TestCookersAreExcepted holds which texts except a cooker from the rule on rooms:
// all that speak of appliances other than for cooking, and custom where people
// sleep; never custom in a washroom.
func TestCookersAreExcepted(t *testing.T) {
	for _, kind := range []string{"cooktop", "oven", "range"} {
		for where, want := range map[string]State{"sleeping": NotAsked, "washroom": Answered} {
			if a := use(t, "").Ask(PracticeFlueByRoom.Term, kindIn(kind, where)); a.State != want {
				t.Errorf("custom on a %s in a space for %s: %v", kind, where, a.State)
			}
		}
	}
	for _, kind := range []string{"water-heater", "space-heater", "refrigerator", "lamp", "fireplace"} {
		if a := use(t, "").Ask(PracticeFlueByRoom.Term, kindIn(kind, "sleeping")); a.State != Answered || len(a.Words) != 1 || a.Words[0] != "room-sealed" {
			t.Errorf("custom on a %s where people sleep: %+v", kind, a)
		}
	}
}
