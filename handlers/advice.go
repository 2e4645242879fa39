package handlers

import (
	"errors"
	"fmt"
	"net/http"
	"slices"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/play"
)

// advised reads what coaches say of the holes of a course, by hole, with what their
// proposals cost the player. Those of other holes than one are left out, unless that
// is 0; without one, only what was taken has its cost.
func (s *server) advised(r *http.Request, p playing, only int) (map[int][]play.Advised, error) {
	kept, err := s.store.Advice(r.Context(), me(r).ID, p.about.player.ID, p.course.ID)
	all := map[int][]play.Advised{}
	for _, a := range kept {
		if only != 0 && a.Hole != only {
			continue
		}
		to := play.Advised{ID: a.ID, Written: a.WrittenAt, Coach: a.Coach, Mine: a.CoachID != nil && *a.CoachID == me(r).ID, Day: golf.DateOf(a.WrittenAt.In(s.zoneOf(me(r)))), Note: a.Note, Proposes: a.Proposes,
			Club: a.Club, Side: a.SideYd, Long: a.LongYd, Taken: a.Answer == db.AdviceTaken, Declined: a.Answer == db.AdviceDeclined}
		to.Safe, _ = analysis.ParseSide(a.Safe) // empty for none
		if a.Proposes && (only != 0 || to.Taken) {
			if to.Price, err = s.priced(r, p, a); err != nil {
				return nil, err
			}
		}
		all[a.Hole] = append(all[a.Hole], to)
	}
	return all, err
}

// proposed is the hole of a proposal and the aim as the engine has it; false where it
// cannot be played, since the hole is not drawn, or not on the card any more, or the club
// is none of the player's.
func (p playing) proposed(a db.HoleAdvice) (hole golf.CardHole, in analysis.AimInput, of analysis.OtherAim, known bool) {
	hole, err := cardHole(p.course, a.Hole)
	if err != nil {
		return hole, in, of, false
	}
	picture, drawn := play.PictureOf(hole, p.files[a.Hole])
	known = a.Proposes && drawn && (a.Club == "") == (hole.Par == golf.MinPar)
	if a.Club != "" {
		known = known && slices.ContainsFunc(p.clubs, func(c analysis.Club) bool { return strings.EqualFold(c.Name, a.Club) })
	}
	return hole, analysis.AimInput{Picture: picture, As: p.as, Clubs: p.clubs}, analysis.OtherAim{Club: a.Club, Side: a.SideYd, Long: a.LongYd}, known
}

// priced is what a proposal costs the player; nil where that is not known.
func (s *server) priced(r *http.Request, p playing, a db.HoleAdvice) (*analysis.TakenAim, error) {
	hole, in, of, known := p.proposed(a)
	if !known {
		return nil, nil
	}
	taken, err := workOut(r.Context(), s.worked, p.key("price", hole, of), func() (analysis.TakenAim, error) { return s.engine.Price(in, of) })
	if err != nil {
		return nil, err
	}
	return &taken, nil
}

// takenAims are the aims off the tee that stand in the plan of a course in place of the
// best, by hole.
func (s *server) takenAims(r *http.Request, p playing) (map[int]analysis.OtherAim, error) {
	kept, err := s.store.Advice(r.Context(), me(r).ID, p.about.player.ID, p.course.ID)
	all := map[int]analysis.OtherAim{}
	for _, a := range kept {
		if _, _, of, known := p.proposed(a); known && a.Answer == db.AdviceTaken {
			all[a.Hole] = of
		}
	}
	return all, err
}

// standingPlan is the plan of a hole with what the player took of a coach.
func (s *server) standingPlan(r *http.Request, p playing, h golf.CardHole, said []play.Advised) (analysis.HolePlan, error) {
	plan, err := s.holePlan(r, p, h)
	if err != nil || !plan.Drawn {
		return plan, err
	}
	if taken := takenOn(said); taken != nil {
		picture, _ := play.PictureOf(h, p.files[h.Number])
		plan, err = workOut(r.Context(), s.worked, p.key("taken", h, *taken), func() (analysis.HolePlan, error) {
			return s.engine.Taking(plan, analysis.AimInput{Picture: picture, As: p.as, Clubs: p.clubs}, *taken)
		})
	}
	for _, a := range said {
		if a.Taken {
			plan.Safe = a.Safe
		}
	}
	return plan, err
}

// takenOn is the club and aim that the player took on a hole in place of the best; nil
// for none.
func takenOn(all []play.Advised) *analysis.TakenAim {
	for _, a := range all {
		if a.Taken && a.Price != nil {
			return a.Price
		}
	}
	return nil
}

