package handlers

import (
	"net/http"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/play"
)

// playing is what every page about playing a course is made of.
type playing struct {
	about   subject
	course  db.Course
	history []golf.Played
	as      analysis.PlaysAs
	clubs   []analysis.Club
	files   map[int]string // pictures, by hole
}

// playing reads the player and the course named in the address.
func (s *server) playing(r *http.Request) (p playing, err error) {
	if p.about, err = s.subject(r); err != nil {
		return p, err
	}
	if p.course, err = s.ofCourse(r); err != nil {
		return p, err
	}
	if p.files, err = s.pictureFiles(r, p.course.ID); err != nil {
		return p, err
	}
	if p.history, err = s.store.History(r.Context(), me(r).ID, p.about.player.ID); err != nil {
		return p, err
	}
	if p.as, err = s.engine.PlaysAs(p.history, p.about.player.Target); err != nil {
		return p, err
	}
	p.clubs, err = s.teeClubs(r, p)
	return p, err
}

// teeClubs are the clubs of the player's bag, or those of the level, each with what is
// known of how the player hits it.
func (s *server) teeClubs(r *http.Request, p playing) ([]analysis.Club, error) {
	level, err := s.engine.ClubsOf(p.as)
	if err != nil {
		return nil, err
	}
	bag, err := s.bagOf(r, p.about.player.ID)
	if err != nil {
		return nil, err
	}
	clubs := play.TeeClubs(level, bag)
	for i, c := range clubs {
		pattern, err := s.engine.Pattern(analysis.PatternInput{As: p.as, Club: c, Tee: true, Session: bag.Balls(c.Name), History: p.history})
		if err != nil {
			return nil, err
		}
		clubs[i].Pattern = pattern.Shaped(bag.Shape(c.Name))
	}
	return clubs, nil
}

// holePlan is the plan of one hole; it is worked out once for what it stands on.
func (s *server) holePlan(r *http.Request, p playing, h golf.CardHole) (analysis.HolePlan, error) {
	picture, drawn := play.PictureOf(h, p.files[h.Number])
	if !drawn {
		return analysis.HolePlan{Hole: h}, nil
	}
	return workOut(r.Context(), s.worked, p.key("hole", h), func() (analysis.HolePlan, error) {
		plan, err := s.engine.RoundPlan(analysis.RoundPlanInput{Card: []golf.CardHole{h}, Pictures: map[int]analysis.Picture{h.Number: picture}, As: p.as, Clubs: p.clubs})
		if err != nil {
			return analysis.HolePlan{}, err
		}
		return plan.Holes[0], nil
	})
}

// key identifies what is worked out of a hole, and for whom.
func (p playing) key(kind string, h golf.CardHole, more ...any) [32]byte {
	return keyOf(kind, h, p.files[h.Number], p.as, p.clubs, more)
}

// playHole is where to aim on a hole.
func (s *server) playHole(w http.ResponseWriter, r *http.Request) error {
	p, _, in, err := s.holeInput(r)
	if err != nil {
		return err
	}
	return s.showHolePlan(w, r, http.StatusOK, p, in)
}

// holeInput is what the page of a hole is made of.
func (s *server) holeInput(r *http.Request) (p playing, d drawn, in play.HoleInput, err error) {
	if p, err = s.playing(r); err != nil {
		return p, d, in, err
	}
	if d, err = s.ofDrawn(r); err != nil {
		return p, d, in, err
	}
	in = play.HoleInput{Whose: p.about.pages, Player: p.about.player.Name, Course: p.course.ID, Name: courseName(p.course), Holes: holeNumbers(p.course),
		Hole: d.hole, As: p.as, Target: p.about.player.Target, Unit: unitsOf(me(r)).Far, Flag: r.URL.Query().Get("flag")}
	in.Picture, in.Drawn = play.PictureOf(d.hole, p.files[d.hole.Number])
	advice, err := s.advised(r, p, d.hole.Number)
	if in.Advice = advice[d.hole.Number]; err != nil || !in.Drawn {
		return p, d, in, err
	}
	if err := s.aimed(r, p, &in); err != nil {
		return p, d, in, err
	}
	in.By, err = s.drawnBy(r, p.about, d)
	return p, d, in, err
}

// showHolePlan shows the page of a hole.
func (s *server) showHolePlan(w http.ResponseWriter, r *http.Request, status int, p playing, in play.HoleInput) error {
	if err := s.recordLook(r, p.about, db.LookPlay, 0); err != nil {
		return err
	}
	page := s.shellOf(r, p.about)
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	return show(w, r, status, play.NewHolePage(page, in).View())
}

// drawnBy says who drew a hole, and when.
func (s *server) drawnBy(r *http.Request, about subject, d drawn) (string, error) {
	kept, err := s.holding(r, d)
	if err != nil {
		return "", err
	}
	return play.DrawnBy(s.versionOf(r, kept), about.pages, about.player.Name), nil
}

