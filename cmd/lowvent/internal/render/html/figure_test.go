package html

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/paper"
)

func sized(wide, high, scale float64) *paper.Picture {
	return &paper.Picture{Drawing: &draw.Drawing{ID: fmt.Sprintf("d%gx%g", wide, high), Title: "D", Alt: "a", Width: wide, Height: high, Scale: scale}}
}

// TestDrawingsKeepTheirSize: a drawing that is too wide for a page that stands lies on its
// side; one that is larger still is printed smaller, in the width that is told.
func TestDrawingsKeepTheirSize(t *testing.T) {
	for _, c := range []struct {
		wide, high, scale float64
		lies              bool
		width, says       string
	}{
		{180, 225, 20, false, "", "Scale 1:50 when printed at 100 %."},
		{181, 100, 20, true, "", "Scale 1:50 when printed at 100 %."},
		{250, 165, 20, true, "", "Scale 1:50 when printed at 100 %."},
		{261, 165, 0, true, "", ""},
		{300, 100, 50, true, "240.000mm", "made smaller, to 80 %, which is 1:25 when printed at 100 %."},
		{100, 300, 0, false, "75.000mm", "made smaller, to 75 %."},
		{400, 100, 0, true, "260.000mm", "made smaller, to 65 %."},
	} {
		page := read(t, &paper.Document{Parts: []paper.Part{{ID: "p", Sections: []paper.Section{{ID: "s", Blocks: []paper.Block{sized(c.wide, c.high, c.scale)}}}}}})
		figure, sheet := page.first(t, "figure"), page.first(t, "style").words()
		if got := figure.first(t, "figcaption").words(); !strings.HasSuffix(got, c.says) {
			t.Errorf("%g by %g: %q", c.wide, c.high, got)
		}
		if lies := len(page.classed("broad")) == 1; lies != c.lies {
			t.Errorf("%g by %g: lies %v", c.wide, c.high, lies)
		}
		want := ""
		if c.width != "" {
			want = "@media print{.fit1>svg:first-child{width:" + c.width + "}}"
		}
		if (figure.attrs["class"] == "fit1") != (want != "") || !strings.Contains(sheet, want) || want == "" && strings.Contains(sheet, "fit1") {
			t.Errorf("%g by %g: class %q", c.wide, c.high, figure.attrs["class"])
		}
	}
}

// TestALongFootLeavesLessRoom for a drawing.
func TestALongFootLeavesLessRoom(t *testing.T) {
	d := &paper.Document{Foot: strings.Repeat("prepared ", 60), Parts: []paper.Part{{ID: "p", Sections: []paper.Section{{ID: "s", Blocks: []paper.Block{sized(250, 165, 0)}}}}}}
	if len(read(t, d).classed("fit1")) != 1 {
		t.Error("the drawing reaches the foot")
	}
}

// TestNoHeadingIsLeftAlone: the heading over a broad drawing lies with it, be it that of a
// section or one within, and what follows stands.
func TestNoHeadingIsLeftAlone(t *testing.T) {
	wide, head, para := sized(250, 100, 0), &paper.Heading{Text: "over"}, &paper.Para{Text: "p"}
	for _, c := range []struct {
		blocks []paper.Block
		want   []string // what lies, page by page
	}{
		{[]paper.Block{wide, para}, []string{"h3 figure"}},
		{[]paper.Block{para, wide}, []string{"figure"}},
		{[]paper.Block{wide, wide, para}, []string{"h3 figure", "figure"}},
		{[]paper.Block{para, head, wide, head, para}, []string{"h4 figure"}},
		{[]paper.Block{wide, head, wide}, []string{"h3 figure", "h4 figure"}},
		{[]paper.Block{head, para, sized(170, 100, 0)}, nil},
		{[]paper.Block{&paper.Box{Blocks: []paper.Block{head, wide}}, para}, []string{"h4 figure"}},
		{[]paper.Block{head}, nil},
	} {
		var got []string
		for _, lying := range of(t, c.blocks...).classed("broad") {
			var names []string
			for _, n := range lying.below {
				if n.name != "" {
					names = append(names, n.name)
				}
			}
			got = append(got, strings.Join(names, " "))
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Error(diff)
		}
	}
}

// TestFootInMargin: whatever the foot says, it is one string of the style sheet, and no
// sign in it ends that.
func TestFootInMargin(t *testing.T) {
	sheet := read(t, &paper.Document{Foot: `a "b" \c}` + "\n</style> é"}).first(t, "style").below[0].text
	if want := `@bottom-left{content:"a \22 b\22  \5c c\7d  \3c \2f style\3e  é";`; !strings.Contains(sheet, want) {
		t.Errorf("%s lacks %s", sheet[strings.Index(sheet, "@supports"):], want)
	}
}
