package draw

import "math"

// nearest is where on the way from a to b, as a share of it, the place nearest to p
// lies, how far that is off, and how long the way is.
func nearest(a, b, p place) (share, off, long float64) {
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
