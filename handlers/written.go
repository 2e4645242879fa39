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
	for _, collect := range []func(*http.Request, *accountfile.Written) error{s.writtenPractice, s.writtenLessons, s.writtenTrials, s.writtenWalked, s.writtenPhrases, s.writtenOfHoles, s.drilled} {
		if err := collect(r, &f); err != nil {
			return f, err
		}
	}
	return f, nil
}

// writtenPhrases are the sentences that the account writes as a coach.
func (s *server) writtenPhrases(r *http.Request, f *accountfile.Written) error {
	kept, err := s.store.Phrases(r.Context(), me(r).ID)
	for _, p := range kept {
		f.Phrases = append(f.Phrases, p.Body)
	}
	return err
}

// writtenOfHoles is what coaches say of holes for the player.
func (s *server) writtenOfHoles(r *http.Request, f *accountfile.Written) error {
	kept, err := s.store.AllAdvice(r.Context(), me(r).ID)
	for _, a := range kept {
		f.Holes = append(f.Holes, accountfile.HoleNote{By: a.Coach, Course: a.Course, Tee: a.Tee, Hole: a.Hole, Note: a.Note, Proposes: a.Proposes, Club: a.Club, Side: a.SideYd, Long: a.LongYd, Safe: a.Safe,
			Answer: string(a.Answer), Written: a.WrittenAt})
	}
	return err
}

// drilled collects the sessions of drills, and what else the player made.
func (s *server) drilled(r *http.Request, f *accountfile.Written) error {
	who := me(r).ID
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
func (s *server) writtenPractice(r *http.Request, f *accountfile.Written) error {
	given, err := s.store.Assignments(r.Context(), me(r).ID, me(r).ID, 0)
	for _, a := range given {
		f.Practice = append(f.Practice, fileOfPractice(a))
	}
	return err
}

// writtenLessons are the lessons that the player arranged, for the same file.
func (s *server) writtenLessons(r *http.Request, f *accountfile.Written) error {
	kept, err := s.store.Lessons(r.Context(), me(r).ID, me(r).ID, golf.Date{})
	for _, l := range kept {
		f.Lessons = append(f.Lessons, accountfile.Lesson{With: l.Coach, Day: golf.DateOf(l.Day).String(), Time: form.TimeOf(l.Starts).Text, Place: l.Place, Aim: l.Aim, Agreed: l.Agreed})
	}
	return err
}

// writtenWalked are the rounds that wait for the player to accept them, for the same file.
func (s *server) writtenWalked(r *http.Request, f *accountfile.Written) error {
	kept, err := s.store.WalkedRounds(r.Context(), me(r).ID, me(r).ID)
	for _, w := range kept {
		to := accountfile.Walked{By: w.Coach, Day: golf.DateOf(w.PlayedOn).String(), Course: w.Course}
		for _, h := range w.Holes {
			if h.Line != "" {
				to.Holes = append(to.Holes, fmt.Sprintf("%d: %s", h.Number, h.Line))
			}
		}
		f.Walked = append(f.Walked, to)
	}
	return err
}

// writtenTrials are the balls of the player's run-out book, for the same file.
func (s *server) writtenTrials(r *http.Request, f *accountfile.Written) error {
	who := me(r).ID
	kept, err := s.store.Trials(r.Context(), who, who)
	for _, t := range kept {
		f.RunOut = append(f.RunOut, accountfile.Trial{Day: golf.DateOf(t.Day).String(), Club: t.Club, Lie: t.Lie, Green: t.Green, Carry: t.Carry, Total: t.Total, Unit: t.Unit})
	}
	return err
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
