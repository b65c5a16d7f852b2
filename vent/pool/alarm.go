package pool

import "lowvent.example/schema/unit"

// AlarmPoint is what one source says of the share of the lower flammable limit at
// which a gas alarm has to sound.
type AlarmPoint struct {
	Share   unit.Ratio // of the lower flammable limit
	What    string
	Source  string
	Address string // where the text was read; empty if it was not
	Read    bool   // false: from memory, nobody read it
}

// AlarmPoints returns what the sources say, lowest first. The last is the latest, and
// so the cautious one for how late an alarm is heard.
func AlarmPoints() []AlarmPoint {
	const practice, page = "Home repair article", "engineerfix.com/what-kind-of-detector-do-i-need-for-propane"
	return []AlarmPoint{
		{0.10, "domestic alarm, the lower of two common points", practice, page, true},
		{0.20, "has to sound below it, and not below 3 %", "EN 50194-1", "", false},
		{0.25, "domestic alarm, the higher of two common points", practice, page, true},
		{0.25, "has to sound at or below it", "UL 1484", "", false},
	}
}

// Alarm is a gas alarm in one room.
type Alarm struct {
	Height unit.Length // of its sensor over the floor, m
	Point  unit.Ratio  // share of gas by volume at which it sounds
}

// Hearing is how late an alarm can be. It sounds by itself at the latest by Latest, if
// it works at all: that is not known from here.
type Hearing struct {
	Rich   Moment // when a layer of undiluted gas stands at the sensor
	Mixed  Moment // when the mixed space holds what it sounds at
	Latest Moment // the later of the two
}

// Latest returns how late the alarm in the room of the leak can be, its doors shut:
// the later of a layer of undiluted gas that has grown to its sensor ([LayerTime] with
// x = 1) and the mixed space ([Mixed]). The gas may be either, or anything between
// them, and nobody knows which.
//
// Valid as [LayerTime] and [Mixed], else [*propane.RangeError].
//
// Error: it errs late, mostly by a lot, since real gas is thinned on its way down, and
// a sensor that stands in the stream hears it at once. It errs early where a sill, a
// drain or an open door lets the gas away below the sensor ([Space.Fill] tells), where
// the sensor is old or shielded, and by what the alarm takes to answer. A smaller leak
// is never heard earlier.
//
// Source: balance of volume.
func (a Alarm) Latest(area unit.Area, volume unit.Volume, gas, air unit.VolumeFlow) (Hearing, error) {
	rich, err := LayerTime(area, a.Height, 1, gas)
	if err != nil {
		return Hearing{}, err
	}
	mixed, err := Mixed(volume, gas, air, a.Point)
	if err != nil {
		return Hearing{}, err
	}
	h := Hearing{Rich: Moment{After: rich}, Mixed: mixed}
	h.Latest = Later(h.Rich, h.Mixed)
	return h, nil
}