// advise keeps what a coach says of a hole, and tells the pupil; emptied, it is removed.
func (s *server) advise(w http.ResponseWriter, r *http.Request) error {
	p, d, in, err := s.holeInput(r)
	if err != nil {
		return err
	}
	if p.about.pages.Own {
		return golf.ErrNotFound
	}
	f := form.ParseHoleAdvice(r.Form, in.Unit, play.AdviceClubs(in))
	if r.FormValue("remove") != "" || f.Sound() && f.Empty() && in.Said() {
		return s.removeAdvice(w, r, p, d.hole.Number)
	}
	if in.Form = f.Asked(); !in.Form.Sound() {
		return s.showHolePlan(w, r, http.StatusUnprocessableEntity, p, in)
	}
	a := adviceOf(p.course.ID, d.hole.Number, f)
	changed, err := s.store.Advise(r.Context(), me(r).ID, p.about.player.ID, a)
	if err != nil {
		return err
	}
	if changed {
		s.tell(r, p.about.player.ID, p.noticeOf(db.NoticeHole, d.hole.Number))
	}
	return saved(w, r, p.about.pages.HolePlan(p.course.ID, d.hole.Number, ""), "advised")
}

// adviceOf is what a form says of a hole.
func adviceOf(course golf.CourseID, hole int, f form.HoleAdvice) db.HoleAdvice {
	a := db.HoleAdvice{CourseID: course, Hole: hole, Note: f.Note.Value, Proposes: f.Club.Value != "", Club: f.Club.Value, SideYd: f.SideYards(), LongYd: f.LongYards(), Safe: f.Safe.Value}
	if a.Club == form.AnAim {
		a.Club = ""
	}
	return a
}

// removeAdvice removes what the coach says of a hole, and offers to restore it. The
// pupil is told when it stood in the plan.
func (s *server) removeAdvice(w http.ResponseWriter, r *http.Request, p playing, hole int) error {
	a, err := s.store.RemoveAdvice(r.Context(), me(r).ID, p.about.player.ID, p.course.ID, hole)
	if err != nil {
		return err
	}
	if a.Answer == db.AdviceTaken {
		s.tell(r, p.about.player.ID, p.noticeOf(db.NoticeHoleRemoved, hole))
	}
	return redirectAfterRemoval(w, r, p.about.pages.HolePlan(p.course.ID, hole, ""), removal{db.RemovedAdvice, p.about.player.ID, a.ID})
}

// restoreAdvice restores it, and tells the pupil when it stands in the plan again.
func (s *server) restoreAdvice(r *http.Request, pages paths.Whose, x db.Removed) (at string, err error) {
	a, err := s.store.RestoreAdvice(r.Context(), me(r).ID, x.PlayerID, x.ID)
	if err != nil {
		return "", err
	}
	if a.Answer == db.AdviceTaken {
		s.tell(r, x.PlayerID, db.Notice{Kind: db.NoticeHole, OfID: x.PlayerID, What: x.Text, CourseID: &a.CourseID, Hole: &a.Hole})
	}
	return pages.HolePlan(a.CourseID, a.Hole, "") + "#advice", nil
}

// noticeOf is a notice about a hole.
func (p playing) noticeOf(kind db.NoticeKind, hole int) db.Notice {
	return db.Notice{Kind: kind, OfID: p.about.player.ID, What: fmt.Sprintf("hole %d, %s", hole, courseName(p.course)), CourseID: &p.course.ID, Hole: &hole}
}

// answerAdvice takes a coach's proposal into the player's plan, or declines it, and
// tells the coach. What the coach has changed or removed since the page was shown is not
// answered, but shown.
func (s *server) answerAdvice(w http.ResponseWriter, r *http.Request) error {
	p, d, in, err := s.holeInput(r)
	if err == nil && !p.about.pages.Own {
		err = golf.ErrNotFound
	}
	if err != nil {
		return err
	}
	take, what, kind := r.FormValue("take") != "", "advice_declined", db.NoticeHoleDeclined
	if take {
		what, kind = "advice_taken", db.NoticeHoleTaken
	}
	a, err := s.store.AnswerAdvice(r.Context(), p.about.player.ID, p.course.ID, d.hole.Number, int64(formID(r, "advice")), play.Written(r.FormValue("written")), take)
	if errors.Is(err, golf.ErrNotFound) {
		in.Changed = true
		return s.showHolePlan(w, r, http.StatusConflict, p, in)
	}
	if err != nil {
		return err
	}
	s.tellCoach(r, p.about, a.CoachID, p.noticeOf(kind, d.hole.Number))
	return saved(w, r, p.about.pages.HolePlan(p.course.ID, d.hole.Number, ""), what)
}

// tellCoach tells a coach whose account is there and who still has access.
func (s *server) tellCoach(r *http.Request, about subject, coach *golf.PlayerID, n db.Notice) {
	if coach == nil {
		return
	}
	if _, err := s.store.Seen(r.Context(), *coach, about.player.ID); err == nil {
		s.tell(r, *coach, n)
	}
}
