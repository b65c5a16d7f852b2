package worksheet

import (
	"fmt"
	"html"
	"slices"
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
	p, all := &page{}, sheets(w)
	heading := "Worksheet for a " + o.Scene
	p.document(heading+": what to measure, and how", heading, func() {
		p.front(o.Scene, all, l)
		for _, one := range all {
			p.sheet("sheet", one)
		}
	})
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

// document writes a page: the cautions at its head, what to measure, and at its foot the
// last word.
func (p *page) document(title, heading string, main func()) {
	p.put("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" content=\"width=device-width\"/>\n<title>%s</title>\n", title)
	p.WriteString("<style>\n" + style + "</style>\n</head>\n<body>\n")
	p.put("<header>\n<h1>%s</h1>\n<div class=\"caution\">\n", heading)
	for _, each := range report.Cautions() {
		p.put("<p>%s</p>\n", each)
	}
	p.put("</div>\n</header>\n<main>\n")
	main()
	p.put("</main>\n<footer><p>%s</p></footer>\n</body>\n</html>\n", report.KeepOff)
}

// front is the first page: how to fill in the sheets, and the drawings.
func (p *page) front(scene string, all []sheet, l *layout.Layout) {
	p.put("<section class=\"front\">\n")
	p.howTo("Copy a page for each further thing of its kind. Then give the answers to \"lowvent starter --ask\", which asks the same in the same order, or write them into the file.")
	p.put("<p class=\"who\">Dwelling <span class=\"line wide\"></span> Measured by <span class=\"line\"></span> Date <span class=\"line short\"></span></p>\n")
	p.contents(all, "Where to measure: two drawings")
	p.put("</section>\n<section class=\"sheet\">\n")
	p.drawings(scene, all, l)
	p.put("</section>\n")
}

func (p *page) howTo(more ...string) {
	p.put("<h2>How to fill it in</h2>\n<ul>\n")
	for _, each := range slices.Concat(rules, more) {
		p.put("<li>%s</li>\n", each)
	}
	p.put("</ul>\n")
}

// rules are how any sheet is filled in.
var rules = []string{
	"A blank stays not known. It never counts as good, and to leave one is always right when you have not looked.",
	"Look, read and measure. Loosen, open, turn on or take off no gas part; what can't be seen without that is for the licensed fitter.",
	"Write the figure with the unit on your tape or plate, and a tolerance where you are not sure.",
	"Tick that a list is complete only after going through that place, behind, below and above. What is not ticked is not complete.",
}

// contents lists the sheets, after those that have no letter.
func (p *page) contents(all []sheet, before ...string) {
	p.put("<h2>The sheets</h2>\n<nav aria-label=\"The sheets\">\n<ul class=\"contents\">\n")
	for _, each := range before {
		p.put("<li>%s</li>\n", each)
	}
	for _, one := range all {
		p.put("<li><a href=\"#sheet-%s\">%s  %s</a></li>\n", one.letter, one.letter, one.title)
	}
	p.put("</ul>\n</nav>\n")
}

func (p *page) sheet(class string, one sheet) {
	p.put("<section class=\"%s\" id=\"sheet-%s\">\n<h2>%s  %s</h2>\n", class, one.letter, one.letter, one.title)
	if one.about != "" {
		p.put("<p>%s</p>\n", paper(one.about))
	}
	if class == "sheet" && strings.Count(one.at, "/") > 1 {
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
