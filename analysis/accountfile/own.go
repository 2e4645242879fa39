package accountfile

import (
	"encoding/json"
	"time"
)

// Own is what an account made itself, and has again on another server.
type Own struct {
	Bag    []BagClub `json:"bag,omitempty"`
	Ranges []Range   `json:"range_sessions,omitempty"`
	Drawn  []Drawn   `json:"drawn_courses,omitempty"`
	Plans  []Plan    `json:"practice_plans,omitempty"`
}

// MaxDrawings is the most drawings of the holes of a course that a file may have.
const MaxDrawings = 400

// The most that a file may have of what is an account's own.
const (
	maxRanges  = 1000
	maxDrawn   = 200   // courses
	maxPlans   = 1000  //
	maxPicture = 20000 // bytes of a drawing
	maxFigures = 20000 // bytes of the figures of a plan
	maxBalls   = 200   // of a session
)

// BagClub is a club for the tee, in yards.
type BagClub struct {
	Club   string  `json:"club"`
	Length float64 `json:"length_yd"` // 0 where it follows from how the account plays
	Shape  float64 `json:"shape_yd"`  // beside the aim; left is negative
}

// Range is a session on the range with one club and one aim.
type Range struct {
	Club  string   `json:"club"`
	Day   string   `json:"day"`   // as YYYY-MM-DD
	Balls []string `json:"balls"` // as they were typed
}

// Drawn is what the account drew of a course and tees, with their card.
type Drawn struct {
	Course   string     `json:"course"`
	Tee      string     `json:"tee"`
	Holes    []CardHole `json:"holes"`
	Drawings []Drawing  `json:"drawings"` // hole by hole, the earliest first
}

// CardHole is a hole as the card of a course has it.
type CardHole struct {
	Number   int     `json:"number"`
	Par      int     `json:"par"`
	LengthIn float64 `json:"length_in"`    // inches, a yard at least
	Index    int     `json:"stroke_index"` // 0 where it is not known
}

// Drawing is a version of what was drawn of a hole.
type Drawing struct {
	Hole    int             `json:"hole"`
	At      time.Time       `json:"drawn"`
	Picture json.RawMessage `json:"picture"` // an object, or null where the drawing was removed
}

// Taken reports whether the drawing was removed.
func (d Drawing) Taken() bool { return len(d.Picture) == 0 || string(d.Picture) == "null" }

// Plan is a plan of practice as it was taken.
type Plan struct {
	Day     string          `json:"day"`       // on which it was taken, as YYYY-MM-DD
	First   string          `json:"first_day"` // of the rounds that it stands on
	Last    string          `json:"last_day"`
	Rounds  int             `json:"rounds"`
	Target  float64         `json:"target"`
	Minutes int             `json:"minutes"` // a week
	Engine  string          `json:"engine"`  // that judged the rounds
	Figures json.RawMessage `json:"figures"`
}

// Any reports whether there is anything but the bag, which is taken in with the
// settings.
func (o Own) Any() bool { return len(o.Ranges)+len(o.Drawn)+len(o.Plans) > 0 }

// Pictures counts the drawings of all courses.
func (o Own) Pictures() int {
	n := 0
	for _, d := range o.Drawn {
		n += len(d.Drawings)
	}
	return n
}
