package unit

// kindInfo is all that the package knows of one kind.
type kindInfo struct {
	name     string // camelCase
	symbol   string // of the SI unit
	example  string // a text that parses, for error messages
	units    []spelling
	slack    []spelling // units of a tolerance; nil means the kind's own
	relative bool       // a tolerance may be given in per cent of the value
	alike    bool       // both numbers of a band must be written in one unit
	floor    string     // what lies at 0 when nothing lies below, else ""
	whole    bool       // only whole numbers are taken
	pair     pair       // the compound form, if there is one
	metric   []scale    // how Text prints, smallest unit first
	us       []scale
}

// pair is a compound of two units, such as feet and inches: a whole number of
// the big one and less than per of the small one.
type pair struct {
	big, small string
	per        int64
}

var (
	feetInches  = pair{big: "ft", small: "in", per: 12}
	poundOunces = pair{big: "lb", small: "oz", per: 16}
	hourMinutes = pair{big: "h", small: "min", per: 60}
)

// kinds is indexed by Kind; row 0 stands for no kind.
var kinds = [...]kindInfo{
	0: {name: "unknownKind"},
	KindLength: {name: "length", symbol: "m", example: "1.32 m", units: lengths, relative: true, pair: feetInches,
		metric: []scale{{unit: "mm", sig: 4, decimals: 2}, {unit: "m", from: 1, sig: 4, decimals: 3}},
		us:     []scale{{unit: "in", sig: 4, decimals: 3}, {unit: "ft", from: 3.048, sig: 3, decimals: 1}}},
	KindArea: {name: "area", symbol: "m2", example: "90 cm2", units: areas, relative: true,
		metric: []scale{{unit: "mm2", sig: 3, decimals: 2}, {unit: "cm2", from: 1e-4, sig: 3, decimals: 1}, {unit: "m2", from: 0.1, sig: 3, decimals: 2}},
		us:     []scale{{unit: "in2", sig: 3, decimals: 1}, {unit: "ft2", from: 0.1, sig: 3, decimals: 1}}},
	KindVolume: {name: "volume", symbol: "m3", example: "21.6 L", units: volumes, relative: true,
		metric: []scale{{unit: "mL", sig: 3, decimals: 1}, {unit: "L", from: 1e-3, sig: 3, decimals: 1}, {unit: "m3", from: 1, sig: 3, decimals: 2}},
		us:     []scale{{unit: "in3", sig: 3, decimals: 1}, {unit: "galUS", from: 1e-3, sig: 3, decimals: 2}, {unit: "ft3", from: 0.1, sig: 3, decimals: 1}}},
	KindMass:        {name: "mass", symbol: "kg", example: "17 lb", units: masses, relative: true, pair: poundOunces, metric: massMetric, us: massUS},
	KindPropaneMass: {name: "propaneMass", symbol: "kg", example: "20 lb", units: masses, relative: true, pair: poundOunces, metric: massMetric, us: massUS},
	KindWaterMass:   {name: "waterMass", symbol: "kg", example: "47.6 lb", units: waterMasses, relative: true, pair: poundOunces, metric: massMetric, us: massUS},
	KindForce: {name: "force", symbol: "N", example: "4 kN", units: forces, relative: true,
		metric: []scale{{unit: "N", sig: 3, decimals: 1}, {unit: "kN", from: 1e3, sig: 3, decimals: 2}},
		us:     []scale{{unit: "lbf", sig: 3, decimals: 1}}},
	KindGaugePressure: {name: "gaugePressure", symbol: "Pa", example: "11 inH2O", units: gaugePressures, relative: true,
		metric: []scale{{unit: "Pa", sig: 3, decimals: 1}, {unit: "kPa", from: 1e3, sig: 3, decimals: 2}, {unit: "MPa", from: 1e6, sig: 3, decimals: 2}},
		us:     []scale{{unit: "inH2O", sig: 3, decimals: 2}, {unit: "psi", from: 1e4, sig: 3, decimals: 2}}},
	KindAbsolutePressure: {name: "absolutePressure", symbol: "Pa", example: "101.3 kPa", units: absolutePressures, relative: true, floor: "a vacuum",
		metric: []scale{{unit: "Pa", sig: 3, decimals: 1}, {unit: "kPa", from: 1e3, sig: 4, decimals: 2}},
		us:     []scale{{unit: "psia", sig: 3, decimals: 3}}},
	KindTemperature: {name: "temperature", symbol: "K", example: "-12 degC", units: temperatures, slack: temperatureDifferences, floor: "absolute zero",
		metric: []scale{{unit: "degC", sig: 4, decimals: 1, coarse: true}},
		us:     []scale{{unit: "degF", sig: 4, decimals: 1, coarse: true}}},
	KindTemperatureDifference: {name: "temperatureDifference", symbol: "K", example: "15 K", units: temperatureDifferences, relative: true,
		metric: []scale{{unit: "K", sig: 3, decimals: 1}},
		us:     []scale{{unit: "degF", sig: 3, decimals: 1}}},
	KindPower:      {name: "power", symbol: "W", example: "8000 BTU/h", units: powers, relative: true, metric: powerMetric, us: powerUS},
	KindGrossPower: {name: "grossPower", symbol: "W", example: "8000 BTU/h", units: powers, relative: true, metric: powerMetric, us: powerUS},
	KindNetPower:   {name: "netPower", symbol: "W", example: "2.2 kW", units: powers, relative: true, metric: powerMetric, us: powerUS},
	KindEnergy: {name: "energy", symbol: "J", example: "12 kWh", units: energies, relative: true,
		metric: []scale{{unit: "J", sig: 3, decimals: 1}, {unit: "kJ", from: 1e3, sig: 3, decimals: 1}, {unit: "MJ", from: 1e6, sig: 3, decimals: 1}},
		us:     []scale{{unit: "BTU", sig: 3, decimals: 1}}},
	KindMassFlow: {name: "massFlow", symbol: "kg/s", example: "12 g/h", units: massFlows, relative: true,
		metric: []scale{{unit: "g/h", sig: 3, decimals: 1}, {unit: "kg/h", from: 1.0 / 3600, sig: 3, decimals: 2}},
		us:     []scale{{unit: "lb/h", sig: 3, decimals: 2}}},
	KindVolumeFlow: {name: "volumeFlow", symbol: "m3/s", example: "40 m3/h", units: volumeFlows, relative: true,
		metric: []scale{{unit: "mL/h", sig: 3, decimals: 1}, {unit: "L/min", from: 1e-4 / 60, sig: 3, decimals: 1}, {unit: "m3/h", from: 1.0 / 3600, sig: 3, decimals: 1}},
		us:     []scale{{unit: "in3/h", sig: 3, decimals: 1}, {unit: "ft3/h", from: 1e-4 / 60, sig: 3, decimals: 1}, {unit: "cfm", from: 1.0 / 3600, sig: 3, decimals: 1}}},
	KindSpeed: {name: "speed", symbol: "m/s", example: "3 m/s", units: speeds, relative: true,
		metric: []scale{{unit: "m/s", sig: 3, decimals: 2}},
		us:     []scale{{unit: "ft/min", sig: 3, decimals: 1}}},
	KindDuration: {name: "duration", symbol: "s", example: "20 min", units: durations, relative: true, pair: hourMinutes,
		metric: []scale{{unit: "s", sig: 3, decimals: 1}, {unit: "min", from: 120, sig: 3, decimals: 1}, {unit: "h", from: 7200, sig: 3, decimals: 1}, {unit: "days", from: 259200, sig: 3, decimals: 1}}},
	KindRatio: {name: "ratio", symbol: "1", example: "70 %", units: ratios, alike: true,
		metric: []scale{{unit: "%", sig: 3, decimals: 1}}},
	KindAngle: {name: "angle", symbol: "rad", example: "30 deg", units: angles, relative: true,
		metric: []scale{{unit: "deg", sig: 3, decimals: 1}}},
	KindCurrent: {name: "current", symbol: "A", example: "2.5 A", units: currents, relative: true,
		metric: []scale{{unit: "mA", sig: 3, decimals: 1}, {unit: "A", from: 1, sig: 3, decimals: 2}}},
	KindVoltage: {name: "voltage", symbol: "V", example: "12 V", units: voltages, relative: true,
		metric: []scale{{unit: "mV", sig: 3, decimals: 1}, {unit: "V", from: 1, sig: 3, decimals: 2}}},
	KindAreaPerPower: {name: "areaPerPower", symbol: "m2/W", example: "1 in2/(kBTU/h)", units: areasPerPower, relative: true,
		metric: []scale{{unit: "cm2/kW", sig: 3, decimals: 2}},
		us:     []scale{{unit: "in2/(kBTU/h)", sig: 3, decimals: 3}}},
	KindAreaPerMass: {name: "areaPerMass", symbol: "m2/kg", example: "1/7 in2/lb", units: areasPerMass, relative: true,
		metric: []scale{{unit: "cm2/kg", sig: 3, decimals: 2}},
		us:     []scale{{unit: "in2/lb", sig: 3, decimals: 3}}},
	KindHeatPerMass: {name: "heatPerMass", symbol: "J/kg", example: "50.3 MJ/kg", units: heatsPerMass, relative: true,
		metric: []scale{{unit: "J/kg", sig: 3, decimals: 1}, {unit: "kJ/kg", from: 1e3, sig: 3, decimals: 1}, {unit: "MJ/kg", from: 1e6, sig: 3, decimals: 2}},
		us:     []scale{{unit: "BTU/lb", sig: 3, decimals: 1}}},
	KindDensity: {name: "density", symbol: "kg/m3", example: "1.88 kg/m3", units: densities, relative: true,
		metric: []scale{{unit: "kg/m3", sig: 3, decimals: 2}},
		us:     []scale{{unit: "lb/ft3", sig: 3, decimals: 3}}},
	// Named apart from the layout's own "count", which is a bare number of JSON.
	KindCount: {name: "number", symbol: "1", example: "10", units: counts, relative: true, floor: "none at all", whole: true,
		metric: []scale{{unit: "", sig: 6, decimals: 0}}},
	KindHeatCapacity: {name: "heatCapacity", symbol: "J/(kg.K)", example: "2.5 kJ/(kg.K)", units: heatCapacities, relative: true,
		metric: []scale{{unit: "J/(kg.K)", sig: 4, decimals: 1}},
		us:     []scale{{unit: "BTU/(lb.degF)", sig: 4, decimals: 4}}},
	KindViscosity: {name: "viscosity", symbol: "Pa.s", example: "8 uPa.s", units: viscosities, relative: true,
		metric: []scale{{unit: "uPa.s", sig: 3, decimals: 2}},
		us:     []scale{{unit: "cP", sig: 3, decimals: 5}}},
	KindHeatTransfer: {name: "heatTransfer", symbol: "W/(m2.K)", example: "8 W/(m2.K)", units: heatTransfers, relative: true,
		metric: []scale{{unit: "W/(m2.K)", sig: 3, decimals: 2}},
		us:     []scale{{unit: "BTU/(h.ft2.degF)", sig: 3, decimals: 3}}},
}

// The displays that several kinds share.
var (
	massMetric  = []scale{{unit: "g", sig: 3, decimals: 1}, {unit: "kg", from: 1, sig: 3, decimals: 1}}
	massUS      = []scale{{unit: "oz", sig: 3, decimals: 1}, {unit: "lb", from: 0.45359237, sig: 3, decimals: 1}}
	powerMetric = []scale{{unit: "W", sig: 3, decimals: 1}, {unit: "kW", from: 1e3, sig: 3, decimals: 2}}
	powerUS     = []scale{{unit: "BTU/h", sig: 3, decimals: 1}}
)
