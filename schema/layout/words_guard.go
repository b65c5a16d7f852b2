package layout

// AlarmKind is what an alarm senses.
type AlarmKind string

// The words for AlarmKind; the schema tells what each means.
const (
	AlarmKindPropane        AlarmKind = "propane"
	AlarmKindCarbonMonoxide AlarmKind = "carbon-monoxide"
	AlarmKindSmoke          AlarmKind = "smoke"
)

// Choices lists every word for AlarmKind.
func (AlarmKind) Choices() []string {
	return []string{"propane", "carbon-monoxide", "smoke"}
}

// PowerKind is what powers an alarm.
type PowerKind string

// The words for PowerKind; the schema tells what each means.
const (
	PowerKindBattery         PowerKind = "battery"
	PowerKindSealedBattery   PowerKind = "sealed-battery"
	PowerKindDwellingBattery PowerKind = "dwelling-battery"
	PowerKindMains           PowerKind = "mains"
)

// Choices lists every word for PowerKind.
func (PowerKind) Choices() []string {
	return []string{"battery", "sealed-battery", "dwelling-battery", "mains"}
}

// AlarmTest is what an alarm was tested with.
type AlarmTest string

// The words for AlarmTest; the schema tells what each means.
const (
	AlarmTestTestGas AlarmTest = "test-gas"
	AlarmTestButton  AlarmTest = "button"
	AlarmTestNothing AlarmTest = "nothing"
)

// Choices lists every word for AlarmTest.
func (AlarmTest) Choices() []string {
	return []string{"test-gas", "button", "nothing"}
}

// SignKind is what a sign says.
type SignKind string

// The words for SignKind; the schema tells what each means.
const (
	SignKindCylinderInside     SignKind = "cylinder-inside"
	SignKindNoSmokingOrFlame   SignKind = "no-smoking-or-flame"
	SignKindMainValveHere      SignKind = "main-valve-here"
	SignKindCloseBeforeDriving SignKind = "close-before-driving"
	SignKindCookingNotHeating  SignKind = "cooking-not-heating"
	SignKindKeepVentsClear     SignKind = "keep-vents-clear"
	SignKindNoStorage          SignKind = "no-storage"
	SignKindSupplyConnection   SignKind = "supply-connection"
	SignKindLeakWhatToDo       SignKind = "leak-what-to-do"
	SignKindOperating          SignKind = "operating-instructions"
	SignKindVentilate          SignKind = "ventilate-while-burning"
)

// Choices lists every word for SignKind.
func (SignKind) Choices() []string {
	return []string{"cylinder-inside", "no-smoking-or-flame", "main-valve-here", "close-before-driving", "cooking-not-heating", "keep-vents-clear", "no-storage", "supply-connection", "leak-what-to-do", "operating-instructions", "ventilate-while-burning"}
}

// TestKind is a test that a fitter does.
type TestKind string

// The words for TestKind; the schema tells what each means.
const (
	TestKindStrength           TestKind = "strength"
	TestKindTightness          TestKind = "tightness"
	TestKindLetBy              TestKind = "let-by"
	TestKindLockUp             TestKind = "lock-up"
	TestKindRunningPressure    TestKind = "running-pressure"
	TestKindFlameGuard         TestKind = "flame-guard"
	TestKindFlueSpillage       TestKind = "flue-spillage"
	TestKindFlueCarbonMonoxide TestKind = "flue-carbon-monoxide"
	TestKindAlarmGas           TestKind = "alarm-gas"
	TestKindLockerSeal         TestKind = "locker-seal"
	TestKindVentsClear         TestKind = "vents-clear"
	TestKindHighSide           TestKind = "high-side"
	TestKindRestraint          TestKind = "restraint"
)

// Choices lists every word for TestKind.
func (TestKind) Choices() []string {
	return []string{"strength", "tightness", "let-by", "lock-up", "running-pressure", "flame-guard", "flue-spillage", "flue-carbon-monoxide", "alarm-gas", "locker-seal", "vents-clear", "high-side", "restraint"}
}
