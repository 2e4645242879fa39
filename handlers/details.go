package handlers

import (
	"errors"
	"fmt"
	"math"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/entry"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// Limits of par of a whole course.
const (
	par18Least = golf.MinPar18
	par18Most  = golf.MaxPar18
)

func (s *server) details(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.ofRound(r)
	if err != nil {
		return err
	}
	f := entry.DetailsInput{Values: map[string]string{"day": golf.DateOf(kept.PlayedOn).String(), "course": kept.Course, "tee": kept.Tee,
		"target": number(kept.Target), "par18": strconv.Itoa(kept.Par18), "note": kept.Conditions, "first_hole": strconv.Itoa(kept.FirstHole)}}
	for _, h := range kept.Holes {
		f.Values[entry.HoleField(entry.HolePar, h.Number)] = strconv.Itoa(h.Par)
		f.Values[entry.HoleField(entry.HoleLength, h.Number)] = lengthText(h.Length, unitsOf(me(r)).Far)
		if h.Index > 0 {
			f.Values[entry.HoleField(entry.HoleIndex, h.Number)] = strconv.Itoa(h.Index)
		}
	}
	return s.showDetails(w, r, http.StatusOK, kept, f)
}

func (s *server) showDetails(w http.ResponseWriter, r *http.Request, status int, kept db.Round, f entry.DetailsInput) (err error) {
	f.ID, f.Unit = kept.ID, unitsOf(me(r)).Far
	for _, h := range kept.Holes {
		f.Holes = append(f.Holes, h.Number)
	}
	if f.Courses, err = s.choices(r, f.Values["take"]); err != nil {
		return err
	}
	return show(w, r, status, entry.NewDetailsPage(shell(r), f).View())
}

// lengthText is a length as a field shows it, empty for one that nobody has told.
func lengthText(d golf.Distance, unit golf.Unit) string {
	if d == 0 {
		return ""
	}
	return form.WriteLength(d, unit)
}

// readLength reads the length of a hole that was typed.
func readLength(text string, unit golf.Unit, field string, problems map[string]string) golf.Distance {
	d, ok := form.ReadLength(text, unit)
	if !ok || d > golf.MaxDistance {
		problems[field] = "Allowed: over 0, at most " + number(math.Floor(unit.In(golf.MaxDistance))) + " " + unit.String() + "."
	}
	return d
}

// saveDetails puts right day, course, target and card of a round.
func (s *server) saveDetails(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.ofRound(r)
	if err != nil {
		return err
	}
	f := entry.DetailsInput{Values: map[string]string{}, Problems: map[string]string{}}
	for _, field := range []string{"day", "course", "tee", "target", "par18", "note", "first_hole", "take"} {
		f.Values[field] = strings.TrimSpace(r.FormValue(field))
	}
	taken, err := s.takenOver(r, kept, f)
	if err != nil {
		return err
	}
	to := readDetails(f, taken)
	to.First = whole(f.Values["first_hole"], 1, 18, "first_hole", f.Problems)
	if f.Problems["first_hole"] == "" && !slices.ContainsFunc(kept.Holes, func(h db.Hole) bool { return h.Number == to.First }) && to.First != kept.FirstHole {
		f.Problems["first_hole"] = "The round has no such hole."
	}
	for _, h := range kept.Holes {
		to.Holes = append(to.Holes, readHole(r, h, taken, f))
	}
	checkIndexes(to.Holes, f.Problems)
	if len(f.Problems) > 0 {
		return s.showDetails(w, r, http.StatusUnprocessableEntity, kept, f)
	}
	if err := s.store.SaveDetails(r.Context(), me(r).ID, kept.ID, to); err != nil {
		return err
	}
	return saved(w, r, paths.Round(kept.ID), "details")
}

// takenOver is the course of the server that the round is to take over; without
// an ID when there is none.
func (s *server) takenOver(r *http.Request, kept db.Round, f entry.DetailsInput) (db.Course, error) {
	if f.Values["take"] == "" {
		return db.Course{}, nil
	}
	n, _ := strconv.ParseInt(f.Values["take"], 10, 64)
	c, err := s.store.Course(r.Context(), golf.CourseID(n))
	if errors.Is(err, golf.ErrNotFound) {
		f.Problems["take"] = "That course is gone. Choose another."
		return db.Course{}, nil
	}
	if err == nil && !slices.ContainsFunc(kept.Holes, func(h db.Hole) bool { return onCard(c, h.Number) >= 0 }) {
		f.Problems["take"] = "It has none of the holes of this round."
	}
	return c, err
}

// onCard is the place of a hole on the card of a course, -1 for none.
func onCard(c db.Course, hole int) int {
	return slices.IndexFunc(c.Holes, func(h golf.CardHole) bool { return h.Number == hole && h.Length > 0 })
}

// readDetails reads what is not of a single hole, and notes what is wrong.
func readDetails(f entry.DetailsInput, taken db.Course) db.Details {
	to := db.Details{Course: f.Values["course"], Tee: f.Values["tee"], Conditions: f.Values["note"]}
	to.PlayedOn = dayOf(f.Values, "day", f.Problems).Time()
	to.Target = between(f.Values["target"], 68, 110, "target", f.Problems)
	if !sayable(to.Conditions, 300) {
		f.Problems["note"] = "Allowed: at most 300 letters, in one line."
	}
	if taken.ID != 0 {
		to.CourseID, to.Course, to.Tee = &taken.ID, taken.Name, taken.Tee
	}
	if to.Course == "" || !sayable(to.Course, 80) {
		f.Problems["course"] = "Allowed: 1 to 80 letters, in one line."
	}
	if !sayable(to.Tee, 80) {
		f.Problems["tee"] = "Allowed: at most 80 letters, in one line."
	}
	if len(taken.Holes) == 18 {
		to.Par18 = parOf(taken.Holes)
	} else {
		to.Par18 = whole(f.Values["par18"], par18Least, par18Most, "par18", f.Problems)
	}
	return to
}

// readHole reads the card of a hole: that of the course that is taken over, or
// what was typed. A length that stands as it was shown is the one that is kept,
// so that rounding changes nothing.
func readHole(r *http.Request, h db.Hole, taken db.Course, f entry.DetailsInput) golf.CardHole {
	name := func(field string) string {
		name := entry.HoleField(field, h.Number)
		f.Values[name] = strings.TrimSpace(r.FormValue(name))
		return name
	}
	par, length, index := name(entry.HolePar), name(entry.HoleLength), name(entry.HoleIndex)
	if i := onCard(taken, h.Number); i >= 0 {
		return taken.Holes[i]
	}
	card := golf.CardHole{Number: h.Number, Par: whole(f.Values[par], 3, 6, par, f.Problems), Length: h.Length}
	if unit := unitsOf(me(r)).Far; f.Values[length] != lengthText(h.Length, unit) {
		card.Length = readLength(f.Values[length], unit, length, f.Problems)
	}
	if f.Values[index] != "" {
		card.Index = whole(f.Values[index], 1, 18, index, f.Problems)
	}
	return card
}

// checkIndexes finds stroke indexes that stand twice.
func checkIndexes(card []golf.CardHole, problems map[string]string) {
	first := map[int]int{}
	for _, h := range card {
		if before, twice := first[h.Index]; twice && h.Index > 0 {
			problems[entry.HoleField(entry.HoleIndex, h.Number)] = fmt.Sprintf("Hole %d has it too.", before)
		} else {
			first[h.Index] = h.Number
		}
	}
}

// whole reads a whole number of a form that must lie between two ends.
func whole(text string, low, high int, field string, problems map[string]string) int {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil || n < low || n > high {
		problems[field] = fmt.Sprintf("Allowed: %d to %d.", low, high)
	}
	return n
}
