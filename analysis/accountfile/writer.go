package accountfile

import (
	"encoding/json"
	"fmt"
	"io"

	"strokeledger/analysis/golf"
)

// roundFile, holeFile and shotFile are what a file holds of a round: the fields of
// Round, Hole and golf.Shot under the names that stay the same from one version of
// this program to the next. Lengths ending in In are in inches.
type roundFile struct {
	Name       string     `json:"name"`
	Day        string     `json:"day"`
	Course     string     `json:"course"`
	Tee        string     `json:"tee"`
	Target     float64    `json:"target"`
	BoundaryYd float64    `json:"boundary_yd"`
	Par18      int        `json:"par18"`
	Conditions string     `json:"note"`
	EnteredBy  string     `json:"entered_by,omitempty"`
	CardOut    int        `json:"card_out"`
	CardIn     int        `json:"card_in"`
	FirstHole  int        `json:"first_hole,omitempty"` // 1 in a file that does not say
	Holes      []holeFile `json:"holes"`
}

type holeFile struct {
	Number    int        `json:"number"`
	Par       int        `json:"par"`
	LengthIn  float64    `json:"length_in"` // 0 where it is not known, as are the stroke index and the card
	Index     int        `json:"stroke_index"`
	Line      string     `json:"line"`
	Far       string     `json:"far_unit,omitempty"` // of the line, not of the shots
	Green     string     `json:"green_unit,omitempty"`
	PickedUp  bool       `json:"picked_up"`
	ScoreOnly int        `json:"score_only"` // strokes, 0 when the shots are known
	Shots     []shotFile `json:"shots"`
}

type shotFile struct {
	Lie        string   `json:"lie"`
	DistanceIn float64  `json:"distance_in"`    // to the hole
	Unit       string   `json:"unit,omitempty"` // when it is not that of the lie
	About      bool     `json:"about,omitempty"`
	Penalty    int      `json:"penalty,omitempty"`
	ShortSided bool     `json:"short_sided,omitempty"`
	GreenIn    *float64 `json:"green_in,omitempty"` // nil where it is not known; 0 is known
	Club       string   `json:"club,omitempty"`
	Miss       string   `json:"miss,omitempty"`
	Word       string   `json:"word,omitempty"`
}

// Writer writes an account as a file, a round at a time. Texts are cleaned, and
// names made distinct, so that whatever an account holds can be read again.
type Writer struct {
	out    io.Writer
	err    error // the first; nothing is written after it
	rounds int   // so far
	names  golf.Names
}

// NewWriter begins a file with the settings. Call Close at the end.
func NewWriter(out io.Writer, c Settings) *Writer {
	w := &Writer{out: out}
	c.Name, c.Clubs = golf.Cleaned(c.Name, golf.MaxName), golf.Cleaned(c.Clubs, golf.MaxClubs)
	if !isZone(c.Zone) {
		c.Zone = "" // one that only another version of the tz database knows
	}
	if c.Name == "" {
		c.Name = "?" // a reader refuses settings without a name
	}
	w.text(fmt.Sprintf(`{"version":%d,"settings":`, version))
	w.value(c)
	w.text(`,"rounds":[`)
	return w
}

// Write writes one round.
func (w *Writer) Write(r Round) {
	if w.rounds > 0 {
		w.text(",")
	}
	w.rounds++
	f := fileOf(r)
	f.Name = w.names.Distinct(f.Name)
	w.value(f)
}

// Close ends the file with what was written about the account, and returns the
// first error.
func (w *Writer) Close(written Written) error {
	w.text("]")
	rest, err := json.Marshal(written)
	if w.err == nil {
		w.err = err
	}
	if len(rest) > len("{}") {
		w.text("," + string(rest[1:len(rest)-1]))
	}
	w.text("}\n")
	return w.err
}

// text writes a text as it is.
func (w *Writer) text(text string) {
	if w.err == nil {
		_, w.err = io.WriteString(w.out, text)
	}
}

// value writes a value as JSON.
func (w *Writer) value(v any) {
	text, err := json.Marshal(v)
	if w.err == nil {
		w.err = err
	}
	w.text(string(text))
}

// Same reports whether two rounds are the same in a file, so that a round that is
// there already need not be taken in twice.
func Same(a, b Round) bool {
	one, err := json.Marshal(fileOf(a))
	other, failed := json.Marshal(fileOf(b))
	return err == nil && failed == nil && string(one) == string(other)
}

// fileOf is a round as it stands in a file, its texts cleaned. A hole without a
// line has no units either.
func fileOf(r Round) roundFile {
	f := roundFile{Name: golf.RoundName(r.Name, r.Day), Day: r.Day.String(), Course: golf.Cleaned(r.Course, golf.MaxText), Tee: golf.Cleaned(r.Tee, golf.MaxText),
		Target: r.Target, BoundaryYd: r.BoundaryYd, Par18: r.Par18, Conditions: golf.Cleaned(r.Conditions, golf.MaxText), EnteredBy: golf.Cleaned(r.EnteredBy, golf.MaxText), CardOut: r.CardOut, CardIn: r.CardIn, FirstHole: r.FirstHole}
	for _, h := range r.Holes {
		hole := holeFile{Number: h.Number, Par: h.Par, LengthIn: float64(h.Length), Index: h.Index, Line: golf.Cleaned(h.Line, golf.MaxLine), PickedUp: h.PickedUp, ScoreOnly: h.ScoreOnly}
		if h.Line != "" {
			hole.Far, hole.Green = h.Far.String(), h.Green.String()
		}
		for _, s := range h.Shots {
			hole.Shots = append(hole.Shots, fileOfShot(s))
		}
		f.Holes = append(f.Holes, hole)
	}
	return f
}

// fileOfShot is a shot as it stands in a file.
func fileOfShot(s golf.Shot) shotFile {
	f := shotFile{s.Lie.String(), float64(s.Distance), s.Unit.String(), s.About, s.Penalty, s.ShortSided, nil,
		golf.Cleaned(s.Club, golf.MaxText), s.Miss.String(), golf.Cleaned(s.Word, golf.MaxWord)}
	if s.GreenKnown {
		green := float64(s.GreenToWork)
		f.GreenIn = &green
	}
	return f
}
