package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/unit"
)

// yearsBegun counts the years from the first day that a date can mean to a day, a
// year that has begun as a whole one: on the tenth anniversary it is 10, a day later
// 11. A day before the date gives 0; so does no date, which a stuck sheet throws away.
func yearsBegun(from, to unit.Date) unit.Count {
	n := max(0, to.Year-from.Year)
	switch anniversary := from.First().AddYears(n); {
	case from.IsZero() || to.Before(from.First()):
		return 0
	case anniversary.Before(to):
		return unit.Count(n + 1)
	}
	return unit.Count(n)
}

// aged asks that a thing is not older than the code, or failing that common
// practice, lets it serve.
func aged(s *check.Sheet, made func(*check.Sheet) unit.Date, byCode, byPractice code.Limit[unit.Count]) check.Ruling {
	return check.ByEither(s, byCode, byPractice, func(s *check.Sheet, limit code.Limit[unit.Count]) check.Ruling {
		most := check.Limit(s, "n_max", limit, nil)
		from := made(s)
		return check.AtMost(s, yearsBegun(from, s.On()), most).Says("years since %s; one that has begun counts", from).
			Mend("Have it replaced by the fitter; its rubber has aged, whatever it looks like.")
	})
}
