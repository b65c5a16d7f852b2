package unit

// Quantity is any of this package's named types. Its float64 is in the SI
// unit of its Kind.
type Quantity interface {
	~float64
	Kind() Kind
}

// Length is in metres. Coordinates may be negative.
type Length float64

// Kind gives KindLength.
func (Length) Kind() Kind { return KindLength }

// Area is in square metres.
type Area float64

// Kind gives KindArea.
func (Area) Kind() Kind { return KindArea }

// Volume is in cubic metres.
type Volume float64

// Kind gives KindVolume.
func (Volume) Kind() Kind { return KindVolume }

// Mass is in kilograms, of anything but propane or a fill of water.
type Mass float64

// Kind gives KindMass.
func (Mass) Kind() Kind { return KindMass }

// PropaneMass is in kilograms of propane.
type PropaneMass float64

// Kind gives KindPropaneMass.
func (PropaneMass) Kind() Kind { return KindPropaneMass }

// WaterMass is in kilograms of the water that fills a vessel: the water
// capacity stamped on a cylinder. It may be written as a volume too; a litre
// then counts as 0.999 kg (see the table of spellings).
type WaterMass float64

// Kind gives KindWaterMass.
func (WaterMass) Kind() Kind { return KindWaterMass }

// Force is in newtons.
type Force float64

// Kind gives KindForce.
func (Force) Kind() Kind { return KindForce }

// GaugePressure is in pascals above the outside air; below it is negative.
type GaugePressure float64

// Kind gives KindGaugePressure.
func (GaugePressure) Kind() Kind { return KindGaugePressure }

// AbsolutePressure is in pascals above vacuum, never negative when parsed.
type AbsolutePressure float64

// Kind gives KindAbsolutePressure.
func (AbsolutePressure) Kind() Kind { return KindAbsolutePressure }

// Temperature is in kelvins above absolute zero, never negative when parsed.
type Temperature float64

// Kind gives KindTemperature.
func (Temperature) Kind() Kind { return KindTemperature }

// TemperatureDifference is in kelvins between two temperatures.
type TemperatureDifference float64

// Kind gives KindTemperatureDifference.
func (TemperatureDifference) Kind() Kind { return KindTemperatureDifference }

// Power is in watts as written on a plate, before it is decided whether the
// plate means the gross or the net heating value.
type Power float64

// Kind gives KindPower.
func (Power) Kind() Kind { return KindPower }

// GrossPower is in watts on the higher heating value.
type GrossPower float64

// Kind gives KindGrossPower.
func (GrossPower) Kind() Kind { return KindGrossPower }

// NetPower is in watts on the lower heating value.
type NetPower float64

// Kind gives KindNetPower.
func (NetPower) Kind() Kind { return KindNetPower }

// Energy is in joules on the higher heating value.
type Energy float64

// Kind gives KindEnergy.
func (Energy) Kind() Kind { return KindEnergy }

// MassFlow is in kilograms a second.
type MassFlow float64

// Kind gives KindMassFlow.
func (MassFlow) Kind() Kind { return KindMassFlow }

// VolumeFlow is in cubic metres a second.
type VolumeFlow float64

// Kind gives KindVolumeFlow.
func (VolumeFlow) Kind() Kind { return KindVolumeFlow }

// Speed is in metres a second.
type Speed float64

// Kind gives KindSpeed.
func (Speed) Kind() Kind { return KindSpeed }

// Duration is in seconds.
type Duration float64

// Kind gives KindDuration.
func (Duration) Kind() Kind { return KindDuration }

// Ratio is a plain number; 1 is 100 %.
type Ratio float64

// Kind gives KindRatio.
func (Ratio) Kind() Kind { return KindRatio }

// Angle is in radians.
type Angle float64

// Kind gives KindAngle.
func (Angle) Kind() Kind { return KindAngle }

// Current is in amperes.
type Current float64

// Kind gives KindCurrent.
func (Current) Kind() Kind { return KindCurrent }

// Voltage is in volts.
type Voltage float64

// Kind gives KindVoltage.
func (Voltage) Kind() Kind { return KindVoltage }

// AreaPerPower is in square metres a watt of gross power, as some codes size
// openings by the heat input of the appliances.
type AreaPerPower float64

// Kind gives KindAreaPerPower.
func (AreaPerPower) Kind() Kind { return KindAreaPerPower }

// AreaPerMass is in square metres a kilogram, as some codes size openings by
// the gas stored.
type AreaPerMass float64

// Kind gives KindAreaPerMass.
func (AreaPerMass) Kind() Kind { return KindAreaPerMass }

// HeatPerMass is in joules a kilogram.
type HeatPerMass float64

// Kind gives KindHeatPerMass.
func (HeatPerMass) Kind() Kind { return KindHeatPerMass }

// Density is in kilograms a cubic metre.
type Density float64

// Kind gives KindDensity.
func (Density) Kind() Kind { return KindDensity }

// Count is how many things there are, or how many years: a whole number, never
// negative when parsed.
type Count float64

// Kind gives KindCount.
func (Count) Kind() Kind { return KindCount }

// HeatCapacity is in joules a kilogram and kelvin.
type HeatCapacity float64

// Kind gives KindHeatCapacity.
func (HeatCapacity) Kind() Kind { return KindHeatCapacity }

// Viscosity is in pascal seconds, dynamic.
type Viscosity float64

// Kind gives KindViscosity.
func (Viscosity) Kind() Kind { return KindViscosity }

// HeatTransfer is in watts a square metre and kelvin: the heat that passes a
// wall for its area and the difference of temperature across it.
type HeatTransfer float64

// Kind gives KindHeatTransfer.
func (HeatTransfer) Kind() Kind { return KindHeatTransfer }

// AtLeast tells whether a ≥ b. It is false when either is not a number, so
// that an undefined figure never counts as enough.
func AtLeast[Q Quantity](a, b Q) bool { return a >= b }

// AtMost tells whether a ≤ b. It is false when either is not a number.
func AtMost[Q Quantity](a, b Q) bool { return a <= b }
