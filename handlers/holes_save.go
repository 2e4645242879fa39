package handlers

import (
	"errors"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

// refuse answers a save that cannot be stored, with what was typed.
func (s *server) refuse(w http.ResponseWriter, r *http.Request, status int, at holeOfRound, typed typedHole) error {
	if wantsJSON(r) {
		return s.answerReading(w, r, status, at, typed)
	}
	return s.showHole(w, r, status, at, typed)
}

// saveHole saves a hole, or answers a key of the pad.
func (s *server) saveHole(w http.ResponseWriter, r *http.Request) error {
	at, err := s.ofHole(r)
	if err != nil {
		return err
	}
	line, press := strings.TrimSpace(r.PostFormValue("line")), r.PostFormValue("press")
	switch press {
	case "", "save", "anyway", "mine":
		return s.storeHole(w, r, at, line)
	case "theirs":
		return redirect(w, r, at.pages.At(at.hole.Number))
	default:
		return s.showHole(w, r, http.StatusOK, at, typedHole{line: form.Press(line, press), card: form.ParseHoleCard(r.PostForm, at.hole.Number, unitsOf(me(r)).Far).AsTyped()})
	}
}

// storeHole stores the line of a hole. A line that cannot be stored is shown again
// as it was typed, with what is wrong, in question, or saved in another window.
func (s *server) storeHole(w http.ResponseWriter, r *http.Request, at holeOfRound, line string) error {
	version, err := strconv.Atoi(r.PostFormValue("version"))
	if err != nil {
		return errUnreadable
	}
	unknown := at.hole.Length == 0
	card := readCard(r, &at.hole)
	read := form.ParseLine(line, at.hole.Card(), at.units)
	switch {
	case version != at.hole.Version && at.shown() != line:
		return s.refuse(w, r, http.StatusConflict, at, typedHole{line: line, conflict: true})
	case !card.Sound() || !read.Sound():
		return s.refuse(w, r, http.StatusUnprocessableEntity, at, typedHole{line: line, card: card})
	case len(read.Questions) > 0 && !answered(r, line):
		return s.refuse(w, r, http.StatusUnprocessableEntity, at, typedHole{line: line, card: card, asking: true})
	case version != at.hole.Version: // the same save came twice, after a connection that dropped
		return s.nextAfter(w, r, at)
	}
	if at.walked != nil {
		return s.putWalkedHole(w, r, at, read)
	}
	return s.putHole(w, r, at, read, unknown)
}

// putHole stores a hole whose line is sound, with its card if that was unknown,
// and sends the player to the next hole.
func (s *server) putHole(w http.ResponseWriter, r *http.Request, at holeOfRound, read form.Line, unknown bool) error {
	if unknown {
		if err := s.store.SetHoleCard(r.Context(), me(r).ID, at.round.ID, at.hole.Card()); err != nil {
			return err
		}
	}
	before := at.hole.Shots
	at.hole = typed(at.hole, read, me(r))
	carryDetails(at.hole.Shots, before)
	at.round.RunBook.Lines.Fill(at.hole.Shots)
	err := s.store.SaveHole(r.Context(), me(r).ID, at.round.ID, at.hole)
	if errors.Is(err, golf.ErrConflict) { // between reading and saving
		return s.conflictAgain(w, r, read.Text)
	}
	if err != nil {
		return err
	}
	at.hole.Version++
	holes := at.round.Holes
	holes[slices.IndexFunc(holes, func(h db.Hole) bool { return h.Number == at.hole.Number })] = at.hole
	s.sumUp(r, at.round)
	return s.nextAfter(w, r, at)
}

// answered reports whether the questions of a line were answered: the page that
// asked them comes back with that very line.
func answered(r *http.Request, line string) bool {
	return r.PostFormValue("press") != "save" && r.PostFormValue("press") != "" && strings.TrimSpace(r.PostFormValue("asked")) == line
}

// conflictAgain shows both versions of a hole that was saved a moment ago.
func (s *server) conflictAgain(w http.ResponseWriter, r *http.Request, line string) error {
	at, err := s.ofHole(r)
	if err != nil {
		return err
	}
	if at.shown() == line {
		return s.nextAfter(w, r, at)
	}
	return s.refuse(w, r, http.StatusConflict, at, typedHole{line: line, conflict: true})
}

// sumUp stores the summary of a round that was just saved. The hole is stored
// already, so a failure is only logged: the next visit to the roster makes the
// summary.
func (s *server) sumUp(r *http.Request, round db.Round) {
	if _, err := s.storeSummaries(r.Context(), me(r).ID, me(r), []db.Round{round}); err != nil {
		s.options.Log.WarnContext(r.Context(), "no summary", "request", requestID(r), "error", err.Error())
	}
}

// nextAfter sends the player from a stored hole to the next.
func (s *server) nextAfter(w http.ResponseWriter, r *http.Request, at holeOfRound) error {
	next := nextHole(at)
	if wantsJSON(r) {
		score, err := scoreOf(at)
		if err != nil {
			return err
		}
		return answerJSON(w, http.StatusOK, savedHole{Next: next, Version: at.hole.Version, Score: score})
	}
	return redirect(w, r, next)
}

// scoreOf is the score of a stored hole as the strip of holes shows it.
func scoreOf(at holeOfRound) (string, error) {
	alone := playedOf(at.round)
	alone.Round.Holes = []golf.Hole{at.hole.Hole}
	of, err := analysis.StatementOf(alone, nil, golf.Yards.Of(at.round.BoundaryYd))
	if err != nil {
		return "", err
	}
	return words.Score(of.Account.Score, at.hole.PickedUp), nil
}

// carryDetails copies what a line does not hold, misses and notes, from the shots
// of the hole as it was. A shot counts as the same if its place, lie and distance
// are.
func carryDetails(shots, before []golf.Shot) {
	for i := range min(len(shots), len(before)) {
		if shots[i].Lie == before[i].Lie && shots[i].Distance == before[i].Distance {
			shots[i].Miss, shots[i].Word = before[i].Miss, before[i].Word
		}
	}
}

// nextHole is the address after a hole: that of the next hole in the order of play
// that has not been entered, or the page of the round when none is left.
func nextHole(at holeOfRound) string {
	if next, open := at.round.NextAfter(at.hole.Number); open {
		return at.pages.At(next)
	}
	return saying(at.pages.Round(), savedParam, savedRound)
}
