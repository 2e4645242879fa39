package analysis

import (
	"cmp"
	"slices"

	"strokeledger/analysis/practice"
)

// LessonDrills is how many drills a group lesson has at most, and LessonTries how many
// tries everybody has at each, or as many more as make whole sets. Our own choice: what
// an hour holds.
const (
	LessonDrills = 3
	LessonTries  = 20
)

// LessonDrill is something to practise together.
type LessonDrill struct {
	SharedRow                 // of what it serves; everybody in it whose game is known, who loses most beyond the usual first
	Drill     practice.Drill  // of the house
	Marks     []practice.Mark // of those in the row, for their targets; zero for a drill without one
	Named     bool            // somebody loses more there than is usual, beyond luck
}

// Lesson answers "what can these players practise together, and what is good enough
// for each?": the bands in which most is lost beyond the usual, or the row of a name, as
// compare.Row is written. Rounds count as for Shared.
func (e *Engine) Lesson(players []Player, most int, name string) ([]LessonDrill, error) {
	games, err := e.games(players, most)
	if err != nil {
		return nil, err
	}
	var all []LessonDrill
	for _, row := range lessonFor(games, name) {
		l, err := e.lessonDrill(row, games)
		if err != nil {
			return nil, err
		}
		if len(all) < LessonDrills && !slices.ContainsFunc(all, func(o LessonDrill) bool { return o.Drill.Key == l.Drill.Key }) {
			all = append(all, l)
		}
	}
	return all, nil
}

// lessonFor are the rows that a lesson may be about, the dearest first: that of the name,
// or the bands in which somebody is named, or the dearest of all when nobody is.
func lessonFor(games []*practice.Game, name string) []SharedRow {
	var named, all []SharedRow
	for _, row := range lessonRows() {
		if row.Row.String() == name {
			return []SharedRow{row}
		}
		if row.Whole() {
			continue
		}
		in := row
		if in.add(games, practice.Estimate.Named); len(in.Who) > 0 {
			named = append(named, in)
		}
		if row.add(games, func(practice.Estimate) bool { return true }); len(row.Who) > 0 {
			all = append(all, row)
		}
	}
	slices.SortStableFunc(named, func(a, b SharedRow) int { return cmp.Compare(b.Much, a.Much) })
	slices.SortStableFunc(all, func(a, b SharedRow) int { return cmp.Compare(b.Much, a.Much) })
	if len(named) == 0 {
		return all[:min(1, len(all))]
	}
	return named
}

// lessonDrill finds the drill of a row, and the mark of everybody.
func (e *Engine) lessonDrill(row SharedRow, games []*practice.Game) (LessonDrill, error) {
	l := LessonDrill{SharedRow: SharedRow{Row: row.Row, band: row.band}}
	l.add(games, func(practice.Estimate) bool { return true })
	l.Named = slices.ContainsFunc(l.Who, func(u Unusual) bool { return u.Named() })
	var err error
	if l.Drill, err = practice.Serving(row.served(games)); err != nil || l.Drill.NoMark {
		l.Marks = make([]practice.Mark, len(l.Who))
		return l, err
	}
	for _, u := range l.Who {
		g := games[u.Player]
		target, err := l.Drill.Chances(&e.golfer, g.Target)
		if err != nil {
			return l, err
		}
		today, err := l.Drill.Chances(&e.golfer, max(g.Played[l.Drill.Part], g.Target))
		if err != nil {
			return l, err
		}
		l.Marks = append(l.Marks, practice.MarkOf(target, today, l.Drill.Sets(LessonTries)))
	}
	return l, nil
}

// served is the band that a drill of the row is to serve: its own, or the band of the
// part in which most is lost beyond the usual.
func (r *SharedRow) served(games []*practice.Game) int {
	best, most := r.band, 0.
	if best >= 0 {
		return best
	}
	for _, row := range lessonRows() {
		if row.Category != r.Category || row.Whole() {
			continue
		}
		row.add(games, func(practice.Estimate) bool { return true })
		if best < 0 || row.Much > most {
			best, most = row.band, row.Much
		}
	}
	return best
}
