package handlers

import (
	"fmt"
	"net/http"

	"strokeledger/analysis/accountfile"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
)

// written collects the notes and practice for a player's account file. It leaves
// out what a coach keeps private about the player, and includes the player's own
// private notes about pupils.
func (s *server) written(r *http.Request) (f accountfile.Written, err error) {
	who := me(r).ID
	notes, err := s.store.Notes(r.Context(), who, who, db.NotesOf{})
	if err != nil {
		return f, err
	}
	for _, n := range notes {
		f.Notes = append(f.Notes, fileOfNote(n))
	}
	private, err := s.store.PrivateNotes(r.Context(), who, false)
	if err != nil {
		return f, err
	}
	for _, n := range private {
		f.Private = append(f.Private, fileOfPrivate(n))
	}
	if f.Practice, err = s.writtenPractice(r); err != nil {
		return f, err
	}
	if f.Lessons, err = s.writtenLessons(r); err != nil {
		return f, err
	}
	return f, s.drilled(r, &f)
}

// drilled collects the run-out book, rounds that were entered for pupils, the sessions of
// drills, and what else the player made.
func (s *server) drilled(r *http.Request, f *accountfile.Written) (err error) {
	who := me(r).ID
	if f.RunOut, err = s.writtenTrials(r); err != nil {
		return err
	}
	if f.Walked, err = s.writtenWalked(r); err != nil {
		return err
	}
	sessions, err := s.store.DrillSessions(r.Context(), who, who, "")
	if err != nil {
		return err
	}
	for _, d := range sessions {
		f.Sessions = append(f.Sessions, fileOfSession(d))
	}
	f.Own, err = madeBy(r.Context(), s.store, who)
	return err
}

func fileOfSession(d db.DrillSession) accountfile.Session {
	return accountfile.Session{Drill: d.Name, Day: golf.DateOf(d.Day).String(), Feet: d.Feet, Tries: d.Tries, Counted: d.Counted, Tried: d.Tried, Minutes: d.Minutes, Note: d.Note}
}

func fileOfPlan(p db.TakenPlan) accountfile.Plan {
	return accountfile.Plan{Day: golf.DateOf(p.Day).String(), First: golf.DateOf(p.FirstDay).String(), Last: golf.DateOf(p.LastDay).String(), Rounds: p.Rounds, Target: p.Target,
		Minutes: p.Minutes, Engine: p.Engine, Figures: p.Figures}
}

// writtenPractice is what the player was set to practise, for the same file.
func (s *server) writtenPractice(r *http.Request) (all []accountfile.Practice, err error) {
	given, err := s.store.Assignments(r.Context(), me(r).ID, me(r).ID, 0)
	for _, a := range given {
		all = append(all, fileOfPractice(a))
	}
	return all, err
}

// writtenLessons are the lessons that the player arranged, for the same file.
func (s *server) writtenLessons(r *http.Request) (all []accountfile.Lesson, err error) {
	kept, err := s.store.Lessons(r.Context(), me(r).ID, me(r).ID, golf.Date{})
	for _, l := range kept {
		all = append(all, accountfile.Lesson{With: l.Coach, Day: golf.DateOf(l.Day).String(), Time: form.TimeOf(l.Starts).Text, Place: l.Place, Aim: l.Aim, Agreed: l.Agreed})
	}
	return all, err
}

// writtenWalked are the rounds that wait for the player to accept them, for the same file.
func (s *server) writtenWalked(r *http.Request) (all []accountfile.Walked, err error) {
	kept, err := s.store.WalkedRounds(r.Context(), me(r).ID, me(r).ID)
	for _, w := range kept {
		to := accountfile.Walked{By: w.Coach, Day: golf.DateOf(w.PlayedOn).String(), Course: w.Course}
		for _, h := range w.Holes {
			if h.Line != "" {
				to.Holes = append(to.Holes, fmt.Sprintf("%d: %s", h.Number, h.Line))
			}
		}
		all = append(all, to)
	}
	return all, err
}

// writtenTrials are the balls of the player's run-out book, for the same file.
func (s *server) writtenTrials(r *http.Request) (all []accountfile.Trial, err error) {
	who := me(r).ID
	kept, err := s.store.Trials(r.Context(), who, who)
	for _, t := range kept {
		all = append(all, accountfile.Trial{Day: golf.DateOf(t.Day).String(), Club: t.Club, Lie: t.Lie, Green: t.Green, Carry: t.Carry, Total: t.Total, Unit: t.Unit})
	}
	return all, err
}

// fileOfPrivate writes a private note about a pupil, whom the store returns in place
// of the author.
func fileOfPrivate(n db.Note) accountfile.Note {
	f := fileOfNote(n)
	f.By, f.On = "", n.Author
	return f
}

func fileOfPractice(a db.Assignment) accountfile.Practice {
	p := accountfile.Practice{What: a.What, Amount: a.Amount, PassMark: a.PassMark, Due: golf.DateOf(a.DueOn).String(), Done: a.DoneAt != nil}
	for _, res := range a.Results {
		p.Results = append(p.Results, accountfile.Result{Day: golf.DateOf(res.Day).String(), Result: res.Result, Passed: res.Passed})
	}
	return p
}

func fileOfNote(n db.Note) accountfile.Note {
	f := accountfile.Note{By: n.Author, Kind: n.Kind, Day: golf.DateOf(n.Day).String(), Body: n.Body, Written: n.WrittenAt}
	if n.Hole != nil {
		f.Hole = *n.Hole
	}
	if n.Shot != nil {
		f.Shot = *n.Shot
	}
	for _, a := range n.Replies {
		f.Replies = append(f.Replies, accountfile.Reply{By: a.Author, Body: a.Body, Written: a.WrittenAt})
	}
	return f
}
