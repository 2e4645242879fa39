package handlers

import (
	"net/http"
	"slices"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// pupil is a player whom the signed-in player coaches, as the subject of a page.
func (s *server) pupil(r *http.Request) (subject, error) {
	about, err := s.subject(r)
	if err == nil && about.pages.Own {
		err = golf.ErrNotFound
	}
	return about, err
}

// setGroups puts a pupil into the groups that are named, and out of all others.
func (s *server) setGroups(w http.ResponseWriter, r *http.Request) error {
	about, err := s.pupil(r)
	if err != nil {
		return err
	}
	f := form.ParseGroups(r.FormValue("groups"))
	if !f.Sound() {
		return s.showOverview(w, r, about, form.Returned{Groups: &f})
	}
	there, err := s.store.Groups(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	if err := s.store.SetGroups(r.Context(), me(r).ID, about.player.ID, spelledAlike(f.Value, there)); err != nil {
		return err
	}
	return saved(w, r, about.pages.Overview()+"#arrange", "groups")
}

// spelledAlike spells names of groups as those that there are, so that a capital
// letter makes no second group.
func spelledAlike(names []string, there []db.Grouped) []string {
	for i, name := range names {
		for _, g := range there {
			if strings.EqualFold(g.Name, name) {
				names[i] = g.Name
				break
			}
		}
	}
	return names
}

// renameGroup gives a group another name. With that of another group, however it is
// spelled, the two become one.
func (s *server) renameGroup(w http.ResponseWriter, r *http.Request) error {
	to, from := form.ParseGroup(r.FormValue("to")), r.FormValue("from")
	there, err := s.store.Groups(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	is := func(g db.Grouped) bool { return g.Name == from }
	if !slices.ContainsFunc(there, is) {
		return golf.ErrNotFound
	}
	if !to.Sound() {
		return s.showCoaching(w, r, http.StatusUnprocessableEntity, coach.CoachingInput{Renamed: &coach.RenamedGroup{From: from, To: to}})
	}
	name := spelledAlike(to.Value, slices.DeleteFunc(there, is))[0]
	if err := s.store.RenameGroup(r.Context(), me(r).ID, from, name); err != nil {
		return err
	}
	return saved(w, r, paths.Roster{Group: name}.Address(), "groups")
}

// archive puts a pupil away, or brings the pupil back.
func (s *server) archive(w http.ResponseWriter, r *http.Request) error {
	about, err := s.pupil(r)
	if err != nil {
		return err
	}
	away, what := r.FormValue("away") != "", "unarchived"
	if away {
		what = "archived"
	}
	if err := s.store.ArchivePupil(r.Context(), me(r).ID, about.player.ID, away); err != nil {
		return err
	}
	return saved(w, r, about.pages.Overview()+"#arrange", what)
}
