package handlers

import (
	"fmt"
	"net/http"
	"slices"
	"time"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/pages"
	"strokeledger/web/paths"
)

// squadDays is over how many days pupils are set side by side unless others are
// chosen.
const squadDays = 92

// squad sets pupils side by side.
func (s *server) squad(w http.ResponseWriter, r *http.Request) error {
	q := pages.AskedSquad{From: now().AddDays(1 - squadDays), To: now()}
	status := http.StatusOK
	for text, to := range map[string]*golf.Date{r.FormValue("from"): &q.From, r.FormValue("to"): &q.To} {
		if text == "" {
			continue
		}
		day, err := golf.ParseDate(text)
		if err != nil {
			q.Problem, status = capitalized(err.Error())+".", http.StatusUnprocessableEntity
			continue
		}
		*to = day
	}
	pupils, err := s.store.Roster(r.Context(), me(r).ID, paths.Squad)
	if err != nil {
		return err
	}
	all, err := s.summaries(r, pupils, db.Chosen{From: q.From, To: q.To})
	if err != nil {
		return err
	}
	chosen := r.URL.Query()["pupil"]
	q.Members = make([]pages.SquadMember, len(pupils))
	compare.InParallel(len(pupils), func(i int) {
		p := pupils[i]
		m := pages.SquadMember{ID: p.ID, Name: p.Name, Target: p.Target, Chosen: len(chosen) == 0 || slices.Contains(chosen, fmt.Sprint(p.ID))}
		var rounds []compare.Summary
		for _, k := range slices.Backward(all[p.ID]) {
			rounds = append(rounds, k.Summary)
		}
		m.Lost = ladder().PartsLost(rounds, p.Target, monthsSeed)
		q.Members[i] = m
	})
	return show(w, r, status, pages.NewSquad(shell(r), q).View())
}

// looks lists for the player what coaches opened.
func (s *server) looks(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.store.Looks(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	var all []pages.Look
	for _, k := range kept {
		all = append(all, pages.Look{Name: k.Name, Page: k.Page, Times: k.Times, Last: k.LastAt})
	}
	return show(w, r, http.StatusOK, pages.NewLooks(shell(r), all).View())
}

// keptNotes lists a coach's private notes on pupils of the past.
func (s *server) keptNotes(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.store.PrivateNotes(r.Context(), me(r).ID, true)
	if err != nil {
		return err
	}
	var all []pages.KeptNote
	for _, k := range kept {
		all = append(all, pages.NewKeptNote(fmt.Sprint(k.PlayerID), fmt.Sprint(k.ID), k.Author, k.Day, k.Body))
	}
	return show(w, r, http.StatusOK, pages.NewKeptNotes(shell(r), all).View())
}

func (s *server) dropKeptNote(w http.ResponseWriter, r *http.Request) error {
	if err := s.store.RemoveNote(r.Context(), me(r).ID, formID(r, "player"), int64(formID(r, "note"))); err != nil {
		return err
	}
	return then(w, r, paths.CoachKept)
}

// reportNotes is how many notes a report may hold.
const reportNotes = 200

// report is a page to take away of a span of a player's rounds.
func (s *server) report(w http.ResponseWriter, r *http.Request) error {
	player, whose, err := s.whose(r)
	if err != nil {
		return err
	}
	if from, to := r.FormValue("from"), r.FormValue("to"); from != "" || to != "" {
		return then(w, r, whose.Report(from+".."+to))
	}
	q := pages.AskedReport{Today: golf.DateOf(time.Now()), Span: compare.Span{Last: compare.FormRounds}}
	status := http.StatusOK
	if text := r.FormValue("span"); text != "" {
		span, err := compare.ParseSpan(text)
		if err != nil {
			q.Problem, status = capitalized(err.Error())+".", http.StatusUnprocessableEntity
		} else {
			q.Span = span
		}
	}
	at := paths.Comparison{Whose: whose}.With(q.Span.String(), q.Span.String())
	if before, ok := q.Span.Earlier(); ok {
		at = at.With(before.String(), q.Span.String())
	}
	if q.Months, err = s.compared(r, player, at); err != nil {
		return err
	}
	if q.Notes, err = s.notes(r, whose, db.NotesOf{Most: reportNotes}); err != nil {
		return err
	}
	if q.Assignments, err = s.assignments(r, whose, lessonAssignments); err != nil {
		return err
	}
	return show(w, r, status, pages.NewReport(shell(r), q).View())
}
