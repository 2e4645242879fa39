package statement

import (
	"fmt"

	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/notes"
	"strokeledger/web/words"
)

// NoteForm is where a note on a round is written: a coach's note, or a player's
// question.
type NoteForm struct {
	At      string              // address that it is sent to
	Round   string              // number of the round
	On      []components.Choice // the round, a hole or a shot that it is about
	Body    components.Area
	CanHide bool   // it may be private: a coach writes
	Private bool   // it was ticked as private in a form that came back
	Button  string // text of the button
	Open    bool   // the form is shown open: a place was chosen, or it came back
	Wrong   components.Summary
}

// notes fills in the notes on the round, and the form to write one.
func (s *RoundPage) notes(in RoundInput) {
	for _, n := range notes.QuestionsFirst(in.Notes) {
		s.Notes = append(s.Notes, notes.NewCard(n, in.Whose, true, in.Returned))
		s.NotesFirst = s.NotesFirst || n.Unread || n.Open() && !in.Whose.Own
	}
	s.NotesFirst = s.NotesFirst || in.Returned.OnNotes() || in.On != ""
	s.CanWrite, s.Write = in.Coached, noteForm(in)
}

// WriteLast reports whether the form for a note stands at the end of the page.
func (s *RoundPage) WriteLast() bool { return s.CanWrite && !s.NotesFirst }

func noteForm(in RoundInput) NoteForm {
	typed, on := form.Note{}, in.On
	if in.Returned.Note != nil {
		typed, on = *in.Returned.Note, in.Returned.Note.Spot.Text
	}
	f := NoteForm{At: in.Whose.Notes(), Round: fmt.Sprint(in.ID), CanHide: !in.Whose.Own, Private: typed.Private, Button: "Save note"}
	f.Body = components.FilledArea(components.Area{Name: "body", ID: "write", Label: "Add a note", Hint: "Lines that start with a hyphen become a list."}, typed.Body)
	if in.Whose.Own {
		f.Body.Label, f.Button = "A question for your coach", "Ask"
	}
	f.Wrong = components.Summed(f.Body.Field())
	f.Open = in.On != "" || in.Returned.Note != nil
	f.On = placesOf(in, on)
	return f
}

// placesOf lists what a note can be about: the round, each hole and each shot.
func placesOf(in RoundInput, chosen string) []components.Choice {
	all := []components.Choice{{Value: "", Name: "the round", Chosen: chosen == ""}}
	for i, h := range in.Account.Holes {
		hole := fmt.Sprint(h.Number)
		all = append(all, components.Choice{Value: hole, Name: "hole " + hole, Chosen: chosen == hole})
		for k := range h.Shots {
			value := fmt.Sprintf("%d.%d", h.Number, k+1)
			shot := in.Round.Holes[i].Shots[k]
			all = append(all, components.Choice{Value: value, Name: fmt.Sprintf("hole %d, shot %d: %s, %s", h.Number, k+1, shot.Lie, words.Distance(shot.Lie, shot.Distance, in.Units)), Chosen: chosen == value})
		}
	}
	return all
}

// notesOn links to the notes on a hole.
func notesOn(in RoundInput, hole int) []components.Link {
	var all []components.Link
	for _, n := range in.Notes {
		if n.Hole == hole {
			who := n.Author
			if n.Mine {
				who = "you"
			}
			all = append(all, components.Link{Name: fmt.Sprintf("%s on %s", who, notes.Place(n)), At: "#" + notes.ID(n.ID)})
		}
	}
	return all
}
