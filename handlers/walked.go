package handlers

import (
	"errors"
	"fmt"
	"net/http"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/entry"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

// walkedRounds lists the rounds that a coach entered for a player: to the player those
// that wait for an answer, to the coach the coach's own, with the form that begins one.
func (s *server) walkedRounds(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	return s.showWalkedRounds(w, r, http.StatusOK, about, form.RoundStart{Date: form.DayOf(s.today(r)), First: form.WholeOf(1)})
}

func (s *server) showWalkedRounds(w http.ResponseWriter, r *http.Request, status int, about subject, f form.RoundStart) error {
	kept, err := s.store.WalkedRounds(r.Context(), me(r).ID, about.player.ID)
	if err != nil {
		return err
	}
	in := entry.WalkedListInput{Whose: about.pages, Name: about.player.Name, Begin: f}
	for _, k := range kept {
		in.Rounds = append(in.Rounds, walkedOf(k))
	}
	if !about.pages.Own {
		if in.Courses, err = s.choices(r, f.Course.Text); err != nil {
			return err
		}
	}
	page := s.shellOf(r, about)
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	return show(w, r, status, entry.NewWalkedListPage(page, in).View())
}

// walkedOf is a stored walked round, read.
func walkedOf(k db.Walked) entry.WalkedRound {
	to := entry.WalkedRound{ID: k.ID, Coach: k.Coach, Day: golf.DateOf(k.PlayedOn), Course: k.Course, Tee: k.Tee, Units: form.Units(k.Units()), Sent: k.SentAt != nil, First: k.FirstHole}
	for _, h := range k.Holes {
		to.Card = append(to.Card, h.Card())
		to.Lines = append(to.Lines, form.ParseWalkedLine(h.Line, h.Card(), to.Units))
	}
	return to
}

// beginWalked begins a round that a coach enters for a pupil, on a course whose whole card
// is known.
func (s *server) beginWalked(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	if about.pages.Own {
		return golf.ErrNotFound
	}
	f := s.walkedStart(r, about)
	k, err := s.walkedOn(r, about, &f)
	if err != nil {
		return err
	}
	if !f.Sound() {
		return s.showWalkedRounds(w, r, http.StatusUnprocessableEntity, about, f)
	}
	id, err := s.store.BeginWalked(r.Context(), me(r).ID, about.player.ID, k)
	if err != nil {
		return err
	}
	return redirect(w, r, about.pages.HolesOfWalked(id).At(k.FirstHole))
}

// walkedStart reads the form that begins such a round.
func (s *server) walkedStart(r *http.Request, about subject) form.RoundStart {
	r.Form.Del("new_course") // its card would have to be typed first
	f := form.ParseRoundStart(r.Form)
	switch day := f.Date.Value; {
	case !f.Date.Sound():
	case day.Compare(s.today(r)) > 0:
		f.Date.Problem = "This day is still to come."
	case day.Compare(about.since) < 0:
		f.Date.Problem = "The pupil shares what was played from " + words.ShortDay(about.since) + " on."
	}
	return f
}

// walkedOn is the round that a form begins, with the card of its course and no line.
func (s *server) walkedOn(r *http.Request, about subject, f *form.RoundStart) (db.Walked, error) {
	c, err := s.courseToPlay(r, f)
	if err != nil || !f.Course.Sound() {
		return db.Walked{}, err
	}
	round := roundOn(c, about.player, f, s.now())
	k := db.Walked{PlayedOn: round.PlayedOn, Course: c.Name, Tee: c.Tee, CourseID: &c.ID, Par18: round.Par18, FirstHole: round.FirstHole, FarUnit: me(r).FarUnit, GreenUnit: me(r).GreenUnit}
	for _, h := range round.Holes {
		k.Holes = append(k.Holes, db.WalkedHole{Number: h.Number, Par: h.Par, Length: float64(h.Length), Index: h.Index})
	}
	if f.Sound() && (len(k.Holes) == 0 || slices.ContainsFunc(k.Holes, func(h db.WalkedHole) bool { return h.Length == 0 })) {
		f.Course.Problem = "The card of this course is not whole. Fill it in on the page of the course first."
	}
	return k, nil
}

// ofWalked reads the walked round named in the address, if the reader may read it.
func (s *server) ofWalked(r *http.Request) (about subject, k db.Walked, err error) {
	if about, err = s.subject(r); err != nil {
		return about, k, err
	}
	number, err := id(r, "walked")
	if err != nil {
		return about, k, err
	}
	k, err = s.store.Walked(r.Context(), me(r).ID, about.player.ID, number)
	return about, k, err
}

func (s *server) walked(w http.ResponseWriter, r *http.Request) error {
	about, k, err := s.ofWalked(r)
	if err != nil {
		return err
	}
	return s.showWalked(w, r, http.StatusOK, about, entry.WalkedInput{Round: walkedOf(k)})
}

func (s *server) showWalked(w http.ResponseWriter, r *http.Request, status int, about subject, in entry.WalkedInput) error {
	in.Whose, in.Name = about.pages, about.player.Name
	return show(w, r, status, entry.NewWalkedPage(s.shellOf(r, about), in).View())
}

// typedWalked is what the form with a line a hole says, beside what is stored, and the
// holes that it changes. A line that is still as the page showed it changes nothing.
func typedWalked(r *http.Request, k db.Walked) (in entry.WalkedInput, changed []db.WalkedHole) {
	in = entry.WalkedInput{Round: walkedOf(k), Tried: true, ToSend: r.FormValue("press") == "send"}
	stored := in.Round.Lines
	in.Round.Lines = form.ParseWalked(r.Form, in.Round.Card, in.Round.Units)
	for i, h := range k.Holes {
		shown, typed := form.WalkedShown(r.Form, h.Number, h.Line), in.Round.Lines[i].Text
		switch {
		case typed == h.Line || typed == shown || !r.Form.Has(form.WalkedName(h.Number)):
			in.Round.Lines[i], shown = stored[i], h.Line
		case shown != h.Line:
			in.Other = append(in.Other, entry.OtherLine{Hole: h.Number, Line: stored[i]})
			shown = h.Line
		default:
			changed = append(changed, db.WalkedHole{Number: h.Number, Line: typed, Version: h.Version})
		}
		in.Shown = append(in.Shown, shown)
	}
	return in, changed
}

func (s *server) keepWalked(w http.ResponseWriter, r *http.Request, about subject, k db.Walked, changed []db.WalkedHole, send bool) error {
	err := s.store.SaveWalked(r.Context(), me(r).ID, about.player.ID, k.ID, changed, send)
	if errors.Is(err, golf.ErrConflict) { // between reading and saving: the other lines are there now
		return s.saveWalked(w, r)
	}
	if err != nil {
		return err
	}
	if !send {
		return saved(w, r, about.pages.Walked(k.ID), "walked")
	}
	s.tell(r, about.player.ID, db.Notice{Kind: db.NoticeWalked, OfID: about.player.ID, What: walkedSaid(k)})
	return saved(w, r, about.pages.Walked(k.ID), "sent")
}

// walkedSaid names a walked round in a notice.
func walkedSaid(k db.Walked) string {
	return words.ShortDay(golf.DateOf(k.PlayedOn)) + ", " + words.Excerpt(k.Course)
}

// answerWalked makes the round the player's, or declines it.
func (s *server) answerWalked(w http.ResponseWriter, r *http.Request) error {
	about, k, err := s.ofWalked(r)
	if err != nil {
		return err
	}
	if !about.pages.Own {
		return golf.ErrNotFound
	}
	if r.FormValue("accept") == "" {
		if err := s.store.RemoveWalked(r.Context(), me(r).ID, me(r).ID, k.ID); err != nil {
			return err
		}
		s.tellOfWalked(r, k, db.NoticeWalkOut)
		return redirectAfterRemoval(w, r, about.pages.WalkedRounds(), removal{db.RemovedWalked, me(r).ID, k.ID})
	}
	round := roundOfWalked(me(r), k)
	round.Name += " " + s.here(r, s.now()).Format("150405")
	if round.ID, err = s.store.AcceptWalked(r.Context(), me(r).ID, k.ID, round); err != nil {
		return err
	}
	s.sumUp(r, round)
	s.tellOfWalked(r, k, db.NoticeWalkIn)
	return saved(w, r, about.pages.Round(round.ID), "walkin")
}

// roundOfWalked is the round that a walked one becomes: read from the lines that the coach
// typed, for the player's target.
func roundOfWalked(p db.Player, k db.Walked) db.Round {
	round := db.Round{Name: fmt.Sprintf("%s %s", golf.DateOf(k.PlayedOn), k.Course), PlayedOn: k.PlayedOn, Course: k.Course, Tee: k.Tee, CourseID: k.CourseID,
		Target: p.Target, BoundaryYd: p.BoundaryYd, Par18: k.Par18, FirstHole: k.FirstHole, EnteredBy: k.Coach}
	read := walkedOf(k)
	for i, h := range read.Card {
		hole := db.Hole{Hole: golf.Hole{Number: h.Number, Par: h.Par}, Length: h.Length, Index: h.Index}
		if l := read.Lines[i]; l.Sound() {
			hole.Hole, hole.Line, hole.Units, hole.Version = l.Hole, l.Text, k.Units(), 1
		}
		round.Holes = append(round.Holes, hole)
	}
	return round
}

// tellOfWalked tells the coach what the player did with a round, while the coach has
// access.
func (s *server) tellOfWalked(r *http.Request, k db.Walked, kind db.NoticeKind) {
	if _, err := s.store.Seen(r.Context(), k.CoachID, me(r).ID); err == nil {
		s.tell(r, k.CoachID, db.Notice{Kind: kind, OfID: me(r).ID, What: walkedSaid(k)})
	}
}

// removeWalked takes a round back that the coach entered.
func (s *server) removeWalked(w http.ResponseWriter, r *http.Request) error {
	about, k, err := s.ofWalked(r)
	if err != nil {
		return err
	}
	if about.pages.Own {
		return golf.ErrNotFound
	}
	if err := s.store.RemoveWalked(r.Context(), me(r).ID, about.player.ID, k.ID); err != nil {
		return err
	}
	return redirectAfterRemoval(w, r, about.pages.WalkedRounds(), removal{db.RemovedWalked, about.player.ID, k.ID})
}
