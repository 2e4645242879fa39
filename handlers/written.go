package handlers

import (
	"net/http"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
)

// writtenFile is what is written about an account and what it has to practise,
// in the file of everything. It is there to be read: another server has not the
// accounts that wrote it, so that it is not taken in again. What a coach keeps
// private about the player is not in it; the player's own private notes about
// pupils are.
type writtenFile struct {
	Notes    []noteFile     `json:"notes,omitempty"`
	Private  []noteFile     `json:"private_notes_on_pupils,omitempty"`
	Practice []practiceFile `json:"practice,omitempty"`
}

type noteFile struct {
	By      string      `json:"by,omitempty"`
	On      string      `json:"on,omitempty"` // the pupil, of a private note
	Kind    string      `json:"kind"`
	Day     string      `json:"day"`
	Hole    int         `json:"hole,omitempty"`
	Shot    int         `json:"shot,omitempty"`
	Body    string      `json:"body"`
	Written time.Time   `json:"written"`
	Replies []replyFile `json:"replies,omitempty"`
}

type replyFile struct {
	By      string    `json:"by"`
	Body    string    `json:"body"`
	Written time.Time `json:"written"`
}

type practiceFile struct {
	What     string       `json:"what"`
	Amount   string       `json:"amount,omitempty"`
	PassMark string       `json:"pass_mark,omitempty"`
	Due      string       `json:"due"`
	Done     bool         `json:"done"`
	Results  []resultFile `json:"results,omitempty"`
}

type resultFile struct {
	Day    string `json:"day"`
	Result string `json:"result"`
	Passed bool   `json:"passed"`
}

// written reads it for who is signed in.
func (s *server) written(r *http.Request) (f writtenFile, err error) {
	who := me(r).ID
	notes, err := s.store.Notes(r.Context(), who, who, db.NotesOf{Kept: true})
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
		file := fileOfNote(n)
		file.By, file.On = "", n.Author
		f.Private = append(f.Private, file)
	}
	given, err := s.store.Assignments(r.Context(), who, who, 0)
	if err != nil {
		return f, err
	}
	for _, a := range given {
		p := practiceFile{What: a.What, Amount: a.Amount, PassMark: a.PassMark, Due: golf.DateOf(a.DueOn).String(), Done: a.DoneAt != nil}
		for _, res := range a.Results {
			p.Results = append(p.Results, resultFile{golf.DateOf(res.Day).String(), res.Result, res.Passed})
		}
		f.Practice = append(f.Practice, p)
	}
	return f, nil
}

func fileOfNote(n db.Note) noteFile {
	f := noteFile{By: n.Author, Kind: n.Kind, Day: golf.DateOf(n.Day).String(), Body: n.Body, Written: n.WrittenAt}
	if n.Hole != nil {
		f.Hole = *n.Hole
	}
	if n.Shot != nil {
		f.Shot = *n.Shot
	}
	for _, a := range n.Replies {
		f.Replies = append(f.Replies, replyFile{a.Author, a.Body, a.WrittenAt})
	}
	return f
}
