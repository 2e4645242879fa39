package handlers

import (
	"net/http"
	"slices"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// pupilsPage is the shell of a page about a pupil, and the pupil as the roster has
// them.
type pupilsPage struct {
	layout.Page
	pupil coach.RosterPupil
}

// shellOf is the shell of a page about a player. A coach's has the bar of the pupil,
// or stands without its last entry when the queue cannot be read.
func (s *server) shellOf(r *http.Request, about subject) layout.Page {
	if about.pages.Own {
		return shell(r)
	}
	page, err := s.ofPupil(r, about)
	if err != nil {
		s.options.Log.WarnContext(r.Context(), "a page of a pupil does not know the queue", "error", err)
	}
	return page.Page
}

// ofPupil is the shell of a page about a pupil.
func (s *server) ofPupil(r *http.Request, about subject) (pupilsPage, error) {
	page := pupilsPage{Page: shell(r)}
	page.Since = about.since
	facts := words.Plain(about.player.Target) + ", everything shared"
	if !about.since.IsZero() {
		facts = words.Plain(about.player.Target) + ", shared from " + words.ShortDay(about.since)
	}
	page.Pupil = &layout.PupilBar{Name: about.player.Name, Facts: facts, Pages: pupilPages(r.URL.Path, about.pages)}
	today := s.today(r)
	kept, err := s.store.Roster(r.Context(), me(r).ID, golf.Month(today.Year, today.Month).From)
	if err != nil {
		return page, err
	}
	pupils, err := s.rosterPupils(r, kept)
	if err != nil {
		return page, err
	}
	if i := slices.IndexFunc(pupils, func(p coach.RosterPupil) bool { return p.ID == about.player.ID }); i >= 0 {
		page.pupil = pupils[i]
	}
	if next, ok := coach.NextInQueue(pupils, about.player.ID, today); ok {
		page.Pupil.Turn = []layout.Turn{{At: next.At, Name: "Next in queue: " + next.Who}}
	}
	return page, nil
}

// pupilPages are the pages of a pupil; the one at an address, or under it, is the
// current one.
func pupilPages(here string, pages paths.Whose) []layout.Destination {
	all := []layout.Destination{{At: pages.Overview(), Name: "Overview"}, {At: pages.Rounds(), Name: "Rounds"}, {At: paths.Comparison{Whose: pages}.Months(), Name: "Months"},
		{At: pages.Lessons(), Name: "Practice"}, {At: pages.Plan(), Name: "Plan"}, {At: pages.Report(), Name: "Report"}}
	for i := range all {
		if all[i].At == here || i > 0 && strings.HasPrefix(here, all[i].At+"/") {
			all[i].Current = "page"
		}
	}
	return all
}

// turnRounds adds the rounds before and after one to the bar of its pupil.
func (s *server) turnRounds(r *http.Request, about subject, kept db.Round, page *layout.Page) error {
	if page.Pupil == nil {
		return nil
	}
	near, err := s.store.Neighbours(r.Context(), me(r).ID, about.player.ID, kept.ID, golf.DateOf(kept.PlayedOn))
	var turns []layout.Turn
	for _, n := range near {
		turns = append(turns, layout.Turn{At: about.pages.Round(n.ID), Name: words.NearDay(golf.DateOf(n.PlayedOn), s.today(r)), Back: !n.After, On: n.After})
	}
	page.Pupil.Turn = append(turns, page.Pupil.Turn...)
	return err
}
