package term

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// style paints a signal word.
func style(word report.Signal) text.Style {
	switch word {
	case report.Danger:
		return text.Danger
	case report.Warning:
		return text.Warning
	case report.Caution:
		return text.Caution
	}
	return text.Notice
}

// tally lists ids sorted, each with how often it came when that is not once.
func tally(ids []string) string {
	ids = slices.Sorted(slices.Values(ids))
	var out []string
	for len(ids) > 0 {
		n := 1
		for n < len(ids) && ids[n] == ids[0] {
			n++
		}
		one := ids[0]
		if n > 1 {
			one += fmt.Sprintf(" (%d)", n)
		}
		out, ids = append(out, one), ids[n:]
	}
	return strings.Join(out, ", ")
}
