//go:build seen

package main

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/browser"
	"lowvent.example/cmd/lowvent/internal/handoff"
	"lowvent.example/schema/report"
)

// onScreens: at no width does anything run over the edge of the screen, nothing is asked
// for but the page, and the browser has nothing to complain of.
func onScreens(t *testing.T, p *browser.Page, widths ...int) {
	t.Helper()
	for _, width := range widths {
		p.Resize(width)
		if out := p.Wide(); len(out) > 0 {
			t.Errorf("at %d px these run over the edge: %q", width, out[:min(len(out), 8)])
		}
	}
	if all := p.Requests(); len(all) != 1 || !strings.HasPrefix(all[0], "file:///") {
		t.Errorf("asked for %q", all)
	}
	if all := p.Messages(); len(all) > 0 {
		t.Errorf("the browser complains: %q", all)
	}
}

// spansToScale: each distance measures in the browser what the drawing claims, to 0.5 %,
// and what the report found where it speaks of a finding.
func spansToScale(t *testing.T, h *handedOver) {
	t.Helper()
	measured := 0
	for _, s := range h.page.Spans() {
		if s.Scale == 0 {
			t.Errorf("%s: %s is no distance of a drawing to scale", s.Drawing, s.Text)
		}
		if measured++; math.Abs(s.Measured/s.Metres-1) > 0.005 {
			t.Errorf("%s: %s measures %.4f m, the drawing claims %.4f", s.Drawing, s.Text, s.Measured, s.Metres)
		}
		if s.Check != "" && !foundBy(h.report, s) {
			t.Errorf("%s: no finding of %s on %s found %s", s.Drawing, s.Check, s.Subject, s.Text)
		}
	}
	if measured == 0 {
		t.Error("no distance in any drawing")
	}
}

// foundBy tells whether a finding found just that distance.
func foundBy(r *report.FileReport, s browser.Span) bool {
	return slices.ContainsFunc(r.Findings, func(f report.Finding) bool {
		return f.Check == s.Check && f.Subject == s.Subject && slices.ContainsFunc(f.Parts, func(p report.Part) bool {
			return p.Found != nil && p.Found.SI != nil && math.Abs(*p.Found.SI-s.Measured) <= 0.005*s.Metres
		})
	})
}

// drawn is a text of a drawing as the browser sets it: the rectangle that holds its
// letters, in mm of the drawing.
type drawn struct {
	Drawing, Text            string
	Left, Top, Right, Bottom float64
	Sheet                    float64 // the width of the drawing
	Turned                   bool
}

// drawnTexts measures every text of every drawing. The browser's box of a line is as high
// as its font is at most; the letters here used reach 0.80 of the body above the line and
// 0.21 below it at most.
const drawnTexts = `
[...document.querySelectorAll("svg[role=img] text")].map(e => {
	const svg = e.ownerSVGElement, size = Number(e.getAttribute("font-size")), y = Number(e.getAttribute("y")), b = e.getBBox();
	const m = svg.getScreenCTM().inverse().multiply(e.getScreenCTM());
	const corners = [[b.x, y - 0.8 * size], [b.x + b.width, y - 0.8 * size], [b.x, y + 0.21 * size], [b.x + b.width, y + 0.21 * size]].map(c => new DOMPoint(...c).matrixTransform(m));
	const x = corners.map(c => c.x), all = corners.map(c => c.y);
	return {Drawing: svg.querySelector("title").textContent, Text: e.textContent, Turned: e.hasAttribute("transform"), Sheet: svg.viewBox.baseVal.width,
		Left: Math.min(...x), Right: Math.max(...x), Top: Math.min(...all), Bottom: Math.max(...all)};
})`

// labelsApart: no text of a drawing lies over another by more than a hair, as the browser
// sets them with the fonts that it has.
func labelsApart(t *testing.T, p *browser.Page) {
	t.Helper()
	const hair = 0.1 // mm
	var all []drawn
	p.Eval(drawnTexts, &all)
	if len(all) < 40 {
		t.Errorf("only %d texts in the drawings", len(all))
	}
	for i, a := range all {
		for _, b := range all[:i] {
			over := min(a.Right, b.Right)-max(a.Left, b.Left) > hair && min(a.Bottom, b.Bottom)-max(a.Top, b.Top) > hair
			if a.Drawing == b.Drawing && over {
				t.Errorf("%s: %q lies over %q: %+v, %+v", a.Drawing, a.Text, b.Text, a, b)
			}
		}
	}
}

