package gas

import (
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
)

// PartSupplies is what to do where [RegulatedMeetsUnregulated]. Neither an edit of the
// file nor a part that is added takes that danger away.
const PartSupplies = "Cylinder pressure and regulated gas meet here. Keep every cylinder shut and leave the file as it is, " +
	"if the pipes are so: it is not to be made to agree. The licensed fitter parts the two supplies."

// supplies takes the lines that lead to a changeover.
func supplies(s *check.Sheet, c *layout.Changeover) []*layout.Line {
	check.List(s, &s.Layout().Lines)
	lines := s.Layout().FedBy(c.Ref())
	for _, line := range lines {
		check.Read(s, &line.To)
	}
	return lines
}

// RegulatedMeetsUnregulated takes whether, by the lines of the file, one line brings a
// changeover gas from a cylinder without a regulator between, and another line gas that
// has been through one. It asks for nothing that the file leaves out: what it finds
// changes the words of an answer, and never the answer.
func RegulatedMeetsUnregulated(s *check.Sheet, c *layout.Changeover) bool {
	bare, regulated := false, false
	for _, line := range supplies(s, c) {
		if unregulated(s, line) {
			bare = true
			continue
		}
		from := check.Read(s, &line.From)
		regulated = regulated || from.Section() == "regulators" || comesFrom(s.Layout(), from, "regulators")
	}
	return bare && regulated
}
