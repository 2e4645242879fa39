package notes

import (
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// ReplyForm is the form that replies to a note.
type ReplyForm struct {
	At    string             // where it is sent; empty for a private note, which has no such form
	Title string             // opens the form and is on its button
	Body  components.Area    // what is written
	Open  bool               // shown opened, since something in it was wrong, or a phrase was put in
	Wrong components.Summary // what was wrong; empty when nothing

	Phrases []PhraseKey // a coach's, where the last word is another's
}

// EditForm holds the forms with which the writer of a note edits or removes it.
type EditForm struct {
	At       string             // where the edited note is sent; empty for others' notes, which have no such form
	Keep     string             // the words of a coach's note, to keep as a phrase; empty to the player
	Version  string             // of the note as the form has it
	RemoveAt string             // where the form that removes it is sent
	Body     components.Area    // the note as it is, or as it was changed
	Share    string             // on the button that saves it for who may read it
	CanHide  bool               // it may be made private: the writer is a coach and nobody has replied
	Open     bool               // shown opened, since something in it was wrong
	Wrong    components.Summary // what was wrong; empty when nothing
}

// newReplyForm makes the form that replies to a note, as it came back or empty.
func newReplyForm(n Note, whose paths.Whose, back form.Returned) ReplyForm {
	typed := back.ReplyTo(n.ID)
	f := ReplyForm{At: whose.Reply(n.ID), Title: "Reply", Open: !typed.Sound() || back.Reply != nil && back.Of == n.ID}
	if n.Mine {
		f.Title = "Add to it"
	}
	f.Body = components.FilledArea(components.Area{Name: "body", ID: "reply-" + ID(n.ID), Label: f.Title}, typed.Body)
	f.Wrong = components.Summed(f.Body.Field())
	return f
}

// newEditForm makes the forms of a note for its writer, as they came back or with
// the note as it is.
func newEditForm(n Note, whose paths.Whose, back form.Returned) EditForm {
	typed := back.EditOf(n.ID, n.Body)
	f := EditForm{At: whose.Note(n.ID), Version: n.Version, RemoveAt: whose.RemoveNote(n.ID), CanHide: !whose.Own && len(n.Replies) == 0, Open: !typed.Sound(), Share: "Save"}
	if !whose.Own {
		f.Keep = n.Body
	}
	if f.CanHide {
		f.Share = "Save, shared"
	}
	f.Body = components.FilledArea(components.Area{Name: "body", ID: "edit-" + ID(n.ID), Label: "Edit the note"}, typed.Body)
	f.Wrong = components.Summed(f.Body.Field())
	return f
}

// ShareWith is on the button that lets others read what is written: the pupil of a
// name, or the coaches of a player who writes.
func ShareWith(name string, own bool) string {
	if own {
		return "Save"
	}
	return "Share with " + name
}
