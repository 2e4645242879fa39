package accountfile

import "time"

// Written is what a file has besides settings and rounds. A Reader reads what is the
// account's own; the rest, what people wrote about its game and what practice was set,
// is for people to read, and is passed over.
type Written struct {
	Notes    []Note     `json:"notes,omitempty"`
	Private  []Note     `json:"private_notes_on_pupils,omitempty"` // by the account about its pupils; nobody else reads them
	Practice []Practice `json:"practice,omitempty"`
	Lessons  []Lesson   `json:"lessons,omitempty"`
	Walked   []Walked   `json:"rounds_to_accept,omitempty"`
	Phrases  []string   `json:"phrases,omitempty"` // that the account writes as a coach
	RunOut   []Trial    `json:"run_out,omitempty"`
	Sessions []Session  `json:"drill_sessions,omitempty"`
	Holes    []HoleNote `json:"holes,omitempty"`
	Own
}

// HoleNote is what a coach said of a hole, and proposed there.
type HoleNote struct {
	By       string    `json:"by"`
	Course   string    `json:"course"`
	Tee      string    `json:"tee"`
	Hole     int       `json:"hole"`
	Note     string    `json:"note,omitempty"`
	Proposes bool      `json:"proposes,omitempty"`
	Club     string    `json:"club,omitempty"`    // empty on a par 3
	Side     float64   `json:"side_yd,omitempty"` // right of the middle, or of the flag
	Long     float64   `json:"long_yd,omitempty"` // beyond the flag
	Safe     string    `json:"safe,omitempty"`    // the side of the green that is proposed as the safe one
	Answer   string    `json:"answer,omitempty"`  // taken or declined
	Written  time.Time `json:"written"`
}

// Session is what came of a drill on a day.
type Session struct {
	Drill   string  `json:"drill"`
	Day     string  `json:"day"`               // as YYYY-MM-DD
	Feet    float64 `json:"feet,omitempty"`    // from where, for a drill that can be moved
	Tries   string  `json:"tries,omitempty"`   // in order, a letter each: m made, x missed, l left, r right, s short, g long
	Counted []int   `json:"counted,omitempty"` // how many counted, by place
	Tried   []int   `json:"tried,omitempty"`   // of how many
	Minutes int     `json:"minutes,omitempty"`
	Note    string  `json:"note,omitempty"`
}

// Trial is a ball of the run-out book, with its lengths as they were typed.
type Trial struct {
	Day   string  `json:"day"` // as YYYY-MM-DD
	Club  string  `json:"club"`
	Lie   string  `json:"lie"`
	Green string  `json:"green"` // how fast it was: slow, medium or fast
	Carry float64 `json:"carry"` // from the ball to where it landed
	Total float64 `json:"total"` // from the ball to where it stopped
	Unit  string  `json:"unit"`  // yd, m or paces
}

// Note is a note with its conversation.
type Note struct {
	By      string    `json:"by,omitempty"`   // name of the account that wrote it; empty in private notes
	On      string    `json:"on,omitempty"`   // name of the pupil, in private notes
	Kind    string    `json:"kind"`           // as the database names it
	Day     string    `json:"day"`            // it is about, as YYYY-MM-DD
	Hole    int       `json:"hole,omitempty"` // it is about; 0 for a whole round or day
	Shot    int       `json:"shot,omitempty"` // of the hole, from 1; 0 for the whole hole
	Body    string    `json:"body"`           // as it was typed
	Written time.Time `json:"written"`        // when
	Replies []Reply   `json:"replies,omitempty"`
}

// Lesson is a lesson that the account arranged with a coach.
type Lesson struct {
	With   string `json:"with"`           // name of the coach
	Day    string `json:"day"`            // as YYYY-MM-DD
	Time   string `json:"time,omitempty"` // as 17:30, where it takes place
	Place  string `json:"place,omitempty"`
	Aim    string `json:"aim,omitempty"`
	Agreed string `json:"agreed,omitempty"`
}

// Walked is a round that a coach entered, and that the account has not accepted yet.
type Walked struct {
	By     string   `json:"by"`  // name of the coach
	Day    string   `json:"day"` // as YYYY-MM-DD
	Course string   `json:"course"`
	Holes  []string `json:"holes"` // a line each as it was typed, with its number before it
}

// Reply is an answer to a note, the earliest first.
type Reply struct {
	By      string    `json:"by"`
	Body    string    `json:"body"`
	Written time.Time `json:"written"`
}

// Practice is something that a coach or the player set to practise.
type Practice struct {
	What     string   `json:"what"`                // what to practise
	Amount   string   `json:"amount,omitempty"`    // how much or how often, in words
	PassMark string   `json:"pass_mark,omitempty"` // the result to reach, in words
	Due      string   `json:"due"`                 // last day, as YYYY-MM-DD
	Done     bool     `json:"done"`                // it was ticked off
	Results  []Result `json:"results,omitempty"`
}

// Result is one time that a practice was done.
type Result struct {
	Day    string `json:"day"`    // as YYYY-MM-DD
	Result string `json:"result"` // in words, such as "14 of 20"
	Passed bool   `json:"passed"` // it reached the pass mark
}
