package pdf

// Sheet is a size of paper.
type Sheet int

// The sheets.
const (
	A4     Sheet = iota // 210 mm by 297 mm (ISO 216)
	Letter              // 8.5 in by 11 in (ANSI/ASME Y14.1, size A)
)

// margin is left free all around a page, in mm; less of it around one that lies on its
// side, which is there for a drawing of just that size, and more than printers need.
const (
	margin      = 15
	lyingMargin = 9
)

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
	free := free(turned)
	wide, high := s.size(turned)
	return area{free, free, wide - 2*free, high - 2*free}
}

// free is what is left free around a page.
func free(turned bool) float64 {
	if turned {
		return lyingMargin
	}
	return margin
}
