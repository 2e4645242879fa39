package handlers

import (
	"net/http"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/practice"
)

// ofSession reads the session named in the address, with its drill; only the player
// changes one.
func (s *server) ofSession(r *http.Request, feet string) (d askedDrill, kept db.DrillSession, err error) {
	about, in, err := s.planInput(r)
	if err != nil {
		return d, kept, err
	}
	n, err := id(r, "session")
	if err != nil || !about.pages.Own {
		return d, kept, golf.ErrNotFound
	}
	if kept, err = s.store.DrillSession(r.Context(), me(r).ID, about.player.ID, n); err != nil {
		return d, kept, err
	}
	from := kept.Feet
	if typed := form.ParseNumber(feet, 0, golf.MaxPutt.Feet()); typed.Sound() && feet != "" {
		from = typed.Value
	}
	d = askedDrill{about: about, key: kept.Drill, day: s.todayOf(about.player)}
	d.of, err = s.drillOf(r, d, analysis.DrillInput{PlanInput: in, Feet: from})
	return d, kept, err
}

// session shows a session that can be changed.
func (s *server) session(w http.ResponseWriter, r *http.Request) error {
	d, kept, err := s.ofSession(r, "")
	if err != nil {
		return err
	}
	k := sessionsOf([]db.DrillSession{kept})[0]
	return s.showSession(w, r, http.StatusOK, d, kept, form.SessionOf(k.Day, k.Feet, k.Tries, k.Counted, k.Tried, k.Minutes, k.Note))
}

func (s *server) showSession(w http.ResponseWriter, r *http.Request, status int, d askedDrill, kept db.DrillSession, typed form.Session) error {
	pages := d.about.pages
	in := practice.DrillInput{Whose: pages, Name: d.about.player.Name, Target: d.about.player.Target, Units: unitsOf(me(r)), Day: d.day, DrillFor: d.of,
		Form: &practice.SessionInput{At: pages.Session(kept.ID), Typed: typed, Remove: pages.RemoveSession(kept.ID), Changing: true}}
	return show(w, r, status, practice.NewSessionPage(s.shellOf(r, d.about), in).View())
}

// changeSession saves a session that was changed, or answers a key.
func (s *server) changeSession(w http.ResponseWriter, r *http.Request) error {
	d, kept, err := s.ofSession(r, r.PostFormValue("feet"))
	if err != nil {
		return err
	}
	f := form.ParseSession(r.PostForm, d.ask())
	press := r.PostFormValue("press")
	switch {
	case press != "" && press != "save":
		return s.showSession(w, r, http.StatusOK, d, kept, f.Pressed(press))
	case !f.Sound():
		return s.showSession(w, r, http.StatusUnprocessableEntity, d, kept, f)
	}
	to := keptSession(f, d)
	to.ID = kept.ID
	if err := s.store.ChangeDrillSession(r.Context(), me(r).ID, to); err != nil {
		return err
	}
	return saved(w, r, d.about.pages.DrillShowing(d.key, kept.ID), "session")
}

// removeSession removes a session of the player's.
func (s *server) removeSession(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	n, err := id(r, "session")
	if err != nil || !about.pages.Own {
		return golf.ErrNotFound
	}
	kept, err := s.store.DrillSession(r.Context(), me(r).ID, about.player.ID, n)
	if err != nil {
		return err
	}
	if err := s.store.RemoveDrillSession(r.Context(), about.player.ID, n); err != nil {
		return err
	}
	return redirectAfterRemoval(w, r, about.pages.Drill(kept.Drill), removal{db.RemovedSession, about.player.ID, n})
}
