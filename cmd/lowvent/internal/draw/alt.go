package draw

import (
	"fmt"
	"strings"
)

// nouns are what the sorts of things are called when they are counted.
var nouns = []struct {
	sort      sort
	one, many string
}{
	{isSpace, "space", "spaces"}, {isLocker, "gas locker", "gas lockers"}, {isCylinder, "cylinder", "cylinders"}, {isRegulator, "regulator", "regulators"},
	{isChangeover, "changeover", "changeovers"}, {isLine, "gas line", "gas lines"}, {isJunction, "junction", "junctions"}, {isOpenEnd, "open end", "open ends"},
	{isOutlet, "outdoor outlet", "outdoor outlets"}, {isFillPoint, "fill point", "fill points"}, {isAppliance, "appliance", "appliances"}, {isFlue, "flue end", "flue ends"},
	{isLockerVent, "locker vent", "locker vents"}, {isFixedVent, "fixed vent", "fixed vents"}, {isPenetration, "hole for a pipe or cable", "holes for pipes or cables"}, {isShutoff, "shut-off", "shut-offs"}, {isFan, "fan", "fans"}, {isOpening, "opening", "openings"},
	{isIgnition, "ignition source", "ignition sources"}, {isStove, "stove", "stoves"}, {isExhaust, "engine or fuel heater", "engines or fuel heaters"},
	{isCombustible, "thing that burns", "things that burn"}, {isStored, "stored thing", "stored things"}, {isAlarm, "alarm", "alarms"}, {isExtinguisher, "extinguisher", "extinguishers"},
}

// tally counts what a scene shows.
func (s *scene) tally() string {
	var parts []string
	for _, n := range nouns {
		many := 0
		for _, t := range s.things {
			if t.sort == n.sort {
				many++
			}
		}
		if many > 0 {
			parts = append(parts, count(many, n.one, n.many))
		}
	}
	return listed(parts)
}

// listed joins words: "a, b and c".
func listed(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// alt tells the drawing in words: what it shows, at which scale, the distances that are
// not as needed, and what is not on it.
func (w *work) alt(what string) string {
	sentences := []string{fmt.Sprintf("%s, drawn to scale, %s.", what, ratioText(w.d.Scale)), "It shows " + w.scene.tally() + "."}
	sentences = append(sentences, w.dangerWords()...)
	if len(w.shown) > 0 {
		var all []string
		for _, d := range w.shown {
			s := d.says[0]
			sense := "at least "
			if s.atMost {
				sense = "at most "
			}
			all = append(all, fmt.Sprintf("%s: %s, %s found where %s%s is needed", s.word, d.between, s.found, sense, s.needed))
		}
		sentences = append(sentences, "Distances that are not as needed: "+strings.Join(all, "; ")+".")
	}
	if none := notDrawn(w.scene.unplaced); none != "" {
		sentences = append(sentences, none+" What is not drawn is not absent.")
	}
	return strings.Join(append(sentences, w.omitted...), " ")
}
