package handlers

import (
	"net/http"
	"slices"

	"github.com/go-chi/chi/v5"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/entry"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// holeOfRound is a hole with its round. The hole may differ from the one in the
// round while a form changes it.
type holeOfRound struct {
	round  db.Round
	hole   db.Hole
	units  form.Units  // in which its line is shown and typed
	pages  paths.Holes // where the holes of the round are typed
	walked *walkedAt   // the round that a coach enters; nil for the player's own
}

// shown is the line of the hole in the units in which it is typed.
func (at holeOfRound) shown() string {
	return form.Shown(at.hole.Line, at.hole.Card(), form.Units(at.hole.Units), at.units)
}

// ofHole reads the hole named in the address, with its round: one of the player's own, or
// one that a coach enters.
func (s *server) ofHole(r *http.Request) (at holeOfRound, err error) {
	if chi.URLParam(r, "walked") != "" {
		at, err = s.ofWalkedRound(r)
	} else {
		at.units = unitsOf(me(r))
		at.round, err = s.ofRound(r)
		at.pages = paths.HolesOf(at.round.ID)
	}
	if err != nil {
		return at, err
	}
	n, err := id(r, "hole")
	if err != nil {
		return at, err
	}
	i := slices.IndexFunc(at.round.Holes, func(h db.Hole) bool { return h.Number == int(n) })
	if i < 0 {
		return at, golf.ErrNotFound
	}
	at.hole = at.round.Holes[i]
	return at, nil
}

// hole shows the page of a hole. A line in the address stands in its field,
// unsaved: it was typed before a session ended.
func (s *server) hole(w http.ResponseWriter, r *http.Request) error {
	at, err := s.ofHole(r)
	if err != nil {
		return err
	}
	line := at.shown()
	if typed := r.URL.Query().Get("line"); typed != "" {
		line = typed
	}
	return s.showHole(w, r, http.StatusOK, at, typedHole{line: line})
}

// typedHole is what was typed on the page of a hole, and why the page is shown
// again.
type typedHole struct {
	line     string
	card     form.HoleCard
	asking   bool // the player pressed save, so every question is asked
	conflict bool // another window saved the hole in the meantime
}

// showHole shows a hole with a line in its field.
func (s *server) showHole(w http.ResponseWriter, r *http.Request, status int, at holeOfRound, typed typedHole) error {
	reading, err := readingOf(at, typed)
	if err != nil {
		return err
	}
	round, h := at.round, at.hole
	q := entry.HoleInput{ID: round.ID, Course: round.Course, Hole: h.Card(), Version: h.Version, Stored: at.shown(), Reading: reading,
		Target: round.Target, Units: at.units, Card: typed.card, Order: orderOf(round)}
	if w := at.walked; w != nil {
		q.Walked = &entry.WalkedHole{Whose: w.about.pages, Round: w.kept.ID, Name: w.about.player.Name}
	}
	if q.Round, err = stripOf(round); err != nil {
		return err
	}
	return show(w, r, status, entry.NewHolePage(shell(r), q).View())
}

// stripOf is the holes of a round, with the strokes lost on those that were
// entered.
func stripOf(round db.Round) ([]entry.RoundHole, error) {
	of, err := analysis.StatementOf(playedOf(round), cardOf(round), golf.Yards.Of(round.BoundaryYd))
	if err != nil {
		return nil, err
	}
	known := map[int]entry.RoundHole{}
	for _, h := range of.Account.Holes {
		known[h.Number] = entry.RoundHole{Score: h.Whole, PickedUp: h.PickedUp, Lost: h.Lost, Known: true}
	}
	var holes []entry.RoundHole
	for _, h := range round.Holes {
		in := entry.RoundHole{Number: h.Number, Par: h.Par, Length: h.Length}
		if h.Line != "" {
			of := known[h.Number]
			in.Score, in.PickedUp = of.Score, of.PickedUp
			if fullCard(round) {
				in.Lost, in.Known = of.Lost, of.Known
			}
		}
		holes = append(holes, in)
	}
	return holes, nil
}

// cardOf is the card of the holes whose length is known.
func cardOf(round db.Round) []golf.CardHole {
	var card []golf.CardHole
	for _, h := range round.Holes {
		if h.Length > 0 {
			card = append(card, h.Card())
		}
	}
	return card
}

func fullCard(round db.Round) bool { return len(cardOf(round)) == len(round.Holes) }

// orderOf is the numbers of a round's holes in the order of play.
func orderOf(round db.Round) []int {
	var order []int
	for _, h := range round.InOrder() {
		order = append(order, h.Number)
	}
	return order
}

// readingOf works out how a typed line reads.
func readingOf(at holeOfRound, typed typedHole) (entry.ReadingInput, error) {
	h, units := at.hole, at.units
	q := entry.ReadingInput{Line: form.ParseLine(typed.line, h.Card(), units), Hole: h.Card(), Units: units, AskAll: typed.asking}
	if typed.conflict {
		other := form.ParseLine(at.shown(), h.Card(), units)
		q.Conflict = &other
	}
	if h.Length == 0 || !q.Line.Empty() && !q.Line.Sound() && !q.Line.Unfinished {
		return q, nil
	}
	read := q.Line.Hole
	if len(read.Shots) == 0 {
		read = golf.Hole{Number: h.Number, Par: h.Par, Shots: []golf.Shot{{Lie: golf.Tee, Distance: h.Length}}}
	}
	at.round.RunBook.Lines.Fill(read.Shots)
	alone := playedOf(at.round)
	alone.Round.Holes = []golf.Hole{read}
	of, err := analysis.StatementOf(alone, cardOf(at.round), golf.Yards.Of(at.round.BoundaryYd))
	q.Account = of.Account
	return q, err
}

// echoHole tells a script how a line reads.
func (s *server) echoHole(w http.ResponseWriter, r *http.Request) error {
	at, err := s.ofHole(r)
	if err != nil {
		return err
	}
	readCard(r, &at.hole)
	return s.answerReading(w, r, http.StatusOK, at, typedHole{line: r.PostFormValue("line")})
}

// answerReading sends a script what stands between the line and the pad.
func (s *server) answerReading(w http.ResponseWriter, r *http.Request, status int, at holeOfRound, typed typedHole) error {
	reading, err := readingOf(at, typed)
	if err != nil {
		return err
	}
	answer := scriptAnswer{}
	if answer.HTML, err = rendered(r, entry.NewReading(reading).View()); err != nil {
		return err
	}
	if typed.conflict {
		answer.Version = &at.hole.Version
	}
	answer.Field = typed.card.Wrong()
	return answerJSON(w, status, answer)
}

// readCard reads the card of a hole whose length is not known yet, and puts it
// into the hole. It is empty, and sound, for a hole whose length is known.
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
