package handlers

import (
	"net/http"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// How much of a pupil's is shown on the page of lessons.
const (
	lessonRounds      = 12
	lessonNotes       = 40
	lessonAssignments = 40
)

func (s *server) lessons(w http.ResponseWriter, r *http.Request) error {
	player, whose, err := s.whose(r)
	if err != nil {
		return err
	}
	return s.showLessons(w, r, http.StatusOK, player, whose, form.Returned{})
}

func (s *server) showLessons(w http.ResponseWriter, r *http.Request, status int, player db.Player, whose paths.Whose, back form.Returned) error {
	if err := s.looked(r, whose, db.LookLessons, 0); err != nil {
		return err
	}
	q := coach.LessonsInput{Whose: whose, Me: me(r).ID, Name: player.Name, Target: player.Target, Today: now(), Returned: back}
	if err := s.readLessons(r, &q); err != nil {
		return err
	}
	page := shell(r)
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	return show(w, r, status, coach.NewLessonsPage(page, q).View())
}

// readLessons reads what coach and pupil wrote, with what is to be practised and
// for a coach the latest rounds.
func (s *server) readLessons(r *http.Request, q *coach.LessonsInput) (err error) {
	whose := q.Whose
	if q.Coached, err = s.coached(r, whose); err != nil {
		return err
	}
	if !whose.Own {
		if err := s.readLatest(r, q); err != nil {
			return err
		}
	}
	if q.Notes, err = s.notes(r, whose, db.NotesOf{Most: lessonNotes}); err != nil {
		return err
	}
	if q.Assignments, err = s.assignments(r, whose, lessonAssignments); err != nil {
		return err
	}
	proposals, err := s.store.Proposals(r.Context(), me(r).ID, whose.Player)
	if err != nil {
		return err
	}
	for _, p := range proposals {
		q.Proposals = append(q.Proposals, coach.Proposal(p))
	}
	return nil
}

// readLatest reads a pupil's latest rounds and when the coach was here before.
func (s *server) readLatest(r *http.Request, q *coach.LessonsInput) error {
	before, err := s.store.VisitBefore(r.Context(), me(r).ID, q.Whose.Player)
	if err != nil {
		return err
	}
	if before != nil {
		q.Visit = *before
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
	player, whose, err := s.whose(r)
	if err != nil {
		return err
	}
	if whose.Own {
		return golf.ErrNotFound // one's own target is set on the account's page
	}
	target := form.ParseTarget(r.FormValue("target"))
	if !target.Sound() {
		return s.showLessons(w, r, http.StatusUnprocessableEntity, player, whose, form.Returned{Target: &target})
	}
	if err := s.store.ProposeTarget(r.Context(), me(r).ID, whose.Player, target.Value); err != nil {
		return err
	}
	return saved(w, r, whose.Lessons(), "proposed")
}

// answerTarget takes a proposed target, or declines it.
func (s *server) answerTarget(w http.ResponseWriter, r *http.Request) error {
	_, whose, err := s.whose(r)
	if err != nil {
		return err
	}
	if !whose.Own {
		return golf.ErrNotFound
	}
	accept, what := r.FormValue("accept") != "", "declined"
	if accept {
		what = "accepted"
	}
	if err := s.store.AnswerProposal(r.Context(), whose.Player, formID(r, "coach"), accept); err != nil {
		return err
	}
	return saved(w, r, whose.Lessons(), what)
}

// now is the day of the server's clock.
func now() golf.Date { return golf.DateOf(time.Now()) }
