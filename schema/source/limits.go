package source

import "math"

// Limits bounds what one file may ask of the program. A field that is zero or
// negative takes the default.
type Limits struct {
	Bytes int // of the file; at most 2³¹−1, for offsets are kept in 32 bits
	Depth int // of objects and arrays inside each other, the root being 1; at most 1000
	Nodes int // values of any kind, the root and the members included
}

// DefaultLimits gives the bounds used where nobody asks for others. They are
// common practice, no source:
//
//   - 8 MiB: a full layout of a dwelling is some 6 KB, so a thousand times
//     that is a wrong file, and it is still read in a moment;
//   - depth 64: a layout nests less than ten deep, and whatever walks the tree
//     by recursion stays within a small stack;
//   - 400 000 values: 8 MiB of "1,1,1…" would be four million, and a node
//     costs about 100 bytes, so this keeps the tree near 40 MB.
func DefaultLimits() Limits {
	return Limits{Bytes: 8 << 20, Depth: 64, Nodes: 400_000}
}

// deepest is well within what the decoder and recursion bear.
const deepest = 1000

func (l Limits) filled() Limits {
	d := DefaultLimits()
	return Limits{
		Bytes: min(orDefault(l.Bytes, d.Bytes), math.MaxInt32),
		Depth: min(orDefault(l.Depth, d.Depth), deepest),
		Nodes: orDefault(l.Nodes, d.Nodes),
	}
}

func orDefault(n, otherwise int) int {
	if n > 0 {
		return n
	}
	return otherwise
}
