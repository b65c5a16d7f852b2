package cylinder

import "math"

// tank is a vessel, or several alike that stay alike, in a run.
type tank struct {
	volume, diameter float64 // m³, m
	metal            float64 // J/K of one
	count            float64 // how many
	members          []int   // their indices in Supply.Vessels

	gives bool // feeds at present
	spent bool // has given out, and is left as it was then
}

// bank is the right-hand side of a run. Its values y are mass in kg and
// temperature in K of one vessel of each tank, then the heat taken up and the
// enthalpy carried off by all, in J.
type bank struct {
	of         properties
	wall       float64 // W/(m² K)
	least      float64 // K
	air        Air
	changeover bool
	tanks      []tank
	feeding    int     // tank that the regulator is fed from, or would be
	flow       float64 // kg/s, drawn at present

	heat, store, taken [mostVessels]float64 // of one vessel of each tank: W, J/K, J/kg
	scratch            []float64
}

// alike is how close two temperatures in K are for two vessels to share a draw,
// and which part of the draw one must want to take up before it is shut out: it
// keeps the non-return valves from chattering.
const alike = 1e-6

func newBank(s *Supply) (*bank, []float64, error) {
	of, err := ofPropane()
	if err != nil {
		return nil, nil, err
	}
	b := &bank{of: of, wall: float64(s.Wall), least: float64(s.Least), air: s.Air, changeover: s.Changeover}
	var y []float64
	for i, v := range s.Vessels {
		if twin := b.twin(s, i); twin >= 0 {
			b.tanks[twin].count++
			b.tanks[twin].members = append(b.tanks[twin].members, i)
			continue
		}
		b.tanks = append(b.tanks, tank{
			volume: float64(Volume(v.Water)), diameter: float64(v.Diameter),
			metal: float64(v.Metal) * float64(v.Material.HeatCapacity()), count: 1, members: []int{i},
		})
		y = append(y, float64(v.Propane), float64(s.Start))
	}
	b.scratch = make([]float64, len(y)+2)
	return b, append(y, 0, 0), nil
}

// twin is the tank of vessels just like vessel i that give side by side with it,
// or −1.
func (b *bank) twin(s *Supply, i int) int {
	for k, t := range b.tanks {
		if !s.Changeover && s.Vessels[t.members[0]] == s.Vessels[i] {
			return k
		}
	}
	return -1
}

// wet is by how much the propane in a vessel of tank i is more than its vapour, in
// kg for each m³ of the vessel; 0 or less where no liquid is left.
func (b *bank) wet(i int, y []float64) float64 {
	return y[2*i]/b.tanks[i].volume - b.of.vapour.at(reduced(y[2*i+1]))
}

// slope is the heat balance of every vessel:
//
//	dT/dt = (U·A·(T_air − T) − ṁ·λ)/C,  C = m·dg/dT + V·df/dT + metal
//
// Those that give keep one rate of T, which shares the draw out among them.
func (b *bank) slope(t float64, y, slope []float64) {
	air := b.air.at(t)
	rate, heat := 0.0, 0.0
	wanted, room := -b.flow, 0.0
	for i := range b.tanks {
		k := &b.tanks[i]
		if k.spent {
			continue
		}
		b.exchange(i, air, y)
		heat += k.count * b.heat[i]
		if k.gives {
			wanted += k.count * b.heat[i] / b.taken[i]
			room += k.count * b.store[i] / b.taken[i]
		}
	}
	if room > 0 {
		rate = wanted / room
	}
	carried := 0.0
	for i := range b.tanks {
		k := &b.tanks[i]
		switch {
		case k.spent:
			slope[2*i], slope[2*i+1] = 0, 0
		case k.gives:
			draw := b.draw(i, rate)
			slope[2*i], slope[2*i+1] = -draw, rate
			carried += k.count * draw * (b.of.g.at(reduced(y[2*i+1])) + b.taken[i])
		default:
			slope[2*i], slope[2*i+1] = 0, b.heat[i]/b.store[i]
		}
	}
	slope[len(slope)-2], slope[len(slope)-1] = heat, carried
}

// draw is what one vessel of tank i gives, in kg/s, while its liquid changes
// temperature at the given rate in K/s.
func (b *bank) draw(i int, rate float64) float64 {
	return (b.heat[i] - b.store[i]*rate) / b.taken[i]
}

