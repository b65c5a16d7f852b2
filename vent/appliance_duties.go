package vent

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
)

// dutyPair is what a code and what common practice ask of one thing.
type dutyPair struct{ byCode, byPractice code.DutyLimit }

// owed is a clause that a yes or no of an appliance answers, by the code and else
// by common practice.
func (d dutyPair) owed(of func(*layout.Appliance) *layout.Given[bool], want bool, yes, no, mend string) func(*check.Sheet, *layout.Appliance) check.Ruling {
	return func(s *check.Sheet, a *layout.Appliance) check.Ruling {
		return check.ByEither(s, d.byCode, d.byPractice, func(s *check.Sheet, duty code.DutyLimit) check.Ruling {
			asked := check.Asked(s, duty, applianceFacts(a))
			g := of(a)
			is := check.Read(s, g)
			return check.Is(s, is == want, asked, either(is, yes, no), either(want, yes, no)).Mend(mend, check.SetBool(g, want))
		})
	}
}

func either(is bool, yes, no string) string {
	if is {
		return yes
	}
	return no
}

// indoors asks a clause only of an appliance that stands in a space or a locker.
func indoors(f func(*check.Sheet, *layout.Appliance) check.Ruling) func(*check.Sheet, *layout.Appliance) check.Ruling {
	return func(s *check.Sheet, a *layout.Appliance) check.Ruling {
		if check.Read(s, &a.In) == layout.OpenAir {
			return check.NotApplicable(s, "it stands in the open air")
		}
		return f(s, a)
	}
}

// cooks tells whether an appliance is for cooking.
func cooks(kind layout.ApplianceKind) bool {
	return kind == layout.ApplianceKindCooktop || kind == layout.ApplianceKindOven || kind == layout.ApplianceKindRange
}
