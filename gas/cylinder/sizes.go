package cylinder

import (
	"math"

	"lowvent.example/schema/unit"
)

// TradeSize is a size of cylinder as someone published it. What nobody
// published stays 0 and is not known.
type TradeSize struct {
	Name     string
	Water    unit.WaterMass // water capacity, kg
	Diameter unit.Length    // outside, m
	Height   unit.Length    // over all, with collar and foot ring, m
	Empty    unit.Mass      // with valve, kg
	Material Material
	Source   string
	Address  string
}

const (
	inch = 0.0254     // m
	lb   = 0.45359237 // kg
)

// TradeSizes lists the sizes whose dimensions were read, by water capacity. All
// are measures of retail pages, not of a maker's drawing: diameters of one size
// differ by half an inch between pages. Each call gives a new list.
func TradeSizes() []TradeSize {
	return []TradeSize{
		{Name: "20 lb", Water: 48 * lb, Diameter: 12.5 * inch, Height: 18 * inch, Empty: 18 * lb, Material: Steel,
			Source: "how-to article on the 20 lb tank, undated", Address: "homesteady.com/list-7495888-specifications-20-lb-lpg-tank.html"},
		{Name: "30 lb", Water: 72 * lb, Diameter: 12.5 * inch, Height: 24 * inch, Empty: 24 * lb, Material: Steel,
			Source: "article on tank sizes, undated (diameter, height); table of consumer cylinders, undated (height, empty weight); gas technician training text, 8th ed. 2025, Unit 11 (water capacity)", Address: "engineerfix.com/how-big-are-propane-tanks-sizes-and-dimensions"},
		{Name: "100 lb", Water: 239 * lb, Diameter: 14.5 * inch, Height: 48 * inch, Empty: 68 * lb, Material: Steel,
			Source: "article on the 100 lb tank, undated (diameter, height; another gives 14.5 to 15 in, a third 18 in, which at this height would hold nearly twice the water capacity); article on tank weights, undated (68 to 71 lb); gas technician training text, 8th ed. 2025, Unit 11 Figure 4-3 (water capacity)", Address: "thevoicemagazine.cwu.org/news/100-lb-propane-tank-size"},
	}
}

// TradeSizeFor returns the published size whose water capacity lies within 2 %
// of the given one, if there is one. A vessel of that capacity can still have
// other dimensions: whoever uses them names their source.
func TradeSizeFor(waterCapacity unit.WaterMass) (size TradeSize, found bool) {
	for _, size := range TradeSizes() {
		if math.Abs(float64(waterCapacity)/float64(size.Water)-1) <= 0.02 {
			return size, true
		}
	}
	return TradeSize{}, false
}

// Vessel returns the size as a vessel.
func (s TradeSize) Vessel() Vessel {
	return Vessel{Water: s.Water, Diameter: s.Diameter, Height: s.Height, Metal: s.Empty, Material: s.Material}
}
