package handlers

import (
	"errors"
	"fmt"
	"net/http"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/practice"
)

// takePlan keeps the plan of today as it is, and adds its drills to the practice. The
// same plan taken twice on a day is kept once.
func (s *server) takePlan(w http.ResponseWriter, r *http.Request) error {
	about, in, err := s.planInput(r)
	if err != nil {
		return err
	}
	plan, err := s.engine.Plan(in)
	if err != nil {
		return err
	}
	if !about.pages.Own || len(plan.Candidates) == 0 || plan.Thin.Any() {
		return golf.ErrNotFound
	}
	to, err := takenOf(plan, in, s.today(r))
	if err != nil {
		return err
	}
	id, err := s.keepPlan(r, to, practice.ItemsOf(plan))
	if err != nil {
		return err
	}
	return saved(w, r, about.pages.TakenPlan(id), "plan")
}

// takenOf is a plan as it is stored.
func takenOf(plan analysis.Plan, in analysis.PlanInput, today golf.Date) (db.TakenPlan, error) {
	figures, err := plan.Kept()
	return db.TakenPlan{Day: today.Time(), FirstDay: plan.First.Time(), LastDay: plan.Last.Time(), Rounds: plan.Game.Rounds, Target: in.Target, Minutes: in.Minutes,
		Engine: analysis.EngineVersion(), Figures: figures}, err
}

// planDays is how long what a plan sets is due: four weeks.
const planDays = 28

// keepPlan stores a plan with what it sets to practise, and returns its number.
func (s *server) keepPlan(r *http.Request, to db.TakenPlan, items []practice.Item) (int64, error) {
	who := me(r).ID
	var set []db.Assignment
	for _, i := range items {
		set = append(set, db.Assignment{What: i.What, Amount: i.Amount, PassMark: i.Mark, DueOn: to.Day.AddDate(0, 0, planDays), Drill: i.Drill, Feet: i.Feet})
	}
	id, err := s.store.TakePlan(r.Context(), who, to, set)
	if errors.Is(err, db.ErrPlansInAll) {
		err = &refusal{http.StatusConflict, "Too many plans", fmt.Sprintf("You have %d plans, the most that are kept. Remove one first.", db.PlansInAll)}
	}
	return id, err
}

// takenPlan shows a plan as it was taken, beside what came since.
func (s *server) takenPlan(w http.ResponseWriter, r *http.Request) error {
	about, kept, err := s.ofPlan(r)
	if err != nil {
		return err
	}
	in, err := s.takenInput(r, about, kept)
	if err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookPlan, 0); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, practice.NewTakenPage(s.shellOf(r, about), in).View())
}

// ofPlan reads the plan named in the address.
func (s *server) ofPlan(r *http.Request) (about subject, kept db.TakenPlan, err error) {
	if about, err = s.subject(r); err != nil {
		return about, kept, err
	}
	n, err := id(r, "plan")
	if err != nil {
		return about, kept, err
	}
	kept, err = s.store.TakenPlan(r.Context(), me(r).ID, about.player.ID, n)
	return about, kept, err
}

// takenInput works out what came since a plan was taken.
func (s *server) takenInput(r *http.Request, about subject, kept db.TakenPlan) (practice.TakenInput, error) {
	in := practice.TakenInput{Whose: about.pages, ID: kept.ID, Name: about.player.Name, Day: golf.DateOf(kept.Day), First: golf.DateOf(kept.FirstDay), Last: golf.DateOf(kept.LastDay),
		Rounds: kept.Rounds, Target: kept.Target, Minutes: kept.Minutes, Units: unitsOf(me(r))}
	history, err := s.store.History(r.Context(), me(r).ID, about.player.ID)
	if err != nil {
		return in, err
	}
	if in.Since, err = s.engine.Since(analysis.SinceInput{History: history, First: in.First, Last: in.Last, Target: kept.Target}); err != nil {
		return in, err
	}
	if in.Kept, err = analysis.ReadKept(kept.Figures); err != nil {
		return in, err
	}
	in.Done, err = s.doneSince(r, about, in.Day)
	return in, err
}

// doneSince are the sessions of a player since a day, by the key of their drill.
func (s *server) doneSince(r *http.Request, about subject, day golf.Date) (map[string][]analysis.SessionResult, error) {
	all, err := s.told(r, about)
	done := map[string][]analysis.SessionResult{}
	for key, d := range all {
		for _, res := range d.Results {
			if res.Day.Compare(day) >= 0 {
				done[key] = append(done[key], res)
			}
		}
	}
	return done, err
}

// told reads every session of a player by the key of its drill, as the engine reads
// them.
func (s *server) told(r *http.Request, about subject) (map[string]analysis.DrillFor, error) {
	kept, err := s.store.DrillSessions(r.Context(), me(r).ID, about.player.ID, "")
	if err != nil {
		return nil, err
	}
	byDrill := map[string][]db.DrillSession{}
	for _, k := range kept {
		byDrill[k.Drill] = append(byDrill[k.Drill], k)
	}
	all := map[string]analysis.DrillFor{}
	target := about.player.Target
	for key, sessions := range byDrill {
		in := analysis.DrillInput{PlanInput: analysis.PlanInput{Target: target}, Sessions: sessionsOf(sessions), Today: s.todayOf(about.player)}
		if number, own := strings.CutPrefix(key, analysis.OwnKey); own {
			all[key], err = s.ownDrill(r, askedDrill{about: about, key: key}, number, in)
		} else {
			all[key], err = s.toldOf(key, target, in)
		}
		if err != nil {
			return nil, err
		}
	}
	return all, nil
}

// removePlan removes a plan of the player's with what it set.
func (s *server) removePlan(w http.ResponseWriter, r *http.Request) error {
	about, kept, err := s.ofPlan(r)
	if err != nil {
		return err
	}
	if !about.pages.Own {
		return golf.ErrNotFound
	}
	if err := s.store.RemovePlan(r.Context(), about.player.ID, kept.ID); err != nil {
		return err
	}
	return redirectAfterRemoval(w, r, about.pages.Plan(), removal{db.RemovedPlan, about.player.ID, kept.ID})
}
