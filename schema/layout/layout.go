package layout

import "lowvent.example/schema/unit"

// Format is the version word that every layout file carries.
const Format = "lowvent-layout/1"

// Layout is one dwelling's propane installation as its file states it.
type Layout struct {
	Object
	Schema     Given[string]     `json:"$schema"`
	Format     Given[FormatWord] `json:"format" must:"true"`
	Title      Given[string]     `json:"title"`
	Where      Where             `json:"where"`
	SurveyedBy SurveyedBy        `json:"surveyedBy"`
	Gas        GasState          `json:"gas"`
	Dwelling   Dwelling          `json:"dwelling"`
	People     People            `json:"people"`
	Climate    Climate           `json:"climate"`
	Outside    Outside           `json:"outside"`

	Spaces          Section[Space]          `json:"spaces"`
	Lockers         Section[Locker]         `json:"lockers"`
	Cylinders       Section[Cylinder]       `json:"cylinders"`
	Changeovers     Section[Changeover]     `json:"changeovers"`
	Regulators      Section[Regulator]      `json:"regulators"`
	Junctions       Section[Junction]       `json:"junctions"`
	Lines           Section[Line]           `json:"lines"`
	OpenEnds        Section[OpenEnd]        `json:"openEnds"`
	Outlets         Section[Outlet]         `json:"outdoorOutlets"`
	Appliances      Section[Appliance]      `json:"appliances"`
	Flues           Section[Flue]           `json:"flues"`
	Stoves          Section[Stove]          `json:"stoves"`
	Exhausts        Section[Exhaust]        `json:"exhausts"`
	Openings        Section[Opening]        `json:"openings"`
	FixedVents      Section[FixedVent]      `json:"fixedVents"`
	Fans            Section[Fan]            `json:"fans"`
	IgnitionSources Section[IgnitionSource] `json:"ignitionSources"`
	Combustibles    Section[Combustible]    `json:"combustibles"`
	Stored          Section[Stored]         `json:"storedGoods"`
	Alarms          Section[Alarm]          `json:"alarms"`
	Extinguishers   Section[Extinguisher]   `json:"extinguishers"`
	FillPoints      Section[FillPoint]      `json:"fillPoints"`
	Signs           Section[Sign]           `json:"signs"`
	Tests           Section[Test]           `json:"tests"`
	Certificates    Section[Certificate]    `json:"certificates"`
	TapeMeasures    Section[TapeMeasure]    `json:"tapeMeasures"`
	Wants           Wants                   `json:"wants"`
	Waivers         Section[Waiver]         `json:"waivers"`

	byRef map[Ref]Item
	feeds map[Ref][]*Line // lines by what they lead to
	tapes map[pair]*TapeMeasure
	takes map[Ref][]*Line // lines by what they come from
}

// Where says where the dwelling is used, and which code is to be used.
type Where struct {
	Object
	Country  Given[string] `json:"country"`
	Region   Given[string] `json:"region"`
	Postcode Given[string] `json:"postcode"`
	Code     Given[string] `json:"code"`
}

// SurveyedBy says who measured, when, and which lists of the whole file are complete.
type SurveyedBy struct {
	Object
	Who      Given[Surveyor]      `json:"who"`
	On       Given[Date]          `json:"on"`
	Complete Words[InventoryList] `json:"complete"`
}

// GasState says what is done and what is live now.
type GasState struct {
	Object
	Connected Given[bool]         `json:"connected"`
	Kind      Given[GasKind]      `json:"kind"`
	Propane   Measure[unit.Ratio] `json:"propaneShare" rule:"share"`
	WorkDone  Given[WorkDone]     `json:"workDoneSoFar"`
	LiveParts Given[string]       `json:"liveParts"`
	Access    Given[string]       `json:"access"`
}

