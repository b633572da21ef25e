package finding

// Standing is how firm a rule or a value is, as it is printed. The empty Standing says
// nothing.
type Standing string

// The standings of rules.
const (
	Arithmetic Standing = "arithmetic"
	Practice   Standing = "practice"
	Forum      Standing = "practice, forum grade"
	Borrowed   Standing = "borrowed yardstick, not a rule for canoes"
	Estimate   Standing = "estimate"
	Law        Standing = "law, as read; local law comes first"
	Compared   Standing = "comparison only"
	Designs    Standing = "comparison between designs only"
)

// The standings of values of wood, the best first; Memory is a rule's too.
const (
	Handbook Standing = "handbook"        // read in published test results
	Common   Standing = "common practice" // trade sheets and shop rules, no test results read
	Memory   Standing = "from memory"     // remembered, not read; test one piece first
	Measured Standing = "measured"        // the builder's own test of the stock at hand
)
