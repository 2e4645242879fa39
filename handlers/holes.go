package handlers

import (
	"net/http"
	"slices"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/entry"
	"strokeledger/web/form"
)

// ofHole reads the round and the hole of the address.
func (s *server) ofHole(r *http.Request) (db.Round, db.Hole, error) {
	kept, err := s.ofRound(r)
	if err != nil {
		return kept, db.Hole{}, err
	}
	n, err := id(r, "hole")
	if err != nil {
		return kept, db.Hole{}, err
	}
	i := slices.IndexFunc(kept.Holes, func(h db.Hole) bool { return h.Number == int(n) })
	if i < 0 {
		return kept, db.Hole{}, golf.ErrNotFound
	}
	return kept, kept.Holes[i], nil
}

// hole shows the page of a hole; a line in the address stands in its field
// unsaved, as after a session that ended.
func (s *server) hole(w http.ResponseWriter, r *http.Request) error {
	kept, h, err := s.ofHole(r)
	if err != nil {
		return err
	}
	line := shownLine(h, me(r))
	if typed := r.URL.Query().Get("line"); typed != "" {
		line = typed
	}
	return s.showHole(w, r, http.StatusOK, kept, h, typedHole{line: line})
}

// typedHole is what was typed on the page of a hole, and how it came back.
type typedHole struct {
	line     string
	card     form.HoleCard
	asking   bool // the hole was to be saved: every question is asked
	conflict bool // another window saved the hole in the meantime
}

// showHole shows a hole with a line in its field.
func (s *server) showHole(w http.ResponseWriter, r *http.Request, status int, kept db.Round, h db.Hole, typed typedHole) error {
	reading, err := readingOf(r, kept, h, typed)
	if err != nil {
		return err
	}
	q := entry.HoleInput{ID: kept.ID, Course: kept.Course, Hole: h.Card(), Version: h.Version, Stored: shownLine(h, me(r)), Reading: reading,
		Target: kept.Target, Units: unitsOf(me(r)), Card: typed.card, Order: orderOf(kept)}
	if q.Round, err = stripOf(kept); err != nil {
		return err
	}
	return show(w, r, status, entry.NewHolePage(shell(r), q).View())
}

// stripOf is the holes of a round, with what those that were entered lost.
func stripOf(kept db.Round) ([]entry.RoundHole, error) {
	lost := map[int]float64{}
	if fullCard(kept) {
		of, err := analysis.StatementOf(playedOf(kept), cardOf(kept), golf.Yards.Of(kept.BoundaryYd))
		if err != nil {
			return nil, err
		}
		for _, h := range of.Account.Holes {
			lost[h.Number] = h.Lost
		}
	}
	var holes []entry.RoundHole
	for _, h := range kept.Holes {
		in := entry.RoundHole{Number: h.Number, Par: h.Par, Length: h.Length}
		if h.Line != "" {
			in.Score = max(h.Strokes(), 1)
			in.Lost, in.Known = lost[h.Number]
		}
		holes = append(holes, in)
	}
	return holes, nil
}

// cardOf is the card of the holes whose length is known.
func cardOf(kept db.Round) []golf.CardHole {
	var card []golf.CardHole
	for _, h := range kept.Holes {
		if h.Length > 0 {
			card = append(card, h.Card())
		}
	}
	return card
}

func fullCard(kept db.Round) bool { return len(cardOf(kept)) == len(kept.Holes) }

// orderOf is the numbers of a round's holes in the order of play.
func orderOf(kept db.Round) []int {
	var order []int
	for _, h := range kept.InOrder() {
		order = append(order, h.Number)
	}
	return order
}

// readingOf works out how a typed line reads.
func readingOf(r *http.Request, kept db.Round, h db.Hole, typed typedHole) (entry.ReadingInput, error) {
	units := unitsOf(me(r))
	q := entry.ReadingInput{Line: form.ParseLine(typed.line, h.Card(), units), Hole: h.Card(), Units: units, AskAll: typed.asking}
	if typed.conflict {
		other := form.ParseLine(shownLine(h, me(r)), h.Card(), units)
		q.Conflict = &other
	}
	if h.Length == 0 || !q.Line.Empty() && !q.Line.Sound() && !q.Line.Unfinished {
		return q, nil
	}
	read := q.Line.Hole
	if len(read.Shots) == 0 {
		read = golf.Hole{Number: h.Number, Par: h.Par, Shots: []golf.Shot{{Lie: golf.Tee, Distance: h.Length}}}
	}
	alone := playedOf(kept)
	alone.Round.Holes = []golf.Hole{read}
	of, err := analysis.StatementOf(alone, cardOf(kept), golf.Yards.Of(kept.BoundaryYd))
	q.Account = of.Account
	return q, err
}

// echoHole answers a script how a line reads.
func (s *server) echoHole(w http.ResponseWriter, r *http.Request) error {
	kept, h, err := s.ofHole(r)
	if err != nil {
		return err
	}
	readCard(r, &h)
	return s.answerReading(w, r, http.StatusOK, kept, h, typedHole{line: r.PostFormValue("line")})
}

// answerReading answers a script with what stands between the line and the pad.
func (s *server) answerReading(w http.ResponseWriter, r *http.Request, status int, kept db.Round, h db.Hole, typed typedHole) error {
	reading, err := readingOf(r, kept, h, typed)
	if err != nil {
		return err
	}
	answer := scriptAnswer{}
	if answer.HTML, err = rendered(r, entry.NewReading(reading).View()); err != nil {
		return err
	}
	if typed.conflict {
		answer.Version = &h.Version
	}
	answer.Field = typed.card.Wrong()
	return answerJSON(w, status, answer)
}

// readCard reads the card of a hole whose length is not known yet; it is sound
// when there is nothing to read.
func readCard(r *http.Request, h *db.Hole) form.HoleCard {
	if h.Length > 0 {
		return form.HoleCard{}
	}
	f := form.ParseHoleCard(r.PostForm, h.Number, unitsOf(me(r)).Far)
	if card := f.Hole(); f.Sound() {
		h.Par, h.Length, h.Index = card.Par, card.Length, card.Index
	}
	return f
}
