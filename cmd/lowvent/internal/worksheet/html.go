package worksheet

import (
	"fmt"
	"html"
	"strings"

	"lowvent.example/cmd/lowvent/internal/ask"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// Write makes the worksheet of a scene.
func Write(o ask.Options) ([]byte, error) {
	w, err := ask.NewWalk(o)
	if err != nil {
		return nil, err
	}
	l, faults := layout.Load(source.NewFile(o.Scene, o.First))
	if len(faults) > 0 {
		return nil, faults
	}
	p := &page{}
	p.document(o.Scene, sheets(w), l)
	return []byte(p.String()), nil
}

// page writes well-formed markup; every text passes through its escape.
type page struct{ strings.Builder }

func (p *page) put(format string, texts ...any) {
	for i, text := range texts {
		texts[i] = html.EscapeString(fmt.Sprint(text))
	}
	fmt.Fprintf(p, format, texts...)
}

func (p *page) document(scene string, all []sheet, l *layout.Layout) {
	p.put("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" content=\"width=device-width\"/>\n<title>Worksheet for a %s: what to measure, and how</title>\n", scene)
	p.WriteString("<style>\n" + style + "</style>\n</head>\n<body>\n")
	p.front(scene, all, l)
	for _, one := range all {
		p.sheet(one)
	}
	p.put("</main>\n<footer><p>%s</p></footer>\n</body>\n</html>\n", report.KeepOff)
}

// front is the first page: the cautions, how to fill in the sheets, and the drawings.
func (p *page) front(scene string, all []sheet, l *layout.Layout) {
	p.put("<header>\n<h1>Worksheet for a %s</h1>\n<div class=\"caution\">\n", scene)
	for _, each := range report.Cautions() {
		p.put("<p>%s</p>\n", each)
	}
	p.put("</div>\n</header>\n<main>\n<section class=\"front\">\n<h2>How to fill it in</h2>\n<ul>\n")
	for _, each := range rules {
		p.put("<li>%s</li>\n", each)
	}
	p.put("</ul>\n<p class=\"who\">Dwelling <span class=\"line wide\"></span> Measured by <span class=\"line\"></span> Date <span class=\"line short\"></span></p>\n")
	p.contents(all)
	p.put("</section>\n<section class=\"sheet\">\n")
	p.drawings(scene, all, l)
	p.put("</section>\n")
}

// rules are how the sheets are filled in.
var rules = []string{
	"A blank stays not known. It never counts as good, and to leave one is always right when you have not looked.",
	"Look, read and measure. Loosen, open, turn on or take off no gas part; what can't be seen without that is for the licensed fitter.",
	"Write the figure with the unit on your tape or plate, and a tolerance where you are not sure.",
	"Tick that a list is complete only after going through that place, behind, below and above. What is not ticked is not complete.",
	"Copy a page for each further thing of its kind. Then give the answers to \"lowvent starter --ask\", which asks the same in the same order, or write them into the file.",
}

// contents lists the sheets.
func (p *page) contents(all []sheet) {
	p.put("<h2>The sheets</h2>\n<nav aria-label=\"The sheets\">\n<ul class=\"contents\">\n<li>Where to measure: two drawings</li>\n")
	for _, one := range all {
		p.put("<li><a href=\"#sheet-%s\">%s  %s</a></li>\n", one.letter, one.letter, one.title)
	}
	p.put("</ul>\n</nav>\n")
}

func (p *page) sheet(one sheet) {
	p.put("<section class=\"sheet\" id=\"sheet-%s\">\n<h2>%s  %s</h2>\n", one.letter, one.letter, one.title)
	if one.about != "" {
		p.put("<p>%s</p>\n", paper(one.about))
	}
	if strings.Count(one.at, "/") > 1 {
		p.put("<p class=\"who\">Name of your own <span class=\"line wide\"></span></p>\n")
	}
	for _, t := range one.tables {
		p.table(t)
	}
	p.ticks(one)
	p.put("</section>\n")
}

// paper puts the description of a list into words for paper.
func paper(text string) string {
	text = strings.ReplaceAll(text, "{} states", "Writing \"none\" states")
	return strings.ReplaceAll(text, "[] states", "Writing \"none\" states")
}
