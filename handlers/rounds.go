package handlers

import (
	"fmt"
	"net/http"
	"slices"
	"strconv"
	"strings"
	"time"

	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
	"strokeledger/db"
	"strokeledger/web/pages"
	"strokeledger/web/paths"
)

// lookBack is how many of the latest rounds may be gone on with.
const lookBack = 5

// accountOf works out holes of a round against the golfer who averages its
// target over a card, and returns his level too.
func accountOf(kept db.Round, played golf.Round, card []golf.CardHole) (account.Account, float64, error) {
	fixed, err := expect.Level(kept.Target)
	if err != nil {
		return account.Account{}, 0, err
	}
	whole := golf.Round{}
	for _, h := range card {
		whole.Holes = append(whole.Holes, golf.Hole{Number: h.Number, Par: h.Par, Shots: []golf.Shot{{Lie: golf.Tee, Distance: h.Length}}})
	}
	lens, course := expect.ForTarget(card, whole.TargetOf(kept.Target, kept.Par18))
	terms := account.Terms{Lens: lens, Course: course, Fixed: fixed, Boundary: golf.Yards.Of(kept.BoundaryYd)}
	return account.Of(played, terms), lens.Level(), nil
}

// ofRound reads the round of the address.
func (s *server) ofRound(r *http.Request) (db.Round, error) {
	n, err := id(r, "round")
	if err != nil {
		return db.Round{}, err
	}
	return s.store.Round(r.Context(), me(r).ID, golf.RoundID(n))
}

func (s *server) round(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.ofRound(r)
	if err != nil {
		return err
	}
	return s.showStatement(w, r, http.StatusOK, kept, me(r), mine(r), pages.Typed{})
}

// seenRound is the statement of a round for whoever may see it, to read and to
// write about.
func (s *server) seenRound(w http.ResponseWriter, r *http.Request) error {
	player, whose, err := s.whose(r)
	if err != nil {
		return err
	}
	n, err := id(r, "round")
	if err != nil {
		return err
	}
	kept, err := s.store.SeenRound(r.Context(), me(r).ID, whose.Player, golf.RoundID(n))
	if err != nil {
		return err
	}
	return s.showStatement(w, r, http.StatusOK, kept, player, whose, pages.Typed{})
}

// showStatement shows a round of a player's: to the player, or to a coach.
func (s *server) showStatement(w http.ResponseWriter, r *http.Request, status int, kept db.Round, player db.Player, whose paths.Whose, typed pages.Typed) (err error) {
	q := pages.Asked{Whose: whose, ID: kept.ID, Round: kept.Played(), Target: kept.Target, Bounds: golf.Yards.Of(kept.BoundaryYd), Units: unitsOf(me(r)), Note: kept.Note,
		Nines: [2]int{kept.CardOut, kept.CardIn}, Typed: typed, On: r.FormValue("on")}
	if !whose.Own {
		q.Of = player.Name
	}
	if q.Coached, err = s.coached(r, whose); err != nil {
		return err
	}
	if q.Notes, err = s.notes(r, whose, db.NotesOf{Round: kept.ID}); err != nil {
		return err
	}
	for _, h := range kept.Holes {
		q.Card = append(q.Card, h.Card())
	}
	if len(q.Round.Holes) > 0 {
		if q.Account, q.Level, err = accountOf(kept, q.Round, q.Round.Card()); err != nil {
			return err
		}
	}
	page := shell(r)
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	return show(w, r, status, pages.NewStatement(page, q).View())
}

func (s *server) newRound(w http.ResponseWriter, r *http.Request) error {
	return s.showNewRound(w, r, http.StatusOK, r.FormValue("course"), time.Now().Format("2006-01-02"), "", "")
}

