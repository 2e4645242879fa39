package handlers

import (
	"net/http"

	"strokeledger/analysis/accountfile"
	"strokeledger/analysis/golf"
	"strokeledger/db"
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
	given, err := s.store.Assignments(r.Context(), who, who, 0)
	if err != nil {
		return f, err
	}
	for _, a := range given {
		f.Practice = append(f.Practice, fileOfPractice(a))
	}
	trials, err := s.store.Trials(r.Context(), who, who)
	for _, t := range trials {
		f.RunOut = append(f.RunOut, accountfile.Trial{Day: golf.DateOf(t.Day).String(), Club: t.Club, Lie: t.Lie, Green: t.Green, Carry: t.Carry, Total: t.Total, Unit: t.Unit})
	}
	return f, err
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
