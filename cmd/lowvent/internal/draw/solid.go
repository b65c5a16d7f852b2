package draw

import (
	"math"

	"lowvent.example/schema/layout"
)

// xyz is a point of the dwelling, in m.
type xyz [3]float64

func placed(p layout.Point) xyz {
	return xyz{float64(p[0].Nominal), float64(p[1].Nominal), float64(p[2].Nominal)}
}

// nearest is where on the way from a to b, as a share of it, the place nearest to p
// lies, how far that is off, and how long the way is.
func nearest(a, b, p xyz) (share, off, long float64) {
	dot, square := 0.0, 0.0
	for i := range a {
		dot += (p[i] - a[i]) * (b[i] - a[i])
		square += (b[i] - a[i]) * (b[i] - a[i])
	}
	if square > 0 {
		share = min(1, max(0, dot/square))
	}
	for i := range a {
		d := a[i] + share*(b[i]-a[i]) - p[i]
		off += d * d
	}
	return share, math.Sqrt(off), math.Sqrt(square)
}