func (s *server) showNewRound(w http.ResponseWriter, r *http.Request, status int, course, date, note, problem string) error {
	lately, err := s.store.Rounds(r.Context(), me(r).ID, me(r).ID, db.Chosen{Most: lookBack})
	if err != nil {
		return err
	}
	var open []pages.OpenRound
	for _, kept := range lately {
		left := len(kept.Holes) - len(kept.Played().Holes)
		if i := slices.IndexFunc(kept.Holes, func(h db.Hole) bool { return h.Line == "" }); i >= 0 {
			open = append(open, pages.NewOpenRound(kept.ID, golf.DateOf(kept.PlayedOn), kept.Course, kept.Holes[i].Number, left))
		}
	}
	if course == "" && len(lately) > 0 && lately[0].CourseID != nil {
		course = strconv.FormatInt(int64(*lately[0].CourseID), 10)
	}
	choices, err := s.choices(r, course)
	if err != nil {
		return err
	}
	return show(w, r, status, pages.NewNewRound(shell(r), choices, open, date, note, problem).View())
}

func (s *server) beginRound(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	course, text, note := r.FormValue("course"), r.FormValue("date"), strings.TrimSpace(r.FormValue("note"))
	n, _ := strconv.ParseInt(course, 10, 64)
	date, err := golf.ParseDate(text)
	if err != nil || len(note) > 300 {
		return s.showNewRound(w, r, http.StatusUnprocessableEntity, course, text, note, "The day or the note is not allowed: YYYY-MM-DD, and at most 300 letters.")
	}
	c, err := s.chosenCourse(r, golf.CourseID(n))
	if err != nil {
		return err
	}
	kept := db.Round{Name: fmt.Sprintf("%s %s %s", date, c.Name, time.Now().Format("150405")), PlayedOn: date.Time(), Course: c.Name, Tee: c.Tee,
		Target: p.Target, BoundaryYd: p.BoundaryYd, Par18: golf.StandardPar, Note: note, CourseID: &c.ID}
	if len(c.Holes) == 18 && c.Holes[0].Length > 0 {
		kept.Par18 = parOf(c.Holes)
	}
	for _, h := range c.Holes {
		kept.Holes = append(kept.Holes, db.Hole{Hole: golf.Hole{Number: h.Number, Par: h.Par}, Length: h.Length, Index: h.Index})
	}
	if len(kept.Holes) == 0 {
		return golf.ErrNotFound
	}
	id, err := s.store.NewRound(r.Context(), p.ID, kept)
	if err != nil {
		return err
	}
	return then(w, r, paths.Hole(id, kept.Holes[0].Number))
}

// chosenCourse is the course that a round begins on: one that is there, or a
// new one whose card is told hole by hole.
func (s *server) chosenCourse(r *http.Request, id golf.CourseID) (db.Course, error) {
	name := strings.TrimSpace(r.FormValue("new_course"))
	if name == "" {
		return s.store.Course(r.Context(), id)
	}
	tee := strings.TrimSpace(r.FormValue("new_tee"))
	if !sayable(name, 80) || !sayable(tee, 80) {
		return db.Course{}, golf.ErrNotFound
	}
	holes, err := strconv.Atoi(r.FormValue("new_holes"))
	if err != nil || holes < 1 || holes > 18 {
		holes = 18
	}
	c := db.Course{Name: name, Tee: tee}
	if c.ID, err = s.store.SaveCourse(r.Context(), me(r).ID, c); err != nil {
		return c, err
	}
	for i := range holes {
		c.Holes = append(c.Holes, golf.CardHole{Number: i + 1, Par: 4})
	}
	return c, nil
}

func parOf(card []golf.CardHole) int {
	par := 0
	for _, h := range card {
		par += h.Par
	}
	return par
}

func (s *server) removeRound(w http.ResponseWriter, r *http.Request) error {
	n, err := id(r, "round")
	if err != nil {
		return err
	}
	if err := s.store.RemoveRound(r.Context(), me(r).ID, golf.RoundID(n)); err != nil {
		return err
	}
	return gone(w, r, paths.Rounds, db.RemovedRound, me(r).ID, n)
}

// export sends the player's rounds as a shots file.
func (s *server) export(w http.ResponseWriter, r *http.Request) error {
	all, err := s.store.Rounds(r.Context(), me(r).ID, me(r).ID, db.Chosen{})
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/csv; charset=utf-8")
	w.Header().Set("Content-Disposition", `attachment; filename="shots.csv"`)
	out := shotsfile.NewWriter(w)
	for i := len(all) - 1; i >= 0; i-- {
		if played := all[i].Played(); len(played.Holes) > 0 {
			if err := out.Write(played); err != nil {
				return err
			}
		}
	}
	return out.Flush()
}
