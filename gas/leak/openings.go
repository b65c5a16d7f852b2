package leak

import "lowvent.example/schema/unit"

// Opening is one source's statement of how large a hole is when a joint leaks.
type Opening struct {
	Name    string
	Area    unit.Area
	Note    string
	Source  string
	Address string // where the text was read; empty if it was not
	Read    bool   // false: from memory, nobody read it
}

const (
	areaStandard          = "IEC 60079-10-1:2015, Annex B, suggested hole sizes for secondary releases"
	hazardousAreas        = "Electrical Installations in Hazardous Areas, p. 54"
	hazardousAreasAddress = "digilib.universitaspertamina.ac.id/ebook/Electrical%20Installation%20in%20Hazardous%20Area/files/basic-html/page78.html"
)

// Openings returns what the sources say, smallest first. They are sizes to reckon
// with when areas are classified in industry, chosen by their authors to be fairly
// conservative; nobody measured them on the joints of a van. A hose that tears or
// a pipe that shears is far larger. The same page names a screwed joint as well,
// but its figure could not be read.
func Openings() []Opening {
	return []Opening{
		{"small connection, leak that does not grow", 0.025e-6, "least of the range 0.025 to 0.1 mm² for bores up to 50 mm", areaStandard, "", false},
		{"small connection, leak that grows", 0.25e-6, "greatest of the range 0.1 to 0.25 mm² for bores up to 50 mm; for a gasket the greatest that does not grow", areaStandard, "", false},
		{"compression joint", 1e-6, "0.1 mm by 10 mm; the path round the olive is a labyrinth, so the velocity is low", hazardousAreas, hazardousAreasAddress, true},
		{"O-ring", 1e-6, "a crack of 1 mm by 1 mm", hazardousAreas, hazardousAreasAddress, true},
		{"spiral gasket", 2.5e-6, "50 mm by 0.05 mm, the joint relaxed", hazardousAreas, hazardousAreasAddress, true},
		{"fibre gasket", 40e-6, "25 mm by 1.6 mm, the piece between two bolts blown out", hazardousAreas, hazardousAreasAddress, true},
	}
}
