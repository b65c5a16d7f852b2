package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

// ApplianceInput is the figure of an appliance's heat input at full flame, in W
// gross, for checks outside of this package: air for burning goes by it.
func ApplianceInput() *check.Figure[unit.GrossPower, *layout.Appliance] { return applianceInput }
