package calcsheet

import (
	"fmt"

	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// point is one point of a course as the tables tell it.
type point struct {
	Number         int
	Across, Up     string
	AcrossSI, UpSI string
	Note           string // "lowest" or "highest"
}

// described tells a course in words, for who can't see the picture.
func described(c *report.Course, all []point, e ends) string {
	first, last, lowest, highest := all[0], all[len(all)-1], all[e.lowest], all[e.highest]
	return fmt.Sprintf("A line of %d points. %s goes from %s at %s to %s at %s. Lowest: %s at %s. Highest: %s at %s. The table below has the numbers.",
		len(all), capital(c.Up.Title), first.Up, first.Across, last.Up, last.Across, lowest.Up, lowest.Across, highest.Up, highest.Across)
}

func pointsOf(c *report.Course, e ends) []point {
	across, up := kindOf(c.Across.Kind), kindOf(c.Up.Kind)
	var all []point
	for i, each := range c.Points {
		p := point{Number: i + 1, Across: unit.TextOf(across, each[0]), Up: unit.TextOf(up, each[1]), AcrossSI: digits(each[0]), UpSI: digits(each[1])}
		switch i {
		case e.highest:
			p.Note = "highest"
		case e.lowest:
			p.Note = "lowest"
		}
		all = append(all, p)
	}
	return all
}

// mostShown is how many points the table beside the picture has, more or less.
const mostShown = 24

// thinned keeps points evenly, and the first, the last, the lowest and the highest.
func thinned(all []point, e ends) []point {
	every := (len(all) + mostShown - 2) / (mostShown - 1)
	var some []point
	for i := range all {
		if i%every == 0 || i == len(all)-1 || i == e.lowest || i == e.highest {
			some = append(some, all[i])
		}
	}
	return some
}
