package pdf

import "lowvent.example/cmd/lowvent/internal/draw"

// The cells of a legend, in mm: symbols are drawn within 12 by 6.
const (
	symbolWide, symbolHigh = 12.0, 6.0
	keyCell                = 58.0
)

// key sets the legend of a drawing in columns.
func (s setter) key(d *draw.Drawing) []row {
	if len(d.Key) == 0 {
		return nil
	}
	columns := max(1, int(s.wide/keyCell))
	cell := s.wide / float64(columns)
	rows := kept(s.extra(smallStyle.bold(), "Key to “"+d.Title+"”", 2))
	for from := 0; from < len(d.Key); from += columns {
		r := s.row(symbolHigh, 0.6)
		for i, e := range d.Key[from:min(from+columns, len(d.Key))] {
			r = s.explained(r, e, s.left+float64(i)*cell, cell-symbolWide-4)
		}
		rows = append(rows, r)
	}
	return rows
}

// explained adds a symbol with its meaning to a row of the legend.
func (s setter) explained(r row, e draw.Explained, x, wide float64) row {
	lines := smallStyle.wrap(e.Means, wide, wide)
	high := float64(len(lines)) * smallStyle.lead
	r.high = max(r.high, high)
	r.pieces = append(r.pieces, piece{mark: &draw.Group{Label: e.Means, Marks: transformedAll(e.Marks, x, 0, 1)}})
	top := max(0, (symbolHigh-high)/2)
	for i, words := range lines {
		r.pieces = append(r.pieces, smallStyle.words(0, words, x+symbolWide+2, top+float64(i)*smallStyle.lead))
	}
	return r
}
