package source

import "strings"

// Nearest gives the known word that is nearest to a mistyped one, or "" when
// none is near enough. Case is ignored. Nearness is the optimal string
// alignment distance: the least number of letters put in, left out, replaced,
// or swapped with their neighbour, no letter being touched twice. A word is
// near enough at a distance of at most a third of the mistyped word's length,
// or of 1 if that is more, as long as some letter is kept. Of equally near
// words the first in byte order is given, whatever the order of known.
func Nearest(word string, known []string) string {
	letters := []rune(strings.ToLower(word))
	limit := min(max(1, len(letters)/3), len(letters)-1)
	best, least := "", limit+1
	for _, candidate := range known {
		d := alignment(letters, []rune(strings.ToLower(candidate)))
		if d < least || d == least && d <= limit && candidate < best {
			best, least = candidate, d
		}
	}
	return best
}

// alignment is the optimal string alignment distance of a and b.
func alignment(a, b []rune) int {
	older, old := make([]int, len(b)+1), make([]int, len(b)+1)
	now := make([]int, len(b)+1)
	for j := range old {
		old[j] = j
	}
	for i := 1; i <= len(a); i++ {
		now[0] = i
		for j := 1; j <= len(b); j++ {
			replace := old[j-1]
			if a[i-1] != b[j-1] {
				replace++
			}
			now[j] = min(old[j]+1, now[j-1]+1, replace)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				now[j] = min(now[j], older[j-2]+1)
			}
		}
		older, old, now = old, now, older
	}
	return old[len(b)]
}
