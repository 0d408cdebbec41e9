package matcher

// Answer is what the core concludes. Lengths are millimetres.
type Answer struct {
	Verdict     Verdict     `json:"verdict"`
	Says        Says        `json:"says"`
	Sizes       []Size      `json:"sizes"`       // what is left, likeliest first
	Near        []Size      `json:"near"`        // nearest rows that do not match, nearest first
	SameFigures []Size      `json:"sameFigures"` // the same figures under another hold
	Conversions []string    `json:"conversions"` // conversion rows that have the measured end
	Ends        []EndFound  `json:"ends"`        // for two ends: what each is by itself
	Ways        []Way       `json:"ways"`        // for two known ends no row joins: the ways out
	Readings    []Estimate  `json:"readings"`
	Complaints  []Complaint `json:"complaints"`
	Slips       []SlipFound `json:"slips"`
	TellApart   []TellApart `json:"tellApart"`
	Chart       struct {
		Version string `json:"version"`
	} `json:"chart"`
	// At is where each row that is named has its page, below the site's root, by ref; of a
	// chart in pieces only.
	At map[string]string `json:"at,omitempty"`
}

// Says is the verdict in plain sentences.
type Says struct {
	Head    string   `json:"head"`
	Because []string `json:"because"`
	Next    []string `json:"next"`
}

// Comparison is a reading beside the chart: Difference is measured minus chart,
// Uncertainty is expanded (about 99 %).
type Comparison struct {
	Measured    float64 `json:"measured"`
	Chart       float64 `json:"chart"`
	ChartText   string  `json:"chartText"` // the chart's own digits and unit
	Difference  float64 `json:"difference"`
	Uncertainty float64 `json:"uncertainty"`
	Unit        Unit    `json:"unit"`
}

// ComparedEnd holds the comparisons of one measured end.
type ComparedEnd struct {
	Cap    *Comparison `json:"cap,omitempty"`
	Across *Comparison `json:"across,omitempty"`
}

// Size is one physical size: its rows are twins.
type Size struct {
	Rows        []string      `json:"rows"`
	Names       []string      `json:"names"`
	Probability float64       `json:"probability"`
	Basis       Basis         `json:"basis"`
	Hold        Hold          `json:"hold"`
	Ends        []ComparedEnd `json:"ends"`
	Because     string        `json:"because"`
}

// EndFound says what one of two measured ends is by itself.
type EndFound struct {
	Rows []string `json:"rows"`
	Says string   `json:"says"`
}

// Estimate is what became of the readings of one quantity at one end; of a yoke it is
// the joint's that goes in.
type Estimate struct {
	End         int         `json:"end"`
	Quantity    Dimension   `json:"quantity"`
	Used        []string    `json:"used"`
	SetAside    []string    `json:"setAside"`
	Value       float64     `json:"value"`
	Uncertainty float64     `json:"uncertainty"`
	Unit        Unit        `json:"unit"`
	Why         string      `json:"why"`
	Budget      []Component `json:"budget"`
}

// Component is one line of an uncertainty budget; a nil DOF is infinite.
type Component struct {
	Source   string   `json:"source"`
	Standard float64  `json:"standard"`
	DOF      *float64 `json:"dof"`
}

// Complaint is a reading, or a word of the query, that could not be understood.
type Complaint struct {
	End      int       `json:"end"`
	Quantity Dimension `json:"quantity"`
	Index    int       `json:"index"`
	Text     string    `json:"text"`
	Says     string    `json:"says"`
}

// SlipFound is a measuring mistake that explains readings which agree with nothing as
// they are. It is never applied: the person looks, and measures again.
type SlipFound struct {
	Slip        string    `json:"slip"`
	End         int       `json:"end"`
	Look        Dimension `json:"look"` // cap, across, hold or unit: what to look at again
	Probability float64   `json:"probability"`
	Rows        []string  `json:"rows"` // what the readings would then be
	Names       []string  `json:"names"`
	Cap         *float64  `json:"cap,omitempty"` // the chart's figures for it, mm
	Across      *float64  `json:"across,omitempty"`
	Says        string    `json:"says"`
	Next        string    `json:"next"`
	Guide       string    `json:"guide"` // rooted address of a guide page
}

// TellApart says what to measure to separate the sizes that are left. Expect holds, by
// row ref, a length in mm (float64) or a hold (string).
type TellApart struct {
	Between []string       `json:"between"`
	End     int            `json:"end"`
	Measure Dimension      `json:"measure"` // cap, across, clip or hold
	Expect  map[string]any `json:"expect"`
	Apart   float64        `json:"apart"` // least difference between two of them, mm
	Able    bool           `json:"able"`  // whether the tool in hand can part them
	Tool    Tool           `json:"tool"`  // the tool in hand, or the plainest that can
	Says    string         `json:"says"`
}

// Way is a way to join two ends that no listed joint joins: a joint that fits one yoke,
// and another yoke for the other end.
type Way struct {
	Joint  string   `json:"joint"`
	Keeps  []int    `json:"keeps"`
	Change int      `json:"change"`
	To     []string `json:"to"`
	Says   string   `json:"says"`
}
