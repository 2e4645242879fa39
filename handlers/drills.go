package handlers

import (
	"crypto/rand"
	"errors"
	"net/http"
	"strconv"
	"strings"

	"github.com/go-chi/chi/v5"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/practice"
)

// askedDrill is a drill of a player, with what came of it.
type askedDrill struct {
	about subject
	key   string
	day   golf.Date // where the player is
	past  []golf.Played
	of    analysis.DrillFor
	carry analysis.Carry // on a page that was asked for; none on one that comes back from its form
}

// ask is what is written down of a session of the drill.
func (d askedDrill) ask() form.DrillAsk { return practice.AskOf(d.of, d.day) }

// drillAsked reads the drill named in the address; feet is from where it is played,
// as it was typed.
func (s *server) drillAsked(r *http.Request, feet string) (d askedDrill, err error) {
	about, in, err := s.planInput(r)
	if err != nil {
		return d, err
	}
	d = askedDrill{about: about, key: chi.URLParam(r, "drill"), day: s.todayOf(about.player), past: in.History}
	d.of, err = s.drillOf(r, d, analysis.DrillInput{PlanInput: in, Feet: form.ParseNumber(feet, 0, golf.MaxPutt.Feet()).Value})
	return d, err
}

// drillOf works out a drill with the sessions that the reader may see.
func (s *server) drillOf(r *http.Request, d askedDrill, in analysis.DrillInput) (analysis.DrillFor, error) {
	kept, err := s.store.DrillSessions(r.Context(), me(r).ID, d.about.player.ID, d.key)
	if err != nil {
		return analysis.DrillFor{}, err
	}
	in.Sessions, in.Today = sessionsOf(kept), d.day
	if number, own := strings.CutPrefix(d.key, analysis.OwnKey); own {
		return s.ownDrill(r, d, number, in)
	}
	of, err := s.engine.Drill(d.key, in)
	if errors.Is(err, analysis.ErrNoDrill) {
		err = golf.ErrNotFound
	}
	return of, err
}

// ownDrill is a drill of somebody's own, by the number of the practice that it was set
// as. Once that is gone its sessions are still told.
func (s *server) ownDrill(r *http.Request, d askedDrill, number string, in analysis.DrillInput) (analysis.DrillFor, error) {
	n, err := strconv.ParseInt(number, 10, 64)
	if err != nil {
		return analysis.DrillFor{}, golf.ErrNotFound
	}
	a, err := s.store.Assignment(r.Context(), me(r).ID, d.about.player.ID, n)
	switch {
	case errors.Is(err, golf.ErrNotFound) && len(in.Sessions) > 0:
		return s.toldOf(d.key, in.Target, in)
	case err == nil && drillKey(a) != d.key:
		err = golf.ErrNotFound
	}
	return analysis.ToldOwn(analysis.OwnDrill{Key: d.key, Name: a.What, SetUp: a.SetUp, Tries: a.Tries, Mark: a.Mark}, in), err
}

// toldOf is what came of a drill, from its sessions alone. A drill that is not there,
// or is somebody's own, has no model.
func (s *server) toldOf(key string, level float64, in analysis.DrillInput) (analysis.DrillFor, error) {
	of, err := s.engine.Told(key, level, in)
	if errors.Is(err, analysis.ErrNoDrill) {
		return analysis.ToldOwn(analysis.OwnDrill{Key: key, Name: in.Sessions[len(in.Sessions)-1].Name}, in), nil
	}
	return of, err
}

// sessionsOf are sessions as the engine takes them. Tries that cannot be read count
// as none.
func sessionsOf(kept []db.DrillSession) []analysis.DrillSession {
	all := make([]analysis.DrillSession, len(kept))
	for i, k := range kept {
		tries, _ := golf.ParseTries(k.Tries)
		all[i] = analysis.DrillSession{ID: k.ID, Name: k.Name, Day: golf.DateOf(k.Day), Feet: k.Feet, Tries: tries, Counted: k.Counted, Tried: k.Tried, Minutes: k.Minutes, Note: k.Note}
	}
	return all
}

// drill shows how a drill is done, its mark for a player, what came of it and, for the
// player, where a session is entered. What stands in the address was typed before a
// session at the server ended.
func (s *server) drill(w http.ResponseWriter, r *http.Request) error {
	query := r.URL.Query()
	d, err := s.drillAsked(r, query.Get("feet"))
	if err != nil {
		return err
	}
	typed := practice.FirstSession(d.of, rand.Text(), d.day)
	if query.Has("entered") {
		typed = entered(form.ParseSession(query, d.ask())).AsTyped()
	}
	if d.carry, err = s.carryOf(d); err != nil {
		return err
	}
	if err := s.recordLook(r, d.about, db.LookPlan, 0); err != nil {
		return err
	}
	return s.showDrill(w, r, http.StatusOK, d, practice.SessionInput{Typed: typed})
}