func holeNumbers(c db.Course) []int {
	var all []int
	for _, h := range c.Holes {
		all = append(all, h.Number)
	}
	return all
}

// aimed works out the plan of a hole, its shapes, and the approach at another flag.
func (s *server) aimed(r *http.Request, p playing, in *play.HoleInput) (err error) {
	if in.Plan, err = s.standingPlan(r, p, in.Hole, in.Advice); err != nil {
		return err
	}
	if in.Shapes, err = s.shapes(r, p, *in); err != nil {
		return err
	}
	flag := play.FlagAt(in.Picture, in.Flag)
	if flag == nil || in.Plan.Approach == nil {
		in.Flag = ""
		return nil
	}
	from := in.Plan.Approach.From
	ask := analysis.AimInput{Picture: in.Picture, Flag: flag, As: p.as}
	if from.Lie != golf.Tee {
		ask.From = &analysis.AimFrom{Lie: from.Lie, Distance: golf.Yards.Of(from.Length)}
	}
	at, err := workOut(r.Context(), s.worked, p.key("flag", in.Hole, in.Flag, from), func() (plan analysis.HolePlan, err error) {
		plan.Advice, err = s.engine.Aim(ask)
		return plan, err
	})
	in.Approach = at.Advice.Approach
	return err
}

// shapes are the best aims with the best club when its ball is bent on purpose.
func (s *server) shapes(r *http.Request, p playing, in play.HoleInput) ([]play.ShapedAim, error) {
	if len(in.Plan.Advice.Clubs) == 0 {
		return nil, nil
	}
	best := in.Plan.Advice.Best()
	return workOut(r.Context(), s.worked, p.key("shapes", in.Hole), func() (all []play.ShapedAim, err error) {
		for _, yd := range play.Shapes {
			shot := best
			if yd != 0 {
				advice, err := s.engine.Aim(analysis.AimInput{Picture: in.Picture, As: p.as, Clubs: []analysis.Club{best.Club}, Shape: yd})
				if err != nil {
					return nil, err
				}
				shot = advice.Best()
			}
			all = append(all, play.ShapedAim{Yd: yd, Shot: shot})
		}
		return all, nil
	})
}

// planBudget is how long one request works on the plan of a course; the page then shows
// how far it is, and asks again.
const planBudget = 1500 * time.Millisecond

// roundPlan is the plan of a round on a course, as far as it is worked out.
func (s *server) roundPlan(r *http.Request, p playing) (in play.RoundInput, err error) {
	in = play.RoundInput{Whose: p.about.pages, Player: p.about.player.Name, Course: p.course.ID, Name: courseName(p.course), Card: p.course.Holes,
		As: p.as, Target: p.about.player.Target, Unit: unitsOf(me(r)).Far, Today: s.today(r), Plans: map[int]analysis.HolePlan{}, Compare: p.toCompare()}
	if in.Advice, err = s.advised(r, p, 0); err != nil {
		return in, err
	}
	late := time.NewTimer(planBudget)
	defer late.Stop()
	err = s.workOnPlans(r, p, &in, late.C)
	return in, err
}

// workOnPlans works out the plans of the drawn holes, until it is late. What is known
// already is taken in any case.
func (s *server) workOnPlans(r *http.Request, p playing, in *play.RoundInput, late <-chan time.Time) (err error) {
	enough := false
	for _, h := range p.course.Holes {
		if _, drawn := play.PictureOf(h, p.files[h.Number]); !drawn {
			continue
		}
		in.Drawn++
		select {
		case <-late:
			enough = true
		default:
		}
		if _, known := s.worked.look(p.key("hole", h)); !known && enough {
			continue
		}
		if in.Plans[h.Number], err = s.standingPlan(r, p, h, in.Advice[h.Number]); err != nil {
			return err
		}
	}
	return nil
}

// playRound shows the plan of a round with the card to carry.
func (s *server) playRound(w http.ResponseWriter, r *http.Request) error {
	return s.showRoundPlan(w, r, func(page play.RoundPage) play.RoundPage { return page })
}

// carryCard shows the card alone.
func (s *server) carryCard(w http.ResponseWriter, r *http.Request) error {
	return s.showRoundPlan(w, r, play.RoundPage.Alone)
}

func (s *server) showRoundPlan(w http.ResponseWriter, r *http.Request, as func(play.RoundPage) play.RoundPage) error {
	p, err := s.playing(r)
	if err != nil {
		return err
	}
	in, err := s.roundPlan(r, p)
	if err != nil {
		return err
	}
	if err := s.recordLook(r, p.about, db.LookPlay, 0); err != nil {
		return err
	}
	if len(in.Plans) < in.Drawn {
		w.Header().Set("Refresh", "1")
	}
	return show(w, r, http.StatusOK, as(play.NewRoundPage(s.shellOf(r, p.about), in)).View())
}
