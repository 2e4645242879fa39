package notes

import (
	"errors"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

var (
	played  = golf.Date{Year: 2026, Month: time.May, Day: 2}
	written = time.Date(2026, 5, 3, 14, 30, 0, 0, time.UTC)
	own     = paths.Whose{Player: 7, Own: true}
	pupil   = paths.Whose{Player: 7}
)

// replyTo is the form that replies to note 3.
func replyTo(title string) ReplyForm {
	return ReplyForm{At: "/players/7/notes/3/replies", Title: title, Body: components.Area{Name: "body", ID: "reply-note-3", Label: title}}
}

// editOf is the form that edits note 3.
func editOf(body string, canHide bool) EditForm {
	share := "Save"
	if canHide {
		share = "Save, shared"
	}
	return EditForm{Share: share, At: "/players/7/notes/3", RemoveAt: "/players/7/notes/3/remove", CanHide: canHide, Body: components.Area{Name: "body", ID: "edit-note-3", Label: "Edit the note", Value: body}}
}

func TestCard(t *testing.T) {
	const when = "3 May 2026, 14:30 UTC"
	body := []Paragraph{{Lines: []string{"Aim left."}}}
	for name, c := range map[string]struct {
		note  Note
		whose paths.Whose
		want  Card
	}{
		"a lesson, to the player": {Note{ID: 3, Author: "Ines", Lesson: true, Unread: true, Day: played, Body: "Aim left.", Written: written}, own,
			Card{ID: "note-3", Who: "Ines", What: "lesson of 2 May 2026", When: when, New: true, Body: body, Reply: replyTo("Reply")}},
		"a coach's own note, not read": {Note{ID: 3, Author: "Ines", Mine: true, Body: "Aim left.", Written: written}, pupil,
			Card{ID: "note-3", Who: "You", When: when, Body: body, Read: "not read yet", Reply: replyTo("Add to it"), Edit: editOf("Aim left.", true)}},
		"a coach's own note, edited, read, with replies": {Note{ID: 3, Author: "Ines", Mine: true, Body: "Aim left.", Written: written, Edited: true, Read: written.Add(time.Hour),
			Replies: []Reply{{ID: 5, Author: "Bea", Body: "Why?", Written: written}, {ID: 6, Author: "Ines", Mine: true, Body: "Aim left.", Written: written}}}, pupil,
			Card{ID: "note-3", Who: "You", When: when + ", edited", Body: body, Read: "read 3 May 2026, 15:30 UTC", Reply: replyTo("Add to it"), Edit: editOf("Aim left.", false),
				Replies: []ReplyLine{{Who: "Bea", When: when, Body: []Paragraph{{Lines: []string{"Why?"}}}}, {Who: "You", When: when, Body: body, Remove: "/players/7/notes/3/replies/6/remove"}}}},
		"a coach's private note": {Note{ID: 3, Author: "Ines", Mine: true, Private: true, Body: "Aim left.", Written: written}, pupil,
			Card{ID: "note-3", Who: "You", When: when, Private: true, Body: body, Edit: editOf("Aim left.", true)}},
		"the player's own question": {Note{ID: 3, Author: "Bea", Mine: true, Question: true, Body: "Aim left.", Written: written}, own,
			Card{ID: "note-3", Who: "You", What: "question, not answered yet", When: when, Body: body, Read: "not read yet", Reply: replyTo("Add to it"), Edit: editOf("Aim left.", false)}},
		"a question that was answered": {Note{ID: 3, Author: "Bea", Question: true, Answered: true, Written: written}, pupil,
			Card{ID: "note-3", Who: "Bea", What: "question", When: when, Reply: replyTo("Reply")}},
	} {
		if c.want.Edit.At != "" && !c.whose.Own { // a coach may keep it as a phrase
			c.want.Edit.Keep = c.note.Body
		}
		if diff := cmp.Diff(c.want, NewCard(c.note, c.whose, false, form.Returned{})); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

func TestPlaceOfANote(t *testing.T) {
	for _, c := range []struct {
		note     Note
		here     bool
		text, at string
	}{
		{Note{Lesson: true, Day: played}, false, "", ""},
		{Note{Round: 9, Day: played}, false, "the round of 2 May 2026", "/players/7/rounds/9"},
		{Note{Round: 9, Day: played, Hole: 4}, false, "hole 4, round of 2 May 2026", "/players/7/rounds/9#h4"},
		{Note{Round: 9, Day: played, Hole: 4, Shot: 2}, false, "hole 4, shot 2, round of 2 May 2026", "/players/7/rounds/9" + paths.Shot(4, 2)},
		{Note{Round: 9, Day: played}, true, "the round", ""},
		{Note{Round: 9, Day: played, Hole: 4}, true, "hole 4", "/players/7/rounds/9#h4"},
	} {
		if got := NewCard(c.note, pupil, c.here, form.Returned{}); got.Place != c.text || got.PlaceAt != c.at {
			t.Errorf("%q at %q, want %q at %q", got.Place, got.PlaceAt, c.text, c.at)
		}
	}
}

// A form that came back is opened with what was typed, on its own note only.
func TestRefusedForms(t *testing.T) {
	mine := Note{ID: 3, Mine: true, Body: "Aim left."}
	long := &form.Note{Body: form.Text{Text: "too long", Problem: "Allowed: 1 to 4000 characters."}}
	if c := NewCard(mine, pupil, false, form.Returned{Of: 3, Reply: long}); !c.Reply.Open || c.Reply.Body.Value != "too long" || c.Reply.Body.Problem != "Allowed: 1 to 4000 characters." || c.Reply.Wrong.Heading == "" || c.Edit.Open || c.Edit.Body.Value != "Aim left." {
		t.Errorf("%+v", c)
	}
	edited := form.Returned{Of: 3, Edit: long}
	if c := NewCard(mine, pupil, false, edited); !c.Edit.Open || c.Edit.Body.Value != "too long" || c.Edit.Wrong.Heading == "" || c.Reply.Open || c.Reply.Body.Value != "" {
		t.Errorf("%+v", c)
	}
	if c := NewCard(Note{ID: 4, Mine: true, Body: "Grip."}, pupil, false, edited); c.Edit.Open || c.Edit.Body.Value != "Grip." {
		t.Errorf("%+v", c)
	}
}

// What is on the page of a note depends on who reads it: a card without a reply
// form or an edit form shows neither, nor the word private.
func TestCardAsPage(t *testing.T) {
	for _, c := range []struct {
		name  string
		note  Note
		whose paths.Whose
		has   []string
		lacks []string
	}{
		{"another's note", Note{ID: 3, Author: "Ines <b>", Body: "Aim left.\n- feet\n- shoulders"}, own,
			[]string{`id="note-3"`, "<bdi>Ines &lt;b&gt;</bdi>", "Aim left.</p>", "<li>feet</li>", `action="/players/7/notes/3/replies"`}, []string{"Edit or remove", "private", "new</em>"}},
		{"the reader's private note", Note{ID: 3, Mine: true, Private: true, Body: "Aim left."}, pupil,
			[]string{"private: only you can read it", `name="private" value="yes">Keep to myself`, "Remove this note"}, []string{"/replies"}},
		{"a player's note cannot be private", Note{ID: 3, Mine: true, Body: "Aim left."}, own,
			[]string{"Edit or remove", "not read yet"}, []string{`name="private"`}},
		{"a reply is removed by its writer", Note{ID: 3, Replies: []Reply{{ID: 5, Mine: true, Body: "Yes."}, {ID: 6, Author: "Ines", Body: "Good."}}}, own,
			[]string{`action="/players/7/notes/3/replies/5/remove"`, "Good.</p>"}, []string{"replies/6/remove"}},
	} {
		var page, printed strings.Builder
		card := NewCard(c.note, c.whose, false, form.Returned{})
		if err := errors.Join(card.View().Render(t.Context(), &page), card.Plain().Render(t.Context(), &printed)); err != nil {
			t.Fatal(err)
		}
		for _, want := range c.has {
			if !strings.Contains(page.String(), want) {
				t.Errorf("%s: %q is not in %s", c.name, want, &page)
			}
		}
		for _, other := range c.lacks {
			if strings.Contains(page.String(), other) {
				t.Errorf("%s: %q is in %s", c.name, other, &page)
			}
		}
		if strings.Contains(printed.String(), "<form") {
			t.Errorf("%s: paper has no forms: %s", c.name, &printed)
		}
	}
}

func TestQuestionsFirst(t *testing.T) {
	all := []Note{{ID: 1}, {ID: 2, Question: true, Answered: true}, {ID: 3, Question: true}, {ID: 4}, {ID: 5, Question: true}}
	var got []int64
	for _, n := range QuestionsFirst(all) {
		got = append(got, n.ID)
	}
	if diff := cmp.Diff([]int64{3, 5, 1, 2, 4}, got); diff != "" || all[0].ID != 1 {
		t.Error(diff)
	}
}

// Text keeps its lines, lists and paragraphs.
func TestParagraphs(t *testing.T) {
	want := []Paragraph{{Lines: []string{"Two things:"}}, {List: true, Lines: []string{"one", "two"}}, {Lines: []string{"And a", "third."}}, {Lines: []string{"-"}}}
	if diff := cmp.Diff(want, Paragraphs("Two things:\n- one\n- two\n\nAnd a\n third.\n\n\n - ")); diff != "" {
		t.Error(diff)
	}
	if got := Paragraphs(" \n"); got != nil {
		t.Errorf("%+v", got)
	}
}

func TestPrintedLines(t *testing.T) {
	reply := Reply{Body: "x"}
	for _, c := range []struct {
		note Note
		want int
	}{
		{Note{}, 2}, {Note{Body: "x"}, 3}, {Note{Body: strings.Repeat("é", 9)}, 3}, {Note{Body: strings.Repeat("x", 10)}, 4},
		{Note{Body: "a\nb\n\nc"}, 5}, {Note{Body: "x", Replies: []Reply{reply, reply}}, 7},
	} {
		if got := NewCard(c.note, pupil, false, form.Returned{}).Lines(10); got != c.want {
			t.Errorf("%q takes %d lines, want %d", c.note.Body, got, c.want)
		}
	}
}

// Only what begins with https:// and names a host is a link, without the punctuation
// of its sentence and without what is made to look like another host.
func TestLinksInNotes(t *testing.T) {
	for text, want := range map[string][]Piece{
		"":                                       nil,
		"plain":                                  {{Text: "plain"}},
		"see https://harrowfen.example/a?b=1#c.": {{Text: "see "}, {"https://harrowfen.example/a?b=1#c", "https://harrowfen.example/a?b=1#c"}, {Text: "."}},
		"(https://a.example) https://b.example":  {{Text: "("}, {"https://a.example", "https://a.example"}, {Text: ") "}, {"https://b.example", "https://b.example"}},
		"http://a.example javascript:alert(1)":   {{Text: "http://a.example javascript:alert(1)"}},
		"https:// https://bank@evil.example":     {{Text: "https"}, {Text: ":// "}, {Text: "https://bank@evil.example"}},
	} {
		got := Pieces(text)
		joined, plain := "", ""
		for _, p := range got {
			joined += p.Text
		}
		for _, p := range want {
			plain += p.Text
		}
		if joined != text || plain != text {
			t.Errorf("%q is shown as %q", text, joined)
		}
		if text[:min(8, len(text))] != "https://" {
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("%q: %s", text, diff)
			}
			continue
		}
		for _, p := range got {
			if p.At != "" {
				t.Errorf("%q has the link %q", text, p.At)
			}
		}
	}
}
