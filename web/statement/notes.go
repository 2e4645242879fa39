package statement

import (
	"fmt"

	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/notes"
	"strokeledger/web/words"
)

// NoteForm is where a note on a round is written.
type NoteForm struct {
	At      string
	Round   string
	On      []components.Choice // what it is about
	Body    components.Area
	CanHide bool
	Private bool
	Button  string
	Open    bool
	Wrong   components.Summary
}

// noteForm is the form under a statement: a coach's note, or a player's question.
func noteForm(q RoundInput) NoteForm {
	typed, on := form.Note{}, q.On
	if q.Returned.Note != nil {
		typed, on = *q.Returned.Note, q.Returned.Note.Spot.Text
	}
	f := NoteForm{At: q.Whose.Notes(), Round: fmt.Sprint(q.ID), CanHide: !q.Whose.Own, Private: typed.Private, Button: "Write it"}
	f.Body = components.FilledArea(components.Area{Name: "body", ID: "write", Label: "A note", Hint: "Lines that begin with a hyphen become a list."}, typed.Body)
	if q.Whose.Own {
		f.Body.Label, f.Button = "A question to your coach", "Ask it"
	}
	f.Wrong = components.Summed(f.Body.Field())
	f.Open = q.On != "" || q.Returned.Note != nil
	f.On = []components.Choice{{Value: "", Name: "the round", Chosen: on == ""}}
	for i, h := range q.Account.Holes {
		f.On = append(f.On, components.Choice{Value: fmt.Sprint(h.Number), Name: fmt.Sprintf("hole %d", h.Number), Chosen: on == fmt.Sprint(h.Number)})
		for k := range h.Shots {
			value := fmt.Sprintf("%d.%d", h.Number, k+1)
			shot := q.Round.Holes[i].Shots[k]
			f.On = append(f.On, components.Choice{Value: value, Name: fmt.Sprintf("hole %d, shot %d: %s, %s", h.Number, k+1, shot.Lie, words.Distance(shot.Lie, shot.Distance, q.Units)), Chosen: on == value})
		}
	}
	return f
}

// notesOn leads to what is written about a hole.
func notesOn(q RoundInput, hole int) []components.Link {
	var all []components.Link
	for _, n := range q.Notes {
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
