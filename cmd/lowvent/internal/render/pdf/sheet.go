package pdf

// Sheet is a size of paper.
type Sheet int

// The sheets.
const (
	A4     Sheet = iota // 210 mm by 297 mm (ISO 216)
	Letter              // 8.5 in by 11 in (ANSI/ASME Y14.1, size A)
)

// margin is left free all around a page, in mm.
const margin = 15

// size is the sheet's width and height in mm, lying on its side or not.
func (s Sheet) size(turned bool) (wide, high float64) {
	wide, high = 210, 297
	if s == Letter {
		wide, high = 215.9, 279.4
	}
	if turned {
		return high, wide
	}
	return wide, high
}

// area is the part of a page that is set, in mm from its top left corner.
type area struct{ left, top, wide, high float64 }

func (s Sheet) within(turned bool) area {
	wide, high := s.size(turned)
	return area{margin, margin, wide - 2*margin, high - 2*margin}
}
