package svg

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/render/markup"
)

// painter writes marks, and notes whether any number was none.
type painter struct {
	markup.Writer
	bad bool
}

func (p *painter) marks(marks []draw.Mark) {
	for _, m := range marks {
		switch m := m.(type) {
		case *draw.Path:
			p.path(m)
		case *draw.Circle:
			p.circle(m)
		case *draw.Text:
			p.text(m)
		case *draw.Group:
			p.group(m)
			continue
		}
		p.Line()
	}
}

func (p *painter) group(g *draw.Group) {
	p.Open("g", "data-of", g.Of)
	if g.Label != "" {
		p.Element("title", g.Label)
	}
	p.Line()
	p.marks(g.Marks)
	p.Close()
	p.Line()
}

func (p *painter) path(path *draw.Path) {
	var d strings.Builder
	for i, at := range path.Points {
		d.WriteString(map[bool]string{true: "M", false: "L"}[i == 0] + p.number(at.X) + " " + p.number(at.Y))
	}
	if path.Closed {
		d.WriteByte('Z')
	}
	p.Empty("path", append([]string{"d", d.String()}, p.look(path.Pen, path.Fill)...)...)
}

func (p *painter) circle(c *draw.Circle) {
	p.Empty("circle", append([]string{"cx", p.number(c.Centre.X), "cy", p.number(c.Centre.Y), "r", p.number(c.Radius)}, p.look(c.Pen, c.Fill)...)...)
}

func (p *painter) text(t *draw.Text) {
	x, y := p.number(t.At.X), p.number(t.At.Y)
	attributes := []string{"x", x, "y", y, "font-size", p.number(t.Size), "fill", colour(ink(t.Ink)),
		"text-anchor", [...]string{draw.Start: "", draw.Middle: "middle", draw.End: "end"}[t.Anchor]}
	if wide := t.Wide(); wide > 0 {
		attributes = append(attributes, "textLength", p.number(wide), "lengthAdjust", "spacingAndGlyphs")
	}
	if t.Bold {
		attributes = append(attributes, "font-weight", "bold")
	}
	if t.Turn != 0 {
		attributes = append(attributes, "transform", "rotate("+p.number(t.Turn)+" "+x+" "+y+")")
	}
	p.Element("text", t.Content, attributes...)
}

// look is how a line and the area within it are painted.
func (p *painter) look(pen draw.Pen, fill draw.Ink) []string {
	look := []string{"fill", "none"}
	if fill != draw.None {
		look[1] = colour(fill)
	}
	if pen.Width == 0 {
		return look
	}
	look = append(look, "stroke", colour(ink(pen.Ink)), "stroke-width", p.number(pen.Width))
	var dashes []string
	for _, each := range pen.Dash.Lengths() {
		dashes = append(dashes, p.number(each))
	}
	return append(look, "stroke-dasharray", strings.Join(dashes, " "))
}

// ink is the ink of lines and letters, for which none is black.
func ink(i draw.Ink) draw.Ink {
	if i == draw.None {
		return draw.Black
	}
	return i
}

func colour(i draw.Ink) string {
	red, green, blue := i.RGB()
	return fmt.Sprintf("#%02x%02x%02x", red, green, blue)
}

// number is a number of mm to a thousandth, as short as it can be written.
func (p *painter) number(x float64) string { return p.exact(math.Round(x*1000) / 1000) }

// exact is a number with all of its places.
func (p *painter) exact(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		p.bad = true
	}
	return strconv.FormatFloat(x+0, 'f', -1, 64) // adding 0 makes a negative zero a plain one
}
