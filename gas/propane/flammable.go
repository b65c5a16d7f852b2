package propane

import "lowvent.example/schema/unit"

// FlammableRange is one source's statement of the shares of propane in air, by
// volume, between which the mixture burns.
type FlammableRange struct {
	Lower, Upper unit.Ratio // by volume; 0.021 is 2.1 %
	Gas          string     // what the source says it is about
	Source       string
	Address      string // where the text was read; empty if it was not
	Read         bool   // false: from memory, nobody read it
}

// FlammableRanges returns what the sources say, lowest lower limit first. They
// differ because the limit depends on the vessel, the flame's direction and the
// criterion of the test, and because some speak of mixtures.
func FlammableRanges() []FlammableRange {
	return []FlammableRange{
		{0.017, 0.108, "liquefied petroleum gas", "General LPG information page, Austria", "schurian.at/informationen-zu-fluessiggas.html", true},
		{0.017, 0.109, "propane", "IEC 60079-20-1 (same figure as IEC 80079-20-1)", "", false},
		{0.021, 0.095, "propane", "NFPA and NIOSH pocket guide figure", "", false},
		{0.0215, 0.096, "commercial propane", "Approximate properties of LP-gases, equipment maker page", "www.patioheat.com/lp_gas.htm", true},
		{0.023, 0.095, "propane", "Propane information page, burner maker", "flameengineering.com/pages/propane-information", true},
		{0.024, 0.095, "propane", "Canadian gas technician training text, 8th ed. 2025, Unit 3", "github.com/MikeKapin/csa-training-data units-markdown", true},
	}
}

// WidestRange returns the range on which physics judges unless a code names
// another: that with the lowest lower limit, 1.7 %. It calls a mixture flammable
// soonest and so errs on the cautious side, by up to 0.7 % by volume against the
// highest published lower limit. Of two sources with that figure it names the
// one that was read.
func WidestRange() FlammableRange { return FlammableRanges()[0] }