// Dwelling says what kind of dwelling it is and how it is used.
type Dwelling struct {
	Object
	Kind            Given[DwellingKind]  `json:"kind"`
	Identity        Given[string]        `json:"identity"`
	Sleeps          Given[int]           `json:"sleeps"`
	GasWhileDriving Given[bool]          `json:"gasWhileDriving"`
	Commercial      Given[bool]          `json:"commercialUse"`
	PassengerVessel Given[bool]          `json:"passengerVessel"`
	FirstUsed       Given[Date]          `json:"firstUsed"`
	GroundClearance Measure[unit.Length] `json:"groundClearance" rule:"nonNegative"`
	FrontAxle       Measure[unit.Length] `json:"frontAxle"`
	RearAxle        Measure[unit.Length] `json:"rearAxle"`
	RearBumper      Measure[unit.Length] `json:"rearBumper"`
	Waterline       Measure[unit.Length] `json:"waterline"`
	Heel            Measure[unit.Angle]  `json:"heel" rule:"nonNegative"`
	Skirted         Given[bool]          `json:"skirted"`
	Awning          Given[bool]          `json:"awning"`
	FloorArea       Measure[unit.Area]   `json:"floorArea" rule:"positive"`
	BatteryIsolator Given[bool]          `json:"batteryIsolator"`
}

// People says who lives or sleeps there, as far as it changes what protects them.
type People struct {
	Object
	HardOfHearing Given[bool] `json:"hardOfHearing"`
	PoorSmell     Given[bool] `json:"poorSenseOfSmell"`
	Children      Given[bool] `json:"children"`
	Briefed       Given[bool] `json:"briefed"`
}

// Climate says the extremes of the places where the dwelling will stand.
type Climate struct {
	Object
	HighestPlace Measure[unit.Length]                `json:"highestPlace"`
	Coldest      Measure[unit.Temperature]           `json:"coldest"`
	Hottest      Measure[unit.Temperature]           `json:"hottest"`
	SolarExcess  Measure[unit.TemperatureDifference] `json:"solarExcess" rule:"nonNegative"`
	NightDrop    Measure[unit.TemperatureDifference] `json:"nightDrop" rule:"nonNegative"`
	SnowDepth    Measure[unit.Length]                `json:"snowDepth" rule:"nonNegative"`
}

// Outside is the open air around the dwelling, which is surveyed as a space is.
type Outside struct {
	Object
	Surveyed Survey `json:"surveyed"`
}

// Survey says which lists are complete for the space or locker it stands in.
type Survey struct {
	Object
	On       Given[Date]       `json:"on"`
	Complete Words[SurveyList] `json:"complete"`
}

// IsComplete tells whether the list is stated complete there.
func (s *Survey) IsComplete(list SurveyList) bool { return s.Complete.Has(list) }

// Wants is what the owner hopes for; it judges nothing by itself.
type Wants struct {
	Object
	DaysBetweenSwaps Measure[unit.Duration] `json:"timeBetweenSwaps" rule:"positive"`
	HeatingOnGas     Given[bool]            `json:"heatingDependsOnGas"`
}

// Box is a part of the dwelling between two opposite corners.
type Box struct {
	Object
	From Given[Point] `json:"from" must:"true"`
	To   Given[Point] `json:"to" must:"true"`
}

// Position is where a thing stands: a point, or a box where its size matters.
type Position struct {
	At  Given[Point] `json:"at"`
	Box Box          `json:"box"`
}

// Known tells whether the file says where the thing is.
func (p *Position) Known() bool { return p.At.Known() || p.cornersKnown() }

func (p *Position) cornersKnown() bool { return p.Box.From.Known() && p.Box.To.Known() }

// Corners returns the two corners of the thing; a point is its own two corners.
func (p *Position) Corners() (from, to Point, ok bool) {
	if p.cornersKnown() {
		from, _ = p.Box.From.Get()
		to, _ = p.Box.To.Get()
		return from, to, true
	}
	at, ok := p.At.Get()
	return at, at, ok
}