// exchange works out the heat that one vessel of tank i takes up, what it stores
// for each kelvin, and what a kilogram drawn from it takes.
func (b *bank) exchange(i int, air float64, y []float64) {
	k, m, T := &b.tanks[i], y[2*i], y[2*i+1]
	x := reduced(T)
	liquid, vapour := b.of.liquid.at(x), b.of.vapour.at(x)
	column := max(0, m-vapour*k.volume) / (liquid - vapour)
	b.heat[i] = b.wall * wetted(column, k.diameter) * (air - T)
	b.store[i] = (m*b.of.dg.at(x)+k.volume*b.of.df.at(x))/half + k.metal
	if k.gives {
		b.taken[i] = b.of.taken.at(x)
	}
}

// turn is what can change during a draw.
type turn uint8

const (
	cold  turn = iota // the feeding liquid has reached the least temperature
	dry               // a vessel that gives has no liquid left
	shut              // a vessel would take gas up: its non-return valve closes
	opens             // the others have cooled to a vessel that was shut
)

// next is the turn closest to happening, where it falls to zero, and its tank.
func (b *bank) next(t float64, y []float64) (distance float64, what turn, which int) {
	T := y[2*b.feeding+1]
	distance, what, which = T-b.least, cold, b.feeding
	closer := func(d float64, w turn, i int) {
		if d < distance {
			distance, what, which = d, w, i
		}
	}
	giving := 0
	for i := range b.tanks {
		switch k := &b.tanks[i]; {
		case k.gives:
			giving++
			d := b.wet(i, y)
			if d <= 0 { // before cold: a dry vessel is empty, however cold it is
				return d, dry, i
			}
			closer(d, dry, i)
		case !k.spent && !b.changeover:
			closer(T-y[2*i+1]+alike, opens, i)
		}
	}
	if giving > 1 {
		b.slope(t, y, b.scratch)
		for i := range b.tanks {
			if b.tanks[i].gives {
				closer(alike-b.scratch[2*i]/b.flow, shut, i)
			}
		}
	}
	return distance, what, which
}

// event is next for the integrator.
func (b *bank) event(t float64, y []float64) float64 {
	distance, _, _ := b.next(t, y)
	return distance
}

// engage opens the valves at the start of a draw, or after a vessel has given
// out: the first one not spent with Changeover, else the warmest and those as warm.
// It tells whether there is any.
func (b *bank) engage(y []float64) bool {
	warmest := math.Inf(-1)
	for i := range b.tanks {
		k := &b.tanks[i]
		k.gives = false
		if T := y[2*i+1]; !k.spent && T > warmest && !(b.changeover && warmest > 0) {
			warmest, b.feeding = T, i
		}
	}
	if warmest < 0 {
		return false
	}
	for i := range b.tanks {
		k := &b.tanks[i]
		k.gives = i == b.feeding || !b.changeover && !k.spent && y[2*i+1] >= warmest-alike
	}
	return true
}

// level gives those that give one temperature, which keeps their energy: one
// that opens stands a hair over the others, and would not shut again.
func (b *bank) level(t float64, y []float64) {
	air, warmth, room := b.air.at(t), 0.0, 0.0
	for i := range b.tanks {
		if k := &b.tanks[i]; k.gives {
			b.exchange(i, air, y)
			warmth += k.count * b.store[i] * y[2*i+1]
			room += k.count * b.store[i]
		}
	}
	for i := range b.tanks {
		if b.tanks[i].gives {
			y[2*i+1] = warmth / room
		}
	}
}

// rest shuts all valves; the warmest, or the one in service, would feed.
func (b *bank) rest() {
	for i := range b.tanks {
		b.tanks[i].gives = false
	}
	b.flow = 0
}

// feeder is the tank that would feed at present: with the valves shut the
// warmest, so that a chart shows the pressure at the regulator.
func (b *bank) feeder(y []float64) int {
	if b.changeover || b.flow > 0 {
		return b.feeding
	}
	for i := range b.tanks {
		if !b.tanks[i].spent && (b.tanks[b.feeding].spent || y[2*i+1] > y[2*b.feeding+1]) {
			b.feeding = i
		}
	}
	return b.feeding
}

// energy is the internal energy of liquid, vapour and metal, in J over that of
// the metal at the middle of the range and of liquid there.
func (b *bank) energy(y []float64) (sum float64) {
	for i, k := range b.tanks {
		x := reduced(y[2*i+1])
		sum += k.count * (y[2*i]*b.of.g.at(x) + k.volume*b.of.f.at(x) + k.metal*half*x)
	}
	return sum
}

// mass is the propane in all vessels, in kg.
func (b *bank) mass(y []float64) (sum float64) {
	for i, k := range b.tanks {
		sum += k.count * y[2*i]
	}
	return sum
}
