package ask

import (
	"slices"
	"strings"

	"lowvent.example/schema/source"
)

// condition tells when a key fits: when another key of the file, or of the same
// object, says one of a few words or is not known. A key for which there is no
// condition always fits.
type condition struct {
	key   string // "/dwelling/kind" for one of the file, "partsMove" for a neighbour, "../kind" for one of the object around
	words []string
}

var (
	afloat = condition{"/dwelling/kind", []string{"boat", "inspected-vessel", "inland-vessel"}}
	wheels = condition{"/dwelling/kind", []string{"road-vehicle", "trailer", "tiny-house-on-wheels", "manufactured-home"}}
	road   = condition{"/dwelling/kind", []string{"road-vehicle", "trailer", "tiny-house-on-wheels"}}
	moves  = condition{"/dwelling/kind", []string{"road-vehicle", "trailer", "tiny-house-on-wheels", "manufactured-home", "boat", "inspected-vessel", "inland-vessel"}}
	cooks  = condition{"kind", []string{"cooktop", "oven", "range", "barbecue", "space-heater", "fireplace"}}
	closet = condition{"kind", []string{"refrigerator", "water-heater", "space-heater"}}
	hose   = condition{"kind", []string{"hose"}}
	supple = condition{"kind", []string{"hose", "corrugated-stainless"}}
	tube   = condition{"kind", []string{"copper", "steel-pipe", "steel-tube", "stainless-tube", "polyethylene", "aluminium"}}
)

// fitting lists the keys that are asked only under a condition.
var fitting = map[string]condition{
	"/dwelling/waterline":                      afloat,
	"/dwelling/heel":                           afloat,
	"/dwelling/passengerVessel":                afloat,
	"/dwelling/groundClearance":                wheels,
	"/dwelling/frontAxle":                      wheels,
	"/dwelling/rearAxle":                       wheels,
	"/dwelling/rearBumper":                     wheels,
	"/lockers/*/aboveWaterline":                afloat,
	"/lockers/*/vents/*/endsIn/overWaterline":  afloat,
	"/lockers/*/vents/*/endsIn/inWheelSpray":   road,
	"/lockers/*/vents/*/lowerEdgeOverLowest":   {"level", []string{"low"}},
	"/lockers/*/vents/*/lowerEdgeBelowCeiling": {"level", []string{"high"}},
	"/fixedVents/*/endsIn/overWaterline":       afloat,
	"/fixedVents/*/endsIn/inWheelSpray":        road,
	"/cylinders/*/reliefFaces":                 {"reliefValve", []string{"yes"}},
	"/cylinders/*/outletPlugged":               {"role", []string{"spare", "empty"}},
	"/lines/*/outside":                         tube,
	"/lines/*/wall":                            tube,
	"/lines/*/standard":                        hose,
	"/lines/*/madeFor":                         hose,
	"/lines/*/carries":                         supple,
	"/lines/*/losesThen":                       supple,
	"/lines/*/behind":                          {"visible", []string{"no"}},
	"/lines/*/strikePlates":                    {"visible", []string{"no"}},
	"/lines/*/slackOverTravel":                 {"partsMove", []string{"yes"}},
	"/appliances/*/plate/jetsFittedFor":        {"convertible", []string{"yes"}},
	"/appliances/*/plate/convertedBy":          {"convertible", []string{"yes"}},
	"/appliances/*/burners":                    cooks,
	"/appliances/*/offWhileDriving":            moves,
	"/appliances/*/compartmentLowVent":         closet,
	"/appliances/*/compartmentHighVent":        closet,
	"/appliances/*/wiringSplicesBehind":        closet,
	"/appliances/*/rearSealedFromRoom":         {"kind", []string{"refrigerator"}},
	"/flues/*/intake/at":                       {"../kind", []string{"room-sealed"}},
	"/flues/*/intake/wall":                     {"../kind", []string{"room-sealed"}},
	"/flues/*/intake/underDwelling":            {"../kind", []string{"room-sealed"}},
	"/flues/*/intake/fanAssisted":              {"../kind", []string{"room-sealed"}},
	"/flues/*/intake/guarded":                  {"../kind", []string{"room-sealed"}},
}

// fits tells whether a key is worth asking after what is known by now.
func (st *state) fits(template, pointer string) bool {
	switch template {
	case "/changeovers":
		return len(st.root.object("/cylinders").keys()) != 1
	case "/flues":
		return st.mayHaveFlues()
	}
	c, conditional := fitting[template]
	if !conditional {
		return !st.standsElsewhere(pointer)
	}
	word := st.word(c.key, pointer)
	return word == "" || slices.Contains(c.words, word)
}

// standsElsewhere tells of a place that was given already: as a box, when a point is
// asked, or as a point, when a box is.
func (st *state) standsElsewhere(pointer string) bool {
	within, key := parent(pointer)
	if around, box := parent(within); box == "box" {
		return st.root.at(around+"/at") != nil
	}
	return key == "at" && st.root.at(within+"/box") != nil
}

// word is what the key of a condition says, as it is answered; "" is not known.
func (st *state) word(key, pointer string) string {
	if key == "/dwelling/kind" && st.root.at(key) == nil {
		return map[string]string{"van": "road-vehicle", "bus": "road-vehicle", "boat": "boat", "cabin": "cabin"}[st.scene]
	}
	if !strings.HasPrefix(key, "/") {
		within, _ := parent(pointer)
		for strings.HasPrefix(key, "../") {
			key = strings.TrimPrefix(key, "../")
			within, _ = parent(within)
		}
		key = source.Join(within, key)
	}
	switch v := st.root.at(key).(type) {
	case string:
		return v
	case bool:
		return map[bool]string{true: "yes", false: "no"}[v]
	}
	return ""
}

// mayHaveFlues tells whether anything is listed that can have a flue: a stove, an
// engine, an appliance whose burnt gas is not known to go into the room. A hob whose
// flue nobody spoke of has none.
func (st *state) mayHaveFlues() bool {
	if len(st.root.object("/stoves").keys())+len(st.root.object("/exhausts").keys()) > 0 {
		return true
	}
	return slices.ContainsFunc(st.root.object("/appliances").keys(), func(id string) bool {
		kind, _ := st.root.at("/appliances/" + id + "/kind").(string)
		flue, _ := st.root.at("/appliances/" + id + "/flue").(string)
		return flue != "none" && (flue != "" || !slices.Contains([]string{"cooktop", "range", "oven", "barbecue"}, kind))
	})
}
