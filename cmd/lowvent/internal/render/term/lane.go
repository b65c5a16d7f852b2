package term

import (
	"encoding/json"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// lane lays the values of a sweep out in columns: several columns a value, or several
// values a column where there are more of them than columns.
type lane struct{ values, columns int }

// widestValue is how many columns one value takes at most.
const widestValue = 4

func newLane(s *report.Sweep, room int) lane {
	n := len(s.Values)
	if n > room {
		return lane{n, room}
	}
	return lane{n, n * min(widestValue, room/n)}
}

// of tells which values a column stands for.
func (l lane) of(column int) (from, to int) {
	from = column * l.values / l.columns
	return from, max(from+1, (column+1)*l.values/l.columns)
}

// worstMark is the order in which marks win where several values share a column.
const worstMark = "X?-."

// draw marks each column with the worst of how the question ended at its values.
func (l lane) draw(ended []report.Ending) string {
	var line strings.Builder
	for column := range l.columns {
		from, to := l.of(column)
		worst := len(worstMark) - 1
		for _, each := range ended[from:to] {
			worst = min(worst, strings.IndexByte(worstMark, mark(each)))
		}
		line.WriteByte(worstMark[worst])
	}
	return line.String()
}

// mark is the sign of an ending. None of the marks is a tick.
func mark(e report.Ending) byte {
	switch e {
	case report.EndsNotMet:
		return 'X'
	case report.EndsNotKnown:
		return '?'
	case report.EndsWithin:
		return '.'
	}
	return '-'
}

// ends writes the first and the last value over the ends of the lanes.
func (l lane) ends(from, to string) string {
	return from + pad(max(1, l.columns+2-text.Width(from)-text.Width(to))) + to
}

// here points at the value that the file has, as far as it lies in the sweep.
func (l lane) here(s *report.Sweep) string {
	at, known := stated(s)
	first, last := s.Values[0].SI, s.Values[len(s.Values)-1].SI
	if !known || at < first || at > last {
		return ""
	}
	share := ((at-first)/(last-first)*float64(l.values-1) + 0.5) / float64(l.values) // a value stands in the middle of its columns
	column := 1 + int(share*float64(l.columns))
	const words = "what the file says"
	if column+2+len(words) <= l.columns+2 {
		return pad(column) + "v " + words
	}
	return pad(column-1-len(words)) + words + " v"
}

func pad(n int) string { return strings.Repeat(" ", max(0, n)) }

// stated is the value that the file has, in the SI unit.
func stated(s *report.Sweep) (float64, bool) {
	written := s.Swept.Old
	_ = json.Unmarshal([]byte(s.Swept.Old), &written) // a bare number stays as it is
	k, is := unit.KindNamed(s.Swept.Kind)
	if !is {
		return 0, false
	}
	r, err := unit.ParseKind(k, written)
	return r.Nominal, err == nil
}