// handoffPrinted: on both papers each page has the foot, nothing lies beyond it, and each
// broad drawing has its true size on a page of its own that lies on its side.
func handoffPrinted(t *testing.T, h *handedOver) {
	t.Helper()
	var texts []drawn
	h.page.Eval(drawnTexts, &texts)
	for _, on := range []browser.Paper{browser.A4, browser.Letter} {
		pdf := h.page.Print(on)
		keep(t, fmt.Sprintf("%s-%s.pdf", strings.ReplaceAll(t.Name(), "/", "-"), on.Name), pdf)
		pages := browser.Words(t, pdf)
		feet(t, handoff.Foot, on.Name, pages)
		trueSize(t, on, texts, pages)
	}
}

// feet: the foot stands on each page with the number of the page beside it, and nothing
// below.
func feet(t *testing.T, foot, on string, pages [][]browser.Word) {
	t.Helper()
	for i, words := range pages {
		low, beside := below(words, strings.Fields(foot))
		if want := fmt.Sprintf("%d of %d", i+1, len(pages)); !low || beside != want {
			t.Errorf("%s, page %d: the foot is there: %v; beside it or below stands %q, want %q", on, i+1, low, beside, want)
		}
	}
}

// below looks for the last place of a text on a page, and gives the words beside it or
// below.
func below(words []browser.Word, text []string) (is bool, rest string) {
	for at := len(words) - len(text); at >= 0; at-- {
		if slices.EqualFunc(words[at:at+len(text)], text, func(w browser.Word, want string) bool { return w.Text == want }) {
			var beside []string
			for i, w := range words {
				if (i < at || i >= at+len(text)) && w.Bottom > words[at].Top {
					beside = append(beside, w.Text)
				}
			}
			return true, strings.Join(beside, " ")
		}
	}
	return false, ""
}

// trueSize: the words of each drawing that is wider than a page that stands are as far
// apart on paper as in the drawing, to 0.5 %, and no other drawing is on that page.
func trueSize(t *testing.T, on browser.Paper, texts []drawn, pages [][]browser.Word) {
	t.Helper()
	drawings := map[string][]drawn{}
	for _, each := range texts {
		if each.Sheet > 200 {
			drawings[each.Drawing] = append(drawings[each.Drawing], each)
		}
	}
	if len(drawings) < 3 {
		t.Errorf("only %d broad drawings", len(drawings))
	}
	for title, labels := range drawings {
		factor := factorOn(labels, pages)
		if strings.Contains(title, "(not to scale)") && factor > 0 && factor <= 1.005 {
			continue // it may be made smaller, and the paper says by how much
		}
		if !(math.Abs(factor-1) <= 0.005) {
			t.Errorf("%s: %s: what stands apart has %.4f of that on paper", on.Name, title, factor)
		}
	}
}

// factorOn is the factor by which a drawing was printed, by the page on which its title
// stands and most of its words are found: the middle one of those of all pairs of words
// that stand far apart.
func factorOn(labels []drawn, pages [][]browser.Word) float64 {
	var most []float64
	for _, words := range pages {
		if titled, _ := below(words, strings.Fields(labels[0].Drawing)); !titled {
			continue
		}
		if f := factors(labels, words); len(f) > len(most) {
			most = f
		}
	}
	if len(most) < 10 {
		return math.NaN()
	}
	slices.Sort(most)
	return most[len(most)/2]
}

// factors compares each pair of labels that stand far apart, and whose first words stand
// once in the drawing and once on the page.
func factors(labels []drawn, words []browser.Word) (all []float64) {
	const far = 40 // mm
	type pair struct{ drawn, printed float64 }
	var both []pair
	for _, l := range labels {
		first := strings.Fields(l.Text)[0]
		if at := only(words, first); at != nil && !l.Turned && once(labels, first) {
			both = append(both, pair{l.Left, at.Left})
		}
	}
	for i, a := range both {
		for _, b := range both[:i] {
			if apart := math.Abs(a.drawn - b.drawn); apart > far {
				all = append(all, math.Abs(a.printed-b.printed)/apart)
			}
		}
	}
	return all
}

// only is the one word of a page that reads so, or nil.
func only(words []browser.Word, text string) (at *browser.Word) {
	for i := range words {
		if words[i].Text == text {
			if at != nil {
				return nil
			}
			at = &words[i]
		}
	}
	return at
}

func once(labels []drawn, first string) bool {
	n := 0
	for _, l := range labels {
		n += strings.Count(" "+l.Text+" ", " "+first+" ")
	}
	return n == 1
}
