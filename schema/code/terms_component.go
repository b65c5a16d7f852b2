package code

import "lowvent.example/schema/unit"

// The terms that the law on the thing itself may answer, whatever dwelling the
// thing is in.
var (
	// CylinderFill asks how much propane a cylinder may hold, kg.
	CylinderFill = most[unit.PropaneMass](BookComponent, "cylinder.fill",
		"How much propane may the cylinder hold?", FactWaterCapacity, FactCylinderGas)

	// ApplianceGas asks which gas an appliance must be set up for.
	ApplianceGas = allowed(BookComponent, "appliance.gas",
		"Which gas must the appliance be set up for?", []string{"propane", "butane", "mix", "natural-gas"}, FactApplianceKind)

	// ApplianceConvertedBy asks who may have fitted an appliance's jets for
	// this gas.
	ApplianceConvertedBy = allowed(BookComponent, "appliance.converted-by",
		"Who may have set the appliance up for this gas?", []string{"maker", "licensed-fitter", "owner"}, FactApplianceKind)

	// CylinderRequalify asks how many years after it was last qualified a
	// cylinder may be used before it has to be qualified again.
	CylinderRequalify = most[unit.Count](BookComponent, "cylinder.requalify",
		"How many years after it was last qualified may a cylinder be filled and used?", FactSpecification, FactQualification)
)
