package form

// Returned is the one form of a page with several that came back, because
// something in it is not allowed. All are nil when none came back.
type Returned struct {
	Of         int64       // the note or the assignment that it belongs to, 0 for none
	Note       *Note       // on a round
	Lesson     *Note       // on a lesson
	Inserted   bool        // nothing is wrong with it: a phrase was put in
	Arranged   *Lesson     // a lesson to come; Of is the lesson that it changes, 0 for a new one
	Reply      *Note       // to a note
	Edit       *Note       // a note as its writer changed it
	Assignment *Assignment // something to practise
	Result     *Result     // of a practice
	Target     *Number     // that a coach proposes
	Groups     *Groups     // of a coach's pupil
	Card       *RoundCard  // conditions, and the scores of the nines
}

// OnNotes reports whether the form is that of a note.
func (r Returned) OnNotes() bool {
	return r.Note != nil || r.Lesson != nil || r.Reply != nil || r.Edit != nil
}

// ReplyTo is the reply to a note as it came back, or an empty one.
func (r Returned) ReplyTo(note int64) Note { return ofNote(r.Reply, r.Of, note, Note{}) }

// EditOf is a note as its edited form came back, or as it is kept.
func (r Returned) EditOf(note int64, body string) Note {
	return ofNote(r.Edit, r.Of, note, Note{Body: TextOf(body)})
}

func ofNote(returned *Note, of, note int64, otherwise Note) Note {
	if returned == nil || of != note {
		return otherwise
	}
	return *returned
}

// ResultOf is the result of an assignment as it came back, or an empty one of the
// given day.
func (r Returned) ResultOf(assignment int64, day Day) Result {
	if r.Result == nil || r.Of != assignment {
		return Result{Day: day}
	}
	return *r.Result
}
