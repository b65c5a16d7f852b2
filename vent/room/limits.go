package room

import "lowvent.example/schema/unit"

// Limit is what a document allows of a gas in the air.
type Limit struct {
	Gas     string
	Share   unit.Ratio // by volume
	Least   bool       // the share must not fall below; else it must not rise above
	Basis   string     // how the document means it
	Source  string
	Address string // where the text was read; empty if it was not
	Read    bool
}

// Limits returns the limits that the air of a room is held against. They are
// meant for grown, healthy people who are awake and at work; a dwelling has
// children, sick and sleeping people in it. They are compared with the peak, never
// with a mean over eight hours, under which 10 000 ppm for an hour would pass.
//
// The row of carbon monoxide is there to be quoted: nothing here computes carbon
// monoxide, and a room within the other two may be deadly by it. At 19.5 % of
// oxygen the carbon dioxide of a propane flame is already at 8500 ppm, so the first
// row decides.
func Limits() []Limit {
	const z1 = "webarchive.library.unt.edu/eot2008/20081104025711/http://www.osha.gov/pls/oshaweb/owadisp.show_document?p_table=STANDARDS&p_id=9992"
	const manual = "www.easymanua.ls/dura-heat/lpc25/manual?p=4"
	return []Limit{
		{"carbon dioxide", 5000e-6, false, "mean over 8 h at work; compared with the peak here",
			"29 CFR 1910.1000 Table Z-1 (footnotes read at the first address, the figure in a heater manual at the second)", z1 + "; " + manual, true},
		{"oxygen", 0.195, true, "an atmosphere below it is oxygen deficient",
			"29 CFR 1910.146(b), definition (read); also 1910.134(b) (from memory)", "www.bnl.gov/esh/shsd/programs/oxygen-deficiency.php", true},
		{"carbon monoxide", 50e-6, false, "mean over 8 h at work; quoted, not computed",
			"29 CFR 1910.1000 Table Z-1 (figure read in a heater manual quoting it)", manual, true},
	}
}

// AlarmBand is one line of what a standard asks of a carbon monoxide alarm. It is
// quoted for whoever buys or tests one; it is no limit to live by.
type AlarmBand struct {
	Standard string
	Share    unit.Ratio // of carbon monoxide, by volume
	Response string
	Source   string
	Address  string
}

// AlarmBands returns the response bands of carbon monoxide alarms that were read.
// The 100 ppm band of EN 50291 was not, and is left out.
func AlarmBands() []AlarmBand {
	const ul, en = "CO alarm maker page quoting UL 2034", "UK safety retailer comparison of EN 50291 and UL 2034"
	const ulAt = "www.brkelectronics.com/ca/en/installer-corner/what_levels_of_co_cause_an_alarm/"
	const enAt = "www.safelincs.co.uk/blog/tag/british-standards/"
	return []AlarmBand{
		{"UL 2034", 70e-6, "alarm between 60 and 240 min", ul, ulAt},
		{"UL 2034", 150e-6, "alarm between 10 and 50 min", ul, ulAt},
		{"UL 2034", 400e-6, "alarm between 4 and 15 min", ul, ulAt},
		{"UL 2034", 30e-6, "no alarm for 30 days", ul, ulAt},
		{"EN 50291", 30e-6, "no alarm before 120 min", en, enAt},
		{"EN 50291", 50e-6, "alarm after 60 and before 90 min", en, enAt},
		{"EN 50291", 300e-6, "alarm within 3 min", en, enAt},
	}
}

// SpillageLimit is the underpressure in a room that one source allows before an
// appliance's flue spills into it.
type SpillageLimit struct {
	Appliance string
	Pressure  unit.GaugePressure // below outside, Pa
	Source    string
	Address   string // empty if not known
	Read      bool
}

// SpillageLimits returns what the sources say, lowest first. Take the first: an
// open flue draws with a few pascals, less on a warm day and cold at its start,
// and the figures are for tall chimneys of houses, not for the short flue of a van
// or boat. The 4 Pa of Europe was not read.
func SpillageLimits() []SpillageLimit {
	const form = "limits of depressurization in a worst-case test form of a weatherization programme (public source text, page not known)"
	const training = "Canadian gas technician training text, 8th ed. 2025, Unit 22: 0.02 inH2O"
	const at = "github.com/MikeKapin/csa-training-data units-markdown"
	return []SpillageLimit{
		{"natural draft water heater alone on its chimney", 2, form, "", true},
		{"natural draft boiler or furnace on one vent with a water heater", 3, form, "", true},
		{"open-flued appliance, pressure of the room", 4, "European practice for open flues", "", false},
		{"natural draft appliance", 5, training, at, true},
		{"natural draft boiler or furnace alone", 5, form, "", true},
		{"fan-assisted or power-vented appliance alone", 15, form, "", true},
		{"room-sealed appliance", 50, form, "", true},
	}
}
