package check

import (
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// Course is a computed course of one quantity over another for one kind of subject, such
// as a cylinder's temperature over days. It is drawn at the values as written, without
// their tolerances, and no check may rest on it.
type Course[S layout.Item] struct {
	ID    string
	Title string
	Calc  func(*Sheet, S) report.Course
}

// ShowCourse lists a course for everything in a section, for who asks for it.
func ShowCourse[T any, P item[T]](c *Course[P], section func(*layout.Layout) *layout.Section[T]) Shown {
	return Shown{ID: c.ID, Title: c.Title, Detail: true, show: func(r *run) []report.Figure {
		var out []report.Figure
		for _, each := range section(r.layout).All() {
			out = append(out, drawn(r, c, P(each)))
		}
		return out
	}}
}

func drawn[S layout.Item](r *run, c *Course[S], subject S) report.Figure {
	s := r.sheet(&picker{first: true}, subject.Spot())
	course := c.Calc(s, subject)
	out := report.Figure{ID: c.ID, Title: c.Title, Subject: subject.Spot().Pointer(), Label: subject.Label(), Working: s.lines}
	if s.stuck() {
		out.Missing, out.Note = s.missing, s.why
		return out
	}
	out.Course = &course
	if len(s.gaps) > 0 {
		out.Missing = s.gaps
		out.Note = "of what is listed; the lists are not stated complete"
	}
	return out
}
