package draw

import (
	"fmt"
	"strings"

	"lowvent.example/schema/layout"
)

// lineWords is what is told of a line, the least needful last.
func (s *schematic) lineWords(line *layout.Line) []string {
	words := []string{line.ID()}
	kind, known := line.Kind.Get()
	if kind == layout.LineKindDirect {
		return append(words, "screwed together")
	}
	of := "kind not known"
	if known {
		of = strings.ReplaceAll(string(kind), "-", " ")
	}
	words = append(words, of+", "+size(line), length(line))
	if s.zones.worsened(line) { // rows are wanted for the warning
		words = []string{line.ID(), of + ", " + size(line) + ", " + length(line)}
	}
	if load := s.told["line.load"+line.Spot().Pointer()]; load != "" {
		words = append(words, "load "+load)
	}
	return words
}

func size(line *layout.Line) string {
	if outside, known := line.Outside.Get(); known {
		return "outside " + outside.Written
	}
	if nominal, known := line.Nominal.Get(); known {
		return "nominal " + nominal
	}
	return "size not known"
}

func length(line *layout.Line) string {
	if long, known := line.Length.Get(); known {
		return "length " + long.Written
	}
	return "length not known"
}

// words tells the drawing to those who can't see it: every line with its ends.
func (s *schematic) words() string {
	var b strings.Builder
	fmt.Fprintf(&b, "A schematic of %d things and %d gas lines, left to right in the direction of the gas.", len(s.nodes), len(s.layout.Lines.All()))
	for _, line := range inFlow(s.layout) {
		from, _ := line.From.Get()
		to, _ := line.To.Get()
		fmt.Fprintf(&b, " %s leads from %s to %s, %s.", strings.Join(s.lineWords(line), ", "), s.name(from), s.name(to), s.pressureWords(line))
	}
	return b.String()
}

// pressureWords tells the pressure that can stand in a line.
func (s *schematic) pressureWords(line *layout.Line) string {
	zone := s.zones.of(line)
	switch {
	case s.zones.worsened(line):
		return "DANGER: " + reachesHere + ", " + s.zones.about(line).reason()
	case zone == "":
		return "pressure zone not known"
	}
	return string(zone) + " pressure"
}

// warning is what stands below a line's name where cylinder pressure can reach it unawares.
func (s *schematic) warning(line *layout.Line) []string {
	if !s.zones.worsened(line) {
		return nil
	}
	return []string{reachesHere, s.zones.about(line).reason()}
}

func (s *schematic) name(ref layout.Ref) string {
	if thing := s.layout.Find(ref); thing != nil {
		return thing.Label()
	}
	return string(ref)
}
