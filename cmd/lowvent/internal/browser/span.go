package browser

// Span is a distance that a drawing on the page shows, as it is measured on the screen.
type Span struct {
	Drawing              string // the title of the drawing
	Text, Check, Subject string
	Metres               float64 // as the drawing claims
	Scale                float64 // mm for a metre, as the drawing claims; 0 where it is not to scale
	Measured             float64 // metres, by the screen and the scale; 0 where it is not to scale
}

// Spans measures every distance of every drawing on the page, however much the screen has
// shrunk the drawing: by what the browser paints, and not by what the file says.
func (p *Page) Spans() []Span {
	p.t.Helper()
	var all []Span
	p.Eval(spans, &all)
	return all
}

const spans = `
[...document.querySelectorAll("svg line.span")].map(line => {
	const svg = line.ownerSVGElement, data = name => line.getAttribute("data-" + name) || "";
	const pixels = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
	const m = line.getScreenCTM(), at = end => new DOMPoint(line["x" + end].baseVal.value, line["y" + end].baseVal.value).matrixTransform(m);
	const from = at(1), to = at(2), scale = Number(svg.getAttribute("data-scale") || 0);
	return {
		Drawing: svg.querySelector("title").textContent, Text: data("text"), Check: data("check"), Subject: data("subject"),
		Metres: Number(data("metres")), Scale: scale,
		Measured: scale && Math.hypot(from.x - to.x, from.y - to.y) / pixels / scale,
	};
})`
