package code_test

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
)

// TestWordsAreTheLayouts holds the words of facts and of terms against those of
// the layout contract. A word that one side lacks would be taken for not known,
// or could never be allowed.
func TestWordsAreTheLayouts(t *testing.T) {
	pairs := map[string][2][]string{
		"kind of appliance":  {code.FactApplianceKind.Words(), layout.ApplianceKind("").Choices()},
		"gas":                {code.FactCylinderGas.Words(), layout.GasKind("").Choices()},
		"role":               {code.FactCylinderRole.Words(), layout.CylinderRole("").Choices()},
		"use of a space":     {code.FactSpaceUse.Words(), layout.SpaceUse("").Choices()},
		"kind of dwelling":   {code.FactDwellingKind.Words(), layout.DwellingKind("").Choices()},
		"flue":               {code.ApplianceFlue.Words, layout.FlueKind("").Choices()},
		"gland":              {code.PracticeTightGlands.Words, layout.Gland("").Choices()},
		"open end":           {code.PracticeOpenEnd.Words, layout.EndFit("").Choices()},
		"converted by":       {code.ApplianceConvertedBy.Words, layout.ConvertedBy("").Choices()},
		"kind of line":       {code.FactLineKind.Words(), layout.LineKind("").Choices()},
		"pressure of line":   {code.FactLinePressure.Words(), layout.PressureZone("").Choices()},
		"kind of joint":      {code.FactJointKind.Words(), layout.JointKind("").Choices()},
		"material":           {code.LineMaterials.Words, layout.LineKind("").Choices()},
		"hose made for":      {code.PracticeHoseMadeFor.Words, layout.HosePurpose("").Choices()},
		"joint":              {code.JointKinds.Words, layout.JointKind("").Choices()},
		"sleeve":             {code.LineSleeves.Words, layout.SleeveKind("").Choices()},
		"reach":              {code.ShutoffMainReach.Words, layout.Reach("").Choices()},
		"shut-off":           {code.TransitDevices.Words, layout.ShutoffKind("").Choices()},
		"sign":               {code.SignKinds.Words, layout.SignKind("").Choices()},
		"appliance's gas":    {code.ApplianceGas.Words, layout.GasKind("").Choices()},
		"qualification":      {code.FactQualification.Words(), layout.Qualification("").Choices()},
		"pressure in a line": {code.FactLinePressure.Words(), layout.PressureZone("").Choices()},
		"damage":             {code.CylinderDamage.Words, layout.Damage("").Choices()},
		"relief faces":       {code.CylinderReliefFaces.Words, layout.Facing("").Choices()},
		"breather faces":     {code.RegulatorVentFaces.Words, layout.Facing("").Choices()},
		"mounting":           {code.RegulatorMounted.Words, layout.Mounting("").Choices()},
		"gas of all":         {code.OwnGas.Words, layout.GasKind("").Choices()},
		"gas in cylinders":   {code.PracticeCylinderGas.Words, layout.GasKind("").Choices()},
		"flue of a rule":     {code.FactFlueKind.Words(), layout.FlueKind("").Choices()},
		"wall":               {code.FactFlueWall.Words(), layout.Wall("").Choices()},
		"flue by room":       {code.ApplianceFlueByRoom.Words, layout.FlueKind("").Choices()},
		"flue by custom":     {code.PracticeFlueByRoom.Words, layout.FlueKind("").Choices()},
		"pilot":              {code.AppliancePilot.Words, layout.PilotKind("").Choices()},
	}
	for name, pair := range pairs {
		if diff := cmp.Diff(pair[1], pair[0]); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
	for _, place := range []string{string(layout.OpenAir), layout.Ref("lockers/side").Section(), layout.Ref("spaces/cabin").Section()} {
		for _, term := range []code.WordLimit{code.CylinderPlaces, code.HighPressurePlaces, code.LockerDoorOpensTo, code.JunctionPlaces} {
			if !slices.Contains(term.Words, place) {
				t.Errorf("%s does not know the place %s", term.ID, place)
			}
		}
	}
}
