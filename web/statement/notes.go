package statement

import (
	"fmt"
	"strconv"
	"strings"

	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/notes"
	"strokeledger/web/words"
)

// NoteForm is where a note on a round is written: a coach's note, or a player's
// question.
type NoteForm struct {
	ID      string // of the form, which a link leads to
	Title   string // opens the form
	At      string // address that it is sent to
	Round   string // number of the round
	About   components.Field
	On      []components.Choice // the round, a hole or a shot that it is about
	Body    components.Area
	CanHide bool   // it may be private: a coach writes
	Share   string // on the button that lets others read it
	Open    bool   // the form is shown open: a place was chosen, or it came back
	Wrong   components.Summary
	Phrases []notes.PhraseKey
}

// HoleNote is a note on a hole as it stands under the hole.
type HoleNote struct {
	Who, Place string
	At         string // of the note with its replies
	Body       []notes.Paragraph
	Private    bool
}

// notes fills in the notes on the round, and the form to write one.
func (s *RoundPage) notes(in RoundInput) {
	keys := notes.PhraseKeys(in.Phrases)
	for _, n := range notes.QuestionsFirst(in.Notes) {
		s.Notes = append(s.Notes, notes.NewCard(n, in.Whose, true, in.Returned).Offer(n, keys))
		s.NotesFirst = s.NotesFirst || n.Unread || n.Open() && !in.Whose.Own
	}
	s.NotesFirst = s.NotesFirst || in.Returned.OnNotes() && in.writesOn() == 0
	s.CanWrite, s.Write = in.Coached, newNoteForm(in, "write")
	s.Write.Phrases = keys
	s.Write.Open, s.Write.On = in.Returned.Note != nil && in.writesOn() == 0, placesOf(in, "")
}

// WriteLast reports whether the form for a note stands at the end of the page.
func (s *RoundPage) WriteLast() bool { return s.CanWrite && !s.NotesFirst }

// spot is the place that a note is to be about, as the address or the form that came
// back has it: 4.2, 4, or nothing for the round.
func (in RoundInput) spot() string {
	if in.Returned.Note != nil {
		return in.Returned.Note.Spot.Text
	}
	return in.On
}

// writesOn is the hole of that place; 0 for none.
func (in RoundInput) writesOn() int {
	hole, _, _ := strings.Cut(in.spot(), ".")
	n, _ := strconv.Atoi(hole)
	return n
}

// newNoteForm makes a form for a note, as it came back or empty; id is its place on
// the page.
func newNoteForm(in RoundInput, id string) NoteForm {
	f := NoteForm{ID: id, Title: "Add a note", At: in.Whose.Notes(), Round: fmt.Sprint(in.ID), CanHide: !in.Whose.Own, Share: notes.ShareWith(in.Of, in.Whose.Own),
		About: components.Field{Name: "on", ID: id + "-about", Label: "About"}}
	typed := form.Note{}
	if in.Returned.Note != nil && (id == "write") == (in.writesOn() == 0) {
		typed = *in.Returned.Note
	}
	f.Body = components.FilledArea(components.Area{Name: "body", ID: id + "-body", Label: "Note", Hint: "Lines that start with a hyphen become a list."}, typed.Body)
	if in.Whose.Own {
		f.Title, f.Body.Label, f.Share = "A question for your coach", "Your question", "Ask"
	}
	f.Wrong = components.Summed(f.Body.Field())
	return f
}

// newHoleForm makes the form that stands under a hole. Unless a shot was chosen, it
// is about the one at which a double began.
func newHoleForm(in RoundInput, i int, began int) *NoteForm {
	number := in.Account.Holes[i].Number
	here := in.writesOn() == number
	blank := in
	if !here {
		blank.Returned, blank.On = form.Returned{}, ""
	}
	f := newNoteForm(blank, fmt.Sprintf("write-%d", number))
	f.Open, f.Title = here, fmt.Sprintf("Write about hole %d", number)
	if in.Whose.Own {
		f.Title = fmt.Sprintf("Ask about hole %d", number)
	}
	chosen := strconv.Itoa(number)
	if began > 0 {
		chosen = fmt.Sprintf("%d.%d", number, began)
	}
	if here {
		chosen, f.Phrases = in.spot(), notes.PhraseKeys(in.Phrases)
	}
	f.On = placesOnHole(in, i, chosen)
	return &f
}

// placesOf lists what a note can be about: the round, each hole and each shot.
func placesOf(in RoundInput, chosen string) []components.Choice {
	all := []components.Choice{{Value: "", Name: "the round", Chosen: chosen == ""}}
	for i := range in.Account.Holes {
		all = append(all, placesOnHole(in, i, chosen)...)
	}
	return all
}

// placesOnHole lists the i-th hole entered and each of its shots.
func placesOnHole(in RoundInput, i int, chosen string) []components.Choice {
	h := in.Account.Holes[i]
	hole := fmt.Sprint(h.Number)
	all := []components.Choice{{Value: hole, Name: "hole " + hole, Chosen: chosen == hole}}
	for k := range h.Shots {
		value, shot := fmt.Sprintf("%d.%d", h.Number, k+1), in.Round.Holes[i].Shots[k]
		all = append(all, components.Choice{Value: value, Name: fmt.Sprintf("hole %d, shot %d: %s, %s", h.Number, k+1, shot.Lie, words.Distance(shot.Lie, shot.Distance, in.Units)), Chosen: chosen == value})
	}
	return all
}

// notesOn are the notes on a hole.
func notesOn(in RoundInput, hole int) []HoleNote {
	var all []HoleNote
	for _, n := range in.Notes {
		if n.Hole == hole {
			who := n.Author
			if n.Mine {
				who = "You"
			}
			all = append(all, HoleNote{Who: who, Place: notes.Place(n), At: "#" + notes.ID(n.ID), Body: notes.Paragraphs(n.Body), Private: n.Private})
		}
	}
	return all
}
