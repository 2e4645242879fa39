package handlers

import (
	"net/http"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// How many of a pupil's rounds, notes and assignments the lessons page shows.
const (
	lessonRounds      = 24 // the latest with shots are among them, and those shown
	lessonNotes       = 40
	lessonAssignments = 40
)

func (s *server) lessons(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	return s.showLessons(w, r, about, form.Returned{})
}

// showLessons shows the notes and the practice of a player; back is a form that
// has problems, empty for none.
func (s *server) showLessons(w http.ResponseWriter, r *http.Request, about subject, back form.Returned) error {
	if err := s.recordLook(r, about, db.LookLessons, 0); err != nil {
		return err
	}
	q := coach.LessonsInput{Whose: about.pages, Me: me(r).ID, Name: about.player.Name, Target: about.player.Target, Today: s.today(r), Boundary: golf.Yards.Of(about.player.BoundaryYd), Units: unitsOf(me(r)), Returned: back}
	if err := s.readLessons(r, &q); err != nil {
		return err
	}
	page := s.shellOf(r, about)
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	return show(w, r, statusReturned(back), coach.NewLessonsPage(page, q).View())
}

// readLessons reads what coach and pupil wrote, what there is to practise and, for
// a coach, the latest rounds.
func (s *server) readLessons(r *http.Request, q *coach.LessonsInput) (err error) {
	pages := q.Whose
	if q.Coached, err = s.coached(r, pages); err != nil {
		return err
	}
	if !pages.Own {
		if err := s.readLatest(r, q); err != nil {
			return err
		}
	}
	if q.Notes, err = s.notes(r, pages, db.NotesOf{Most: lessonNotes}); err != nil {
		return err
	}
	if q.Assignments, err = s.withSessions(r, pages, lessonAssignments); err != nil {
		return err
	}
	if err := s.readArranged(r, q); err != nil {
		return err
	}
	return s.readProposals(r, q)
}

// readProposals reads the targets that coaches propose.
func (s *server) readProposals(r *http.Request, q *coach.LessonsInput) error {
	proposals, err := s.store.Proposals(r.Context(), me(r).ID, q.Whose.Player)
	for _, p := range proposals {
		q.Proposals = append(q.Proposals, coach.Proposal(p))
	}
	return err
}

// otherPupils are the coach's pupils besides the one that a page is about, none for a
// player's own page.
func (s *server) otherPupils(r *http.Request, pages paths.Whose) ([]figures.OtherPupil, error) {
	if pages.Own {
		return nil, nil
	}
	today := s.today(r)
	pupils, err := s.store.Roster(r.Context(), me(r).ID, golf.Month(today.Year, today.Month).From)
	var others []figures.OtherPupil
	for _, p := range pupils {
		if p.ID != pages.Player {
			others = append(others, figures.OtherPupil{ID: p.ID, Name: p.Name})
		}
	}
	return others, err
}

// readLatest reads a pupil's latest rounds and when the coach was here before.
func (s *server) readLatest(r *http.Request, q *coach.LessonsInput) error {
	others, err := s.otherPupils(r, q.Whose)
	if err != nil {
		return err
	}
	q.Others = others
	before, err := s.store.VisitBefore(r.Context(), me(r).ID, q.Whose.Player)
	if err != nil {
		return err
	}
	if before != nil {
		q.Visit = s.here(r, *before)
	}
	if q.Rounds, err = s.listed(r, q.Whose, db.Chosen{Most: lessonRounds + 1}, q.Visit); err != nil {
		return err
	}
	if q.Earlier = len(q.Rounds) > lessonRounds; q.Earlier {
		q.Rounds = q.Rounds[:lessonRounds]
	}
	return nil
}

// proposeTarget proposes a target to a pupil.
func (s *server) proposeTarget(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	if about.pages.Own {
		return golf.ErrNotFound // players set their own targets on the account page
	}
	target := form.ParseTarget(r.FormValue("target"))
	if !target.Sound() {
		return s.showLessons(w, r, about, form.Returned{Target: &target})
	}
	if err := s.store.ProposeTarget(r.Context(), me(r).ID, about.player.ID, target.Value); err != nil {
		return err
	}
	s.tell(r, about.player.ID, db.Notice{Kind: db.NoticeProposed, OfID: about.player.ID, What: target.Text})
	return saved(w, r, about.pages.Lessons(), "proposed")
}

// answerTarget accepts a proposed target, or declines it.
func (s *server) answerTarget(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	if !about.pages.Own {
		return golf.ErrNotFound
	}
	accept, what, kind := r.FormValue("accept") != "", "declined", db.NoticeDeclined
	if accept {
		what, kind = "accepted", db.NoticeAccepted
	}
	if err := s.store.AnswerProposal(r.Context(), about.player.ID, formID(r, "coach"), accept); err != nil {
		return err
	}
	s.tell(r, formID(r, "coach"), db.Notice{Kind: kind, OfID: about.player.ID})
	return saved(w, r, about.pages.Lessons(), what)
}
