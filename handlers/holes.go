package handlers

import (
	"errors"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/pages"
	"strokeledger/web/paths"
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

func (s *server) hole(w http.ResponseWriter, r *http.Request) error {
	kept, h, err := s.ofHole(r)
	if err != nil {
		return err
	}
	return s.showHole(w, r, http.StatusOK, kept, h, shown{line: h.Line})
}

// shown is what a page of a hole shows besides what is kept.
type shown struct {
	line  string
	other string // what another window saved in the meantime
	card  pages.CardForm
}

// showHole shows a hole with a line in its field.
func (s *server) showHole(w http.ResponseWriter, r *http.Request, status int, kept db.Round, h db.Hole, with shown) error {
	units, line, other := unitsOf(me(r)), with.line, with.other
	q := pages.Entering{ID: kept.ID, Course: kept.Course, Hole: h.Card(), Version: h.Version, Line: form.ParseLine(line, h.Card(), units), Units: units, Other: other, Player: int64(me(r).ID), Card: with.card}
	var card []golf.CardHole
	for _, other := range kept.Holes {
		if other.Length > 0 {
			card = append(card, other.Card())
		}
		in := pages.RoundHole{Number: other.Number, Par: other.Par}
		if other.Line != "" {
			in.Score = max(other.Strokes(), 1)
		}
		q.Round = append(q.Round, in)
	}
	if q.Line.Sound() && h.Length > 0 {
		var err error
		if q.Account, _, err = accountOf(kept, golf.Round{Holes: []golf.Hole{q.Line.Hole}}, card); err != nil {
			return err
		}
	}
	return show(w, r, status, pages.NewHoleEntry(shell(r), q).View())
}

// saveHole saves a hole, or answers a key of the pad. A line that cannot be
// saved comes back as it was typed, with what is wrong.
func (s *server) saveHole(w http.ResponseWriter, r *http.Request) error {
	kept, h, err := s.ofHole(r)
	if err != nil {
		return err
	}
	line, press := strings.TrimSpace(r.FormValue("line")), r.FormValue("press")
	if press != "" && press != "save" {
		return s.showHole(w, r, http.StatusOK, kept, h, shown{line: form.Press(line, press), card: cardForm(r)})
	}
	if h.Length == 0 {
		if told := tell(r, &h); told.Problems != nil {
			return s.showHole(w, r, http.StatusUnprocessableEntity, kept, h, shown{line: line, card: told})
		}
		if err := s.store.TellHole(r.Context(), me(r).ID, kept.ID, h.Card()); err != nil {
			return err
		}
	}
	typed := form.ParseLine(line, h.Card(), unitsOf(me(r)))
	if !typed.Sound() {
		return s.showHole(w, r, http.StatusUnprocessableEntity, kept, h, shown{line: line})
	}
	version, err := strconv.Atoi(r.FormValue("version"))
	if err != nil {
		version = h.Version
	}
	before := h
	h.Hole, h.Line, h.Version = typed.Hole, line, version
	keepSaid(h.Shots, before.Shots)
	err = s.store.SaveHole(r.Context(), me(r).ID, kept.ID, h)
	switch {
	case errors.Is(err, golf.ErrConflict) && before.Line == line:
		// the same save came twice, after a connection that dropped
	case errors.Is(err, golf.ErrConflict):
		return s.showHole(w, r, http.StatusConflict, kept, before, shown{line: line, other: before.Line})
	case err != nil:
		return err
	}
	if err := s.summarize(r.Context(), me(r).ID, me(r), []golf.RoundID{kept.ID}, nil); err != nil {
		// the hole is saved, and the next look at the roster sums the round up
		s.options.Log.WarnContext(r.Context(), "no summary", "request", requestID(r), "error", err.Error())
	}
	return then(w, r, nextHole(kept, h.Number))
}

// keepSaid keeps what was said of shots beside the line: where they missed, and
// the player's word. A shot is the same when it is in its place with its lie
// and distance.
func keepSaid(shots, before []golf.Shot) {
	for i := range min(len(shots), len(before)) {
		if shots[i].Lie == before[i].Lie && shots[i].Distance == before[i].Distance {
			shots[i].Miss, shots[i].Word = before[i].Miss, before[i].Word
		}
	}
}

// nextHole is where a round goes on after a hole: the next one in the order of
// play that has not been entered, and the statement after the last.
func nextHole(kept db.Round, hole int) string {
	if next, open := kept.NextAfter(hole); open {
		return paths.Hole(kept.ID, next)
	}
	return paths.Round(kept.ID)
}

// echoHole answers how a line is understood, after a key when one was pressed.
func (s *server) echoHole(w http.ResponseWriter, r *http.Request) error {
	kept, h, err := s.ofHole(r)
	if err != nil {
		return err
	}
	return s.showHole(w, r, http.StatusOK, kept, h, shown{line: form.Press(strings.TrimSpace(r.FormValue("line")), r.FormValue("press")), card: cardForm(r)})
}

func cardForm(r *http.Request) pages.CardForm {
	return pages.CardForm{Par: r.FormValue("par"), Length: r.FormValue("length"), Index: r.FormValue("index")}
}

// tell reads the card of a hole that nobody has told yet; its problems are nil
// when there are none.
func tell(r *http.Request, h *db.Hole) pages.CardForm {
	f := cardForm(r)
	problems := map[string]string{}
	h.Par = int(between(f.Par, 3, 6, "par", problems))
	unit := unitsOf(me(r)).Far
	h.Length = unit.Of(between(f.Length, 1, unit.In(golf.MaxDistance), "length", problems))
	if f.Index != "" {
		h.Index = int(between(f.Index, 1, 18, "index", problems))
	}
	if len(problems) > 0 {
		f.Problems = problems
		h.Length = 0
	}
	return f
}
