package unit

// vulgarFractions are the characters that hold a whole fraction.
const vulgarFractions = "½¼¾⅓⅔⅛⅜⅝⅞"

// The lists below pair a habit of writing with the accepted spelling: from,
// to, from, to. They only feed suggestions; Parse takes none of them. An
// order that matters puts the longer text first.
var (
	vulgarSpelling = []string{
		"½", "1/2", "¼", "1/4", "¾", "3/4", "⅓", "1/3", "⅔", "2/3",
		"⅛", "1/8", "⅜", "3/8", "⅝", "5/8", "⅞", "7/8",
	}
	markSpelling = []string{
		"''", " in ", `"`, " in ", "″", " in ", "”", " in ",
		"'", " ft ", "′", " ft ", "’", " ft ",
	}
	phraseSpelling = []string{
		"square inches", "in2", "square feet", "ft2", "sq. in.", "in2", "sq in", "in2", "sq ft", "ft2",
		"sq cm", "cm2", "sq mm", "mm2", "sq m", "m2", "cu ft", "ft3", "cu in", "in3", "cu m", "m3",
		"cubic feet", "ft3", "cubic inches", "in3",
		"in. w.c.", "inH2O", "in. wc", "inH2O", "in wc", "inH2O", "in w.c.", "inH2O", "inches wc", "inH2O", "inches of water", "inH2O",
		"deg c", "degC", "deg f", "degF", "degrees celsius", "degC", "degrees fahrenheit", "degF", "degrees c", "degC", "degrees f", "degF",
		"us gallons", "galUS", "us gal", "galUS", "imperial gallons", "galImp", "imp gal", "galImp",
		"btu per hour", "BTU/h", "per cent", "%",
	}
	wordSpelling = []string{
		"millimetre", "mm", "millimetres", "mm", "millimeter", "mm", "millimeters", "mm",
		"centimetre", "cm", "centimetres", "cm", "centimeter", "cm", "centimeters", "cm",
		"metre", "m", "metres", "m", "meter", "m", "meters", "m",
		"inch", "in", "inches", "in", "ins", "in", "foot", "ft", "feet", "ft",
		"in^2", "in2", "ft^2", "ft2", "cm^2", "cm2", "mm^2", "mm2", "m^2", "m2", "sqin", "in2", "sqft", "ft2",
		"in^3", "in3", "ft^3", "ft3", "m^3", "m3", "cuft", "ft3", "cc", "mL", "ml", "mL",
		"litre", "L", "litres", "L", "liter", "L", "liters", "L",
		"gram", "g", "grams", "g", "kilo", "kg", "kilos", "kg", "kgs", "kg", "kilogram", "kg", "kilograms", "kg",
		"pound", "lb", "pounds", "lb", "lbs", "lb", "ounce", "oz", "ounces", "oz",
		"newton", "N", "newtons", "N", "lbsf", "lbf", "kp", "kgf",
		"wc", "inH2O", "inwc", "inH2O", "inwg", "inH2O", "iwc", "inH2O", "inh20", "inH2O", "mmh20", "mmH2O", "mmwc", "mmH2O",
		"psi(g)", "psig", "psi(a)", "psia", "millibar", "mbar", "millibars", "mbar", "mb", "mbar", "bars", "bar",
		"c", "degC", "f", "degF", "celsius", "degC", "fahrenheit", "degF", "kelvin", "K", "kelvins", "K", "ºc", "degC", "ºf", "degF",
		"watt", "W", "watts", "W", "kilowatt", "kW", "kilowatts", "kW",
		"btu/hr", "BTU/h", "btuh", "BTU/h", "btu/hour", "BTU/h", "btus/hr", "BTU/h", "btus", "BTU",
		"kbtu/hr", "kBTU/h", "kbtuh", "kBTU/h", "mbh", "kBTU/h",
		"joule", "J", "joules", "J", "kw-h", "kWh", "kw·h", "kWh",
		"g/hr", "g/h", "kg/hr", "kg/h", "lb/hr", "lb/h", "lbs/hr", "lb/h", "lbs/h", "lb/h", "lb/hour", "lb/h",
		"m3/hr", "m3/h", "m³/hr", "m3/h", "m^3/h", "m3/h", "lpm", "L/min", "ft3/min", "cfm", "ft³/min", "cfm", "cfh", "ft3/h", "ft3/hr", "ft3/h", "scfm", "cfm",
		"kph", "km/h", "kmh", "km/h", "mi/h", "mph", "fpm", "ft/min",
		"sec", "s", "secs", "s", "second", "s", "seconds", "s", "mins", "min", "minute", "min", "minutes", "min",
		"hr", "h", "hrs", "h", "hour", "h", "hours", "h", "wk", "weeks", "wks", "weeks",
		"percent", "%", "pct", "%", "°", "deg", "degree", "deg", "degrees", "deg", "radian", "rad", "radians", "rad",
		"amp", "A", "amps", "A", "ampere", "A", "amperes", "A", "milliamp", "mA", "milliamps", "mA", "volt", "V", "volts", "V", "vdc", "V",
		"in2/kbtu/h", "in2/(kBTU/h)", "btu/lbs", "BTU/lb", "lb/cuft", "lb/ft3", "kg/m^3", "kg/m3",
	}
)
