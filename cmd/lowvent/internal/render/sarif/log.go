package sarif

// The objects of SARIF 2.1.0 that a report needs, in the order in which the standard
// tells them. What they leave out, the standard has defaults for.

type log struct {
	Schema  string `json:"$schema"`
	Version string `json:"version"`
	Runs    []run  `json:"runs"`
}

type run struct {
	Tool        tool                        `json:"tool"`
	Invocations []invocation                `json:"invocations"`
	BaseIDs     map[string]artifactLocation `json:"originalUriBaseIds"`
	Artifacts   []artifact                  `json:"artifacts"`
	Results     []result                    `json:"results"`
	ColumnKind  string                      `json:"columnKind"`
	Properties  runProperties               `json:"properties"`
}

type runProperties struct {
	Cautions []string `json:"cautions"`
	JudgedOn string   `json:"judgedOn"`
	FailAt   string   `json:"failAt"`
	Accepted bool     `json:"waiversAccepted"`
	Result   string   `json:"result"`
}

type tool struct {
	Driver driver `json:"driver"`
}

type driver struct {
	Name        string  `json:"name"`
	Version     string  `json:"version,omitempty"`
	Description message `json:"fullDescription"`
	Rules       []rule  `json:"rules"`
}

type rule struct {
	ID            string         `json:"id"`
	Short         message        `json:"shortDescription"`
	Full          message        `json:"fullDescription"`
	Configuration configuration  `json:"defaultConfiguration"`
	Properties    ruleProperties `json:"properties"`
}

type configuration struct {
	Level string `json:"level"`
}

type ruleProperties struct {
	Word string   `json:"signalWord"`
	Tags []string `json:"tags"`
}

type invocation struct {
	ExitCode      int            `json:"exitCode"`
	Description   string         `json:"exitCodeDescription"`
	Notifications []notification `json:"toolExecutionNotifications"`
	Successful    bool           `json:"executionSuccessful"`
}

type notification struct {
	Locations []location `json:"locations,omitempty"`
	Message   message    `json:"message"`
	Level     string     `json:"level"`
}

type artifact struct {
	Description *message           `json:"description,omitempty"`
	Location    *artifactLocation  `json:"location,omitempty"`
	Roles       []string           `json:"roles"`
	Hashes      map[string]string  `json:"hashes,omitempty"`
	Properties  artifactProperties `json:"properties"`
}

type artifactProperties struct {
	Gas  string `json:"gasNow,omitempty"`
	Code string `json:"code,omitempty"`
}

type result struct {
	RuleID       string            `json:"ruleId"`
	RuleIndex    int               `json:"ruleIndex"`
	Kind         string            `json:"kind"`
	Level        string            `json:"level"`
	Message      message           `json:"message"`
	Locations    []location        `json:"locations"`
	Fingerprints map[string]string `json:"partialFingerprints"`
	Related      []location        `json:"relatedLocations,omitempty"`
	Suppressions []suppression     `json:"suppressions,omitempty"`
	Properties   *resultProperties `json:"properties,omitempty"`
}

type resultProperties struct {
	Word    string `json:"signalWord"`
	Outcome string `json:"outcome"`
	Reason  string `json:"reason,omitempty"`
	Subject string `json:"subject"`
	MayAct  string `json:"mayAct"`
}

type suppression struct {
	Kind          string   `json:"kind"`
	Status        string   `json:"status"`
	Location      location `json:"location"`
	Justification string   `json:"justification"`
}

type location struct {
	Physical physicalLocation  `json:"physicalLocation"`
	Logical  []logicalLocation `json:"logicalLocations,omitempty"`
	Message  *message          `json:"message,omitempty"`
}

type physicalLocation struct {
	Artifact artifactLocation `json:"artifactLocation"`
	Region   *region          `json:"region,omitempty"`
}

type artifactLocation struct {
	URI         string   `json:"uri,omitempty"`
	BaseID      string   `json:"uriBaseId,omitempty"`
	Index       *int     `json:"index,omitempty"`
	Description *message `json:"description,omitempty"`
}

type region struct {
	StartLine   int `json:"startLine"`
	StartColumn int `json:"startColumn"`
	EndLine     int `json:"endLine"`
	EndColumn   int `json:"endColumn"`
}

type logicalLocation struct {
	FullName string `json:"fullyQualifiedName"`
}

type message struct {
	Text string `json:"text"`
}
