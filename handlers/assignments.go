package handlers

import (
	"cmp"
	"errors"
	"fmt"
	"net/http"
	"slices"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/practice"
)

// assignments reads what a player has to practise, for the reader.
func (s *server) assignments(r *http.Request, pages paths.Whose, most int) ([]coach.Assignment, error) {
	given, err := s.store.Assignments(r.Context(), me(r).ID, pages.Player, most)
	all := make([]coach.Assignment, len(given))
	for i, a := range given {
		all[i] = s.assignmentOf(r, a)
	}
	return all, err
}

// withSessions reads what there is to practise, each with the sessions of its drill
// since it was set.
func (s *server) withSessions(r *http.Request, pages paths.Whose, most int) ([]coach.Assignment, error) {
	all, err := s.assignments(r, pages, most)
	if err != nil || !slices.ContainsFunc(all, func(a coach.Assignment) bool { return a.Drill != "" }) {
		return all, err
	}
	seen, err := s.store.Seen(r.Context(), me(r).ID, pages.Player)
	if err != nil {
		return nil, err
	}
	told, err := s.told(r, subject{player: seen.Player, pages: pages})
	addSessions(all, told)
	return all, err
}

// addSessions adds the sessions of their drills to assignments.
func addSessions(all []coach.Assignment, told map[string]analysis.DrillFor) {
	for i, a := range all {
		all[i].Sessions = drillSessions(told[a.Drill], a.Given, a.Feet)
	}
}

// unassigned are the drills that the player did without being set them, by name.
func unassigned(all []coach.Assignment, told map[string]analysis.DrillFor) []coach.DrillDone {
	var drills []coach.DrillDone
	for key, d := range told {
		if slices.ContainsFunc(all, func(a coach.Assignment) bool { return a.Drill == key }) {
			continue
		}
		drills = append(drills, coach.DrillDone{Name: d.Name, Sessions: drillSessions(d, golf.Date{}, 0)})
	}
	slices.SortFunc(drills, func(x, y coach.DrillDone) int { return cmp.Compare(x.Name, y.Name) })
	return drills
}

func drillSessions(d analysis.DrillFor, since golf.Date, feet float64) []coach.DrillSession {
	var all []coach.DrillSession
	for _, done := range practice.SessionsSince(d, since, feet) {
		all = append(all, coach.DrillSession(done))
	}
	return all
}

func (s *server) assignmentOf(r *http.Request, a db.Assignment) coach.Assignment {
	to := coach.Assignment{ID: a.ID, What: a.What, Amount: a.Amount, PassMark: a.PassMark, Figure: a.Figure, Given: golf.DateOf(s.here(r, a.GivenAt)), Due: golf.DateOf(a.DueOn), Done: a.DoneAt != nil, Drill: drillKey(a), Feet: a.Feet, SetUp: a.SetUp}
	if a.Author != nil {
		to.By, to.Mine = *a.Author, a.AuthorID != nil && *a.AuthorID == me(r).ID
	}
	for _, res := range a.Results {
		to.Results = append(to.Results, coach.AssignmentResult{ID: res.ID, Day: golf.DateOf(res.Day), Result: res.Result, Passed: res.Passed})
	}
	return to
}

// drillKey is the key of an assignment's drill: one of the table, or one of its
// author's own; empty for none.
func drillKey(a db.Assignment) string {
	if a.Drill == "" && (a.SetUp != "" || a.Tries > 0) {
		return fmt.Sprintf("%s%d", analysis.OwnKey, a.ID)
	}
	return a.Drill
}

func (s *server) assign(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	f := form.ParseAssignment(r.Form, s.todayOf(about.player))
	if !f.Sound() {
		return s.showLessons(w, r, about, form.Returned{Assignment: &f})
	}
	whom := append([]golf.PlayerID{about.player.ID}, f.Also...)
	if about.pages.Own {
		whom = whom[:1]
	}
	if err := s.assignAll(r, f, whom); err != nil {
		return err
	}
	if round := formID(r, "round"); round != 0 { // the coach looks at a round
		return saved(w, r, about.pages.Round(golf.RoundID(round))+"#afterwards", "practice")
	}
	return saved(w, r, about.pages.Lessons()+"#practice", "practice")
}

