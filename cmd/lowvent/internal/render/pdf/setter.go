package pdf

import (
	"fmt"

	"lowvent.example/cmd/lowvent/internal/paper"
)

// setter sets blocks into rows, within a column of the page. The texts are numbered as
// they are met, which is the order of paper.Document.Texts.
type setter struct {
	left, wide   float64 // of the column, mm
	bars         []bar   // the uprights of the frames around it
	body, turned area    // what a page has room for
	texts        *int
	fault        *error
}

// of is the number of the next text, or 0 for one that is empty.
func (s setter) of(text string) int {
	if text == "" {
		return 0
	}
	*s.texts++
	return *s.texts
}

func (s setter) fail(format string, values ...any) {
	if *s.fault == nil {
		*s.fault = fmt.Errorf(format, values...)
	}
}

// row is a row within the frames around it.
func (s setter) row(high, gap float64, pieces ...piece) row {
	return row{high: high, gap: gap, pieces: pieces, bars: s.bars, gapBars: s.bars}
}

func (s setter) blocks(blocks []paper.Block) []row {
	var rows []row
	for i, b := range blocks {
		set := s.block(b)
		if i > 0 && len(set) > 0 && framed(blocks[i-1]) {
			set[0].gap = max(set[0].gap, 3)
		}
		rows = append(rows, set...)
	}
	return rows
}

// framed tells of blocks that end in a rule, below which a text needs more room.
func framed(b paper.Block) bool {
	switch b.(type) {
	case *paper.Box, *paper.Table, *paper.Lines:
		return true
	}
	return false
}

func (s setter) block(b paper.Block) []row {
	switch b := b.(type) {
	case *paper.Heading:
		return s.heading(headingStyle, b.Word, b.Text, 4)
	case *paper.Para:
		if b.Strong {
			return s.text(strongStyle, b.Word, b.Text, 1.8)
		}
		return s.text(bodyStyle, b.Word, b.Text, 1.8)
	case *paper.List:
		return s.list(b)
	case *paper.Table:
		return s.table(b)
	case *paper.Picture:
		return s.picture(b.Drawing)
	case *paper.Box:
		return s.box(b)
	case *paper.Pairs:
		return s.pairs(b)
	case *paper.Lines:
		return s.empty(b)
	}
	s.fail("the PDF knows no block of the kind %T", b)
	return nil
}
