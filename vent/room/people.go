package room

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// Activity says what a person does.
type Activity int

// The activities. The zero value is none.
const (
	Resting      Activity = iota + 1 // lying or sitting quietly, asleep
	LightWorking                     // standing, cooking, walking about slowly
)

// Person is what one grown person does to the air. The figures are the high ends
// of their sources' ranges.
type Person struct {
	Activity      Activity
	Rate          float64         // metabolic rate in met, 1 met = 58.2 W per m² of skin
	CarbonDioxide unit.VolumeFlow // given
	Oxygen        unit.VolumeFlow // taken
	Water         unit.MassFlow   // given, by breath and skin
	Source        string
	Address       string
}

// carbonDioxidePerMet is 0.0084 ft³/min of carbon dioxide for each met in m³/s;
// respiratoryQuotient what is given of it for each volume of oxygen taken.
const (
	carbonDioxidePerMet = 0.0084 * 0.028316846592 / 60
	respiratoryQuotient = 0.8
	peopleSource        = "carbon dioxide: input dictionary of a public building energy program, citing ASHRAE 62.1, 0.0084 cfm per met and person; " +
		"met: public table of metabolic rates by activity; oxygen: respiratory quotient 0.8, usually 0.7 to 1.0, manual of a physiology library; " +
		"water: table 10.1.1 of a text on solar housing"
	peopleAddress = "EnergyPlus Energy+.idd, object People; gist.github.com/jsherman256/79045fd5d4eaa041f7d547daa0d2294a; " +
		"rdrr.io/cran/physiology/man/alveolar_PAO2_mmHg.html; www.northernarchitecture.us/solar-housing-2/humidity.html"
)

// People returns the published figures for one person at rest and at light work:
// 1.3 and 2 met, 18.5 and 28.5 L/h of carbon dioxide, 60 and 120 g/h of water.
//
// Error size: people differ by 30 % to either side by their size (from memory),
// and someone who works hard, or cooks briskly at the published 3.3 met, gives two
// thirds more than the second. Measured water is lower than the tables say (Zemitis and
// others, Energy and Buildings 127 (2016) 884, abstract): it errs to the damp
// side.
func People() []Person {
	return []Person{person(Resting, 1.3, 0.060), person(LightWorking, 2, 0.120)}
}

func person(activity Activity, met, waterPerHour float64) Person {
	return Person{
		Activity:      activity,
		Rate:          met,
		CarbonDioxide: unit.VolumeFlow(met * carbonDioxidePerMet),
		Oxygen:        unit.VolumeFlow(met * carbonDioxidePerMet / respiratoryQuotient),
		Water:         unit.MassFlow(waterPerHour / 3600),
		Source:        peopleSource,
		Address:       peopleAddress,
	}
}

// Breathing returns the exchange of so many people at one activity. Valid for 0
// to 1000 people and the activities named, else *[propane.RangeError].
//
// Source and error size: as [People].
func Breathing(activity Activity, people unit.Count) (Exchange, error) {
	n := float64(people)
	err := firstOf(
		propane.Within("people", n, 0, 1000, "1"),
		propane.Within("activity", float64(activity), float64(Resting), float64(LightWorking), "1"),
	)
	if err != nil {
		return Exchange{}, err
	}
	p := People()[activity-Resting]
	return Exchange{
		Oxygen:        unit.VolumeFlow(n * float64(p.Oxygen)),
		CarbonDioxide: unit.VolumeFlow(n * float64(p.CarbonDioxide)),
		Water:         steam(n * float64(p.Water)),
	}, nil
}