// assignAll sets the same practice for several players, for all of them or none, each
// with the mark of the own target, and tells each of it.
func (s *server) assignAll(r *http.Request, f form.Assignment, whom []golf.PlayerID) error {
	set := map[golf.PlayerID]string{}
	err := s.store.Tx(r.Context(), func(tx *db.Store) error {
		for _, who := range whom {
			if _, twice := set[who]; twice {
				continue
			}
			to := db.Assignment{What: f.What.Value, Amount: f.Amount.Value, PassMark: f.PassMark.Value, Figure: f.Figure.Value, DueOn: f.Due.Value.Time(), Drill: f.Drill.Value, SetUp: f.SetUp.Value, Tries: f.Tries.Value, Mark: f.Mark.Value}
			if err := s.fromTable(r, who, &to); err != nil {
				return err
			}
			if err := tx.Assign(r.Context(), me(r).ID, who, to); err != nil {
				return err
			}
			set[who] = to.What
		}
		return nil
	})
	for who, what := range set {
		if err == nil {
			s.tell(r, who, db.Notice{Kind: db.NoticePractice, OfID: who, What: what})
		}
	}
	return err
}

// fromTable fills in a drill from the table for a player: what it is called, and its
// mark when none was written. Other practice stays as it is.
func (s *server) fromTable(r *http.Request, who golf.PlayerID, to *db.Assignment) error {
	if to.Drill == "" {
		return nil
	}
	seen, err := s.store.Seen(r.Context(), me(r).ID, who)
	if err != nil {
		return err
	}
	history, err := s.store.History(r.Context(), me(r).ID, who)
	if err != nil {
		return err
	}
	d, err := s.engine.Drill(to.Drill, analysis.DrillInput{PlanInput: analysis.PlanInput{History: history, Target: seen.Target, Minutes: seen.Minutes}, Today: s.today(r)})
	if errors.Is(err, analysis.ErrNoDrill) {
		return golf.ErrNotFound
	}
	item := practice.ItemOf(d)
	to.What, to.PassMark, to.Feet = cmp.Or(to.What, item.What), cmp.Or(to.PassMark, item.Mark), item.Feet
	to.SetUp, to.Tries, to.Mark = "", 0, 0
	return err
}

// ofAssignment reads the player and the number of the assignment from the address.
func (s *server) ofAssignment(r *http.Request) (about subject, assignment int64, err error) {
	if about, err = s.subject(r); err == nil {
		assignment, err = id(r, "assignment")
	}
	return about, assignment, err
}

// ownAssignment does the same, and refuses everybody but the player.
func (s *server) ownAssignment(r *http.Request) (about subject, assignment int64, err error) {
	if about, assignment, err = s.ofAssignment(r); err == nil && !about.pages.Own {
		err = golf.ErrNotFound
	}
	return about, assignment, err
}

func (s *server) recordResult(w http.ResponseWriter, r *http.Request) error {
	about, assignment, err := s.ownAssignment(r)
	if err != nil {
		return err
	}
	f := form.ParseResult(r.Form)
	if !f.Sound() {
		return s.showLessons(w, r, about, form.Returned{Of: assignment, Result: &f})
	}
	if err := s.store.RecordResult(r.Context(), about.player.ID, assignment, db.Result{Day: f.Day.Value.Time(), Result: f.Result.Value, Passed: f.Passed}); err != nil {
		return err
	}
	s.tellOfPractice(r, about, s.ofPractice(r, about, assignment), f.Day.Value.Time(), db.Notice{Kind: db.NoticeRecorded, PracticeID: &assignment, What: f.Result.Value})
	return saved(w, r, about.pages.Lessons()+"#practice", "result")
}

func (s *server) removeResult(w http.ResponseWriter, r *http.Request) error {
	about, _, err := s.ownAssignment(r)
	if err != nil {
		return err
	}
	result, err := id(r, "result")
	if err != nil {
		return err
	}
	if err := s.store.RemoveResult(r.Context(), about.player.ID, result); err != nil {
		return err
	}
	return redirectAfterRemoval(w, r, about.pages.Lessons(), removal{db.RemovedResult, about.player.ID, result})
}

func (s *server) tickOff(w http.ResponseWriter, r *http.Request) error {
	about, assignment, err := s.ownAssignment(r)
	if err != nil {
		return err
	}
	done, what := r.FormValue("done") != "", "undone"
	if done {
		what = "done"
	}
	if err := s.store.TickOff(r.Context(), about.player.ID, assignment, done); err != nil {
		return err
	}
	return saved(w, r, about.pages.Lessons()+"#practice", what)
}

func (s *server) removeAssignment(w http.ResponseWriter, r *http.Request) error {
	about, assignment, err := s.ofAssignment(r)
	if err != nil {
		return err
	}
	gone := s.ofPractice(r, about, assignment)
	if err := s.store.RemoveAssignment(r.Context(), me(r).ID, about.player.ID, assignment); err != nil {
		return err
	}
	s.tellOfPractice(r, about, gone, gone.DueOn, db.Notice{Kind: db.NoticeRemoved})
	return redirectAfterRemoval(w, r, about.pages.Lessons(), removal{db.RemovedAssignment, about.player.ID, assignment})
}
