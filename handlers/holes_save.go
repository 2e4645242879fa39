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
	"strokeledger/web/paths"
)

// refuse answers a save that cannot be stored as it is, with what was typed.
func (s *server) refuse(w http.ResponseWriter, r *http.Request, status int, kept db.Round, h db.Hole, typed typedHole) error {
	if wantsJSON(r) {
		return s.answerReading(w, r, status, kept, h, typed)
	}
	return s.showHole(w, r, status, kept, h, typed)
}

// saveHole saves a hole, or answers a key of the pad.
func (s *server) saveHole(w http.ResponseWriter, r *http.Request) error {
	kept, h, err := s.ofHole(r)
	if err != nil {
		return err
	}
	line, press := strings.TrimSpace(r.PostFormValue("line")), r.PostFormValue("press")
	switch press {
	case "", "save", "anyway", "mine":
		return s.storeHole(w, r, kept, h, line)
	case "theirs":
		return then(w, r, paths.Hole(kept.ID, h.Number))
	default:
		return s.showHole(w, r, http.StatusOK, kept, h, typedHole{line: form.Press(line, press), card: form.ParseHoleCard(r.PostForm, h.Number, unitsOf(me(r)).Far).AsTyped()})
	}
}

// storeHole stores a line of a hole. One that cannot be stored comes back as it
// was typed, with what is wrong, asked, or saved elsewhere.
func (s *server) storeHole(w http.ResponseWriter, r *http.Request, kept db.Round, h db.Hole, line string) error {
	version, err := strconv.Atoi(r.PostFormValue("version"))
	if err != nil {
		return errUnreadable
	}
	unknown := h.Length == 0
	card := readCard(r, &h)
	read := form.ParseLine(line, h.Card(), unitsOf(me(r)))
	switch {
	case version != h.Version && shownLine(h, me(r)) != line:
		return s.refuse(w, r, http.StatusConflict, kept, h, typedHole{line: line, conflict: true})
	case !card.Sound() || !read.Sound():
		return s.refuse(w, r, http.StatusUnprocessableEntity, kept, h, typedHole{line: line, card: card})
	case len(read.Questions) > 0 && !answered(r, line):
		return s.refuse(w, r, http.StatusUnprocessableEntity, kept, h, typedHole{line: line, card: card, asking: true})
	case version != h.Version: // the same save came twice, after a connection that dropped
		return s.goOn(w, r, kept, h)
	}
	return s.putHole(w, r, kept, h, read, unknown)
}

// putHole stores a hole that was read and is sound, with its card when that was
// unknown, and goes on.
func (s *server) putHole(w http.ResponseWriter, r *http.Request, kept db.Round, h db.Hole, read form.Line, unknown bool) error {
	if unknown {
		if err := s.store.SetHoleCard(r.Context(), me(r).ID, kept.ID, h.Card()); err != nil {
			return err
		}
	}
	before := h.Shots
	h = typed(h, read, me(r))
	keepSaid(h.Shots, before)
	err := s.store.SaveHole(r.Context(), me(r).ID, kept.ID, h)
	if errors.Is(err, golf.ErrConflict) { // between reading and saving
		return s.conflictAgain(w, r, read.Text)
	}
	if err != nil {
		return err
	}
	h.Version++
	kept.Holes[slices.IndexFunc(kept.Holes, func(other db.Hole) bool { return other.Number == h.Number })] = h
	s.sumUp(r, kept)
	return s.goOn(w, r, kept, h)
}

// answered reports whether the questions of a line were answered: the page that
// asked them comes back with that very line.
func answered(r *http.Request, line string) bool {
	return r.PostFormValue("press") != "save" && r.PostFormValue("press") != "" && strings.TrimSpace(r.PostFormValue("asked")) == line
}

// conflictAgain shows both versions of a hole that was saved a moment ago.
func (s *server) conflictAgain(w http.ResponseWriter, r *http.Request, line string) error {
	kept, h, err := s.ofHole(r)
	if err != nil {
		return err
	}
	if shownLine(h, me(r)) == line {
		return s.goOn(w, r, kept, h)
	}
	return s.refuse(w, r, http.StatusConflict, kept, h, typedHole{line: line, conflict: true})
}

// sumUp keeps the summary of a round that was just saved. The hole is stored
// already: a summary that fails is made at the next look at the roster.
func (s *server) sumUp(r *http.Request, kept db.Round) {
	if _, err := s.keepSummaries(r.Context(), me(r).ID, me(r), []db.Round{kept}); err != nil {
		s.options.Log.WarnContext(r.Context(), "no summary", "request", requestID(r), "error", err.Error())
	}
}

// goOn leads from a stored hole to the next.
func (s *server) goOn(w http.ResponseWriter, r *http.Request, kept db.Round, h db.Hole) error {
	next := nextHole(kept, h.Number)
	if wantsJSON(r) {
		return answerJSON(w, http.StatusOK, savedHole{Next: next, Version: h.Version, Score: max(h.Strokes(), 1)})
	}
	return then(w, r, next)
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
	return saying(paths.Round(kept.ID), savedParam, savedRound)
}
