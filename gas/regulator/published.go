package regulator

import "lowvent.example/schema/unit"

// Source is where a published figure stands.
type Source struct {
	Document string
	Address  string // where the text was read
}

const psi = 6894.757293168 // Pa

func ul144() Source {
	return Source{"UL 144 extract, 2021", "standards-download.mealir.com/ul-144-2021-pdf-free-download.html"}
}

func en16129() Source {
	return Source{"prEN 16129, scope", "standards.iteh.ai/catalog/standards/cen/5f2569a1-6381-4d94-a9e7-dc8fc45dc017/pren-16129"}
}

// Rating is the highest inlet pressure for which a standard has its regulators
// built.
type Rating struct {
	What  string
	Inlet unit.GaugePressure
	Source
}

// Ratings returns the inlet ratings of the standards that were read, in the order
// first stage before second, North America before Europe. A regulator's own plate
// goes before them: the first is the least that UL 144 asks for.
func Ratings() []Rating {
	return []Rating{
		{"first stage, single stage and integral two-stage, at least", 250 * psi, ul144()},
		{"second stage or 2 psi service", 10 * psi, ul144()},
		{"propane supply, at most", 16e5, en16129()},
		{"butane supply, at most", 7.5e5, en16129()},
	}
}

// Ambient is the range of temperature for which a standard has its regulators
// built.
type Ambient struct {
	Low, High unit.Temperature
	Source
}

// Ambients returns the ranges of the standards that were read.
func Ambients() []Ambient {
	return []Ambient{
		{233.15, 328.15, ul144()},
		{253.15, 323.15, en16129()},
	}
}

// Relief is the pressure to which a standard has a relief limit what is behind a
// regulator that fails.
type Relief struct {
	What  string
	Limit unit.GaugePressure
	Source
}

// Reliefs returns the limits of a Type II relief. A Type I relief only lets off what
// leaks through a shut seat and limits nothing.
func Reliefs() []Relief {
	return []Relief{
		{"Type II, second stage, integral two-stage, or changeover of a two-stage system", 2 * psi, ul144()},
		{"Type II, 2 psi service", 5 * psi, ul144()},
	}
}