// carryOf sets a drill beside the course.
func (s *server) carryOf(d askedDrill) (analysis.Carry, error) {
	return s.engine.CarryOver(analysis.CarryInput{Drill: d.of, History: d.past, Boundary: golf.Yards.Of(d.about.player.BoundaryYd), Today: d.day})
}

// entered gives a session a name of its own if its page sent none.
func entered(f form.Session) form.Session {
	if f.Entered == "" {
		f.Entered = rand.Text()
	}
	return f
}

// showDrill shows a drill with what was typed into its form.
func (s *server) showDrill(w http.ResponseWriter, r *http.Request, status int, d askedDrill, typed practice.SessionInput) error {
	pages := d.about.pages
	in := practice.DrillInput{Whose: pages, Name: d.about.player.Name, Target: d.about.player.Target, Units: unitsOf(me(r)), Day: d.day, DrillFor: d.of, Carry: d.carry}
	if shown, err := strconv.ParseInt(r.URL.Query().Get("session"), 10, 64); err == nil {
		in.Shown = shown
	}
	if pages.Own {
		typed.At, typed.Offline = pages.Drill(d.key), true
		in.Form = &typed
	}
	page := s.shellOf(r, d.about)
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	return show(w, r, status, practice.NewDrillPage(page, in).View())
}

// saveDrill saves a session of a drill, or answers a key.
func (s *server) saveDrill(w http.ResponseWriter, r *http.Request) error {
	d, err := s.drillAsked(r, r.PostFormValue("feet"))
	if err != nil {
		return err
	}
	if !d.about.pages.Own {
		return golf.ErrNotFound
	}
	f := entered(form.ParseSession(r.PostForm, d.ask()))
	switch press := r.PostFormValue("press"); press {
	case "", "save", "replace", "another":
		return s.storeSession(w, r, d, f, press)
	case "feet":
		shown := f.AsTyped()
		shown.Feet = f.Feet
		return s.showDrill(w, r, statusIf(f.Feet.Sound()), d, practice.SessionInput{Typed: shown})
	default:
		return s.showDrill(w, r, http.StatusOK, d, practice.SessionInput{Typed: f.Pressed(press)})
	}
}

func statusIf(sound bool) int {
	if sound {
		return http.StatusOK
	}
	return http.StatusUnprocessableEntity
}

// storeSession stores a session. One that cannot be stored is shown again as it was
// typed, with what is wrong or what another window saved.
func (s *server) storeSession(w http.ResponseWriter, r *http.Request, d askedDrill, f form.Session, press string) error {
	if !f.Sound() {
		return s.refuseSession(w, r, http.StatusUnprocessableEntity, d, practice.SessionInput{Typed: f})
	}
	if press == "another" {
		f.Entered = rand.Text()
	}
	kept, err := s.putSession(r, d, f, press == "replace")
	switch {
	case errors.Is(err, golf.ErrConflict):
		return s.refuseSession(w, r, http.StatusConflict, d, practice.SessionInput{Typed: f, Kept: practice.KeptText(sessionsOf([]db.DrillSession{kept})[0])})
	case err != nil:
		return err
	case kept.Fresh:
		s.tellOfSession(r, d, kept)
	}
	next := saying(d.about.pages.DrillShowing(d.key, kept.ID), savedParam, "session")
	if wantsJSON(r) {
		return answerJSON(w, http.StatusOK, savedHole{Next: next})
	}
	return redirect(w, r, next)
}

// putSession stores a session that is sound, in the place of what its page stored
// before if the player said so.
func (s *server) putSession(r *http.Request, d askedDrill, f form.Session, replace bool) (db.DrillSession, error) {
	to := keptSession(f, d)
	if replace {
		kept, err := s.store.ReplaceDrillSession(r.Context(), me(r).ID, to)
		if !errors.Is(err, golf.ErrNotFound) {
			return kept, err
		}
	}
	return s.store.SaveDrillSession(r.Context(), me(r).ID, to)
}

// keptSession is a session as it is stored.
func keptSession(f form.Session, d askedDrill) db.DrillSession {
	counted, tried := f.Counted(d.ask())
	return db.DrillSession{EnteredAs: f.Entered, Drill: d.key, Name: d.of.Name, Day: f.Day.Value.Time(), Feet: f.Feet.Value, Tries: f.Tries.Value.String(),
		Counted: counted, Tried: tried, Minutes: f.Minutes.Value, Note: f.Note.Value}
}

// refuseSession answers a session that cannot be stored.
func (s *server) refuseSession(w http.ResponseWriter, r *http.Request, status int, d askedDrill, typed practice.SessionInput) error {
	if wantsJSON(r) {
		return answerJSON(w, status, scriptAnswer{Error: "Not saved yet."})
	}
	return s.showDrill(w, r, status, d, typed)
}
