package code

import (
	"fmt"

	"lowvent.example/schema/unit"
)

// table is a table of the text, read at the next row up:
// {"tableBy": "space.floorArea", "rows": [{"upTo": "5 m2", "is": "100 cm2"}]}.
// Beyond its last row it is silent.
type table struct {
	by   Fact
	rows []row // by rising upTo
}

// row holds for facts up to and including upTo.
type row struct{ upTo, is figure }

func (r table) String() string {
	last := r.rows[len(r.rows)-1]
	if len(r.rows) == 1 {
		return fmt.Sprintf("%s for up to %s of %s", last.is.written, last.upTo.written, r.by.Phrase())
	}
	return fmt.Sprintf("a table of %d rows by %s, the next row up, from %s for up to %s to %s for up to %s",
		len(r.rows), r.by.Phrase(), r.rows[0].is.written, r.rows[0].upTo.written, last.is.written, last.upTo.written)
}

func (r table) Facts() []Fact { return []Fact{r.by} }

func (r table) weigh(_ *Term, f Facts) outcome {
	info := r.by.info()
	si, known := number(f, r.by)
	if !known {
		return needs(r.by)
	}
	for _, row := range r.rows {
		if si <= row.upTo.si {
			text := fmt.Sprintf("%s in the row for up to %s: %s is %s", row.is.print(), info.print(row.upTo.si), info.phrase, info.print(si))
			return outcome{state: Answered, si: row.is.si, text: text, expr: row.is.literal()}
		}
	}
	found, end := info.print(si), info.print(r.rows[len(r.rows)-1].upTo.si)
	if !info.count {
		found, end = unit.TextApart(info.kind, si, r.rows[len(r.rows)-1].upTo.si)
	}
	return outcome{state: Silent, text: fmt.Sprintf("%s is %s, and the table ends at %s", info.phrase, found, end)}
}
