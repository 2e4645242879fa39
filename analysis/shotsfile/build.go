package shotsfile

import (
	"strconv"

	"strokeledger/analysis/golf"
)

// build is a round in the making, with the lines that its shots stand on.
type build struct {
	golf.Round
	shots []golf.Shot // of all holes so far
	lines []int       // of the shots
	holes uint32      // numbers that have begun, a bit each

	hole     golf.Hole // at hand; Number 0 when there is none
	from     int       // its first shot
	next     int       // the number that its next shot must have
	pickedAt int       // line that says picked up, 0 when none
	doubtful bool      // a row of it could not be read, so its rules are not checked
}

// begin begins the round of a row, with room for the usual number of shots.
func begin(row row) build {
	return build{
		Round: golf.Round{ID: row.round, Date: row.date, Player: row.player, Course: row.course, Tee: row.tee,
			Holes: make([]golf.Hole, 0, 18)},
		shots: make([]golf.Shot, 0, 96), lines: make([]int, 0, 96),
	}
}

// unsure notes that a row was lost, so that no rule is said to be broken for
// want of it.
func (b *build) unsure() { b.doubtful, b.next = true, 0 }

// add adds a row of the round. A row whose hole is not known leaves it unsure.
func (b *build) add(row row, faults *Faults) {
	b.sameRound(row, faults)
	if row.hole == 0 {
		b.unsure()
		return
	}
	if row.hole != b.hole.Number {
		b.endHole(faults)
		b.beginHole(row, faults)
	}
	b.sameHole(row, faults)
	b.shots = append(b.shots, row.shot)
	b.lines = append(b.lines, row.line)
	b.doubtful = b.doubtful || !row.sound
}

// sameRound reports what may not change inside a round.
func (b *build) sameRound(row row, faults *Faults) {
	if b.Date.IsZero() {
		b.Date = row.date
	}
	if row.date != b.Date && !row.date.IsZero() {
		changed(row.line, colDate, b.Date.String(), row.date.String(), faults)
	}
	for _, c := range [...]struct {
		column    column
		was, read string
	}{{colCourse, b.Course, row.course}, {colTee, b.Tee, row.tee}, {colPlayer, b.Player, row.player}} {
		if c.was != c.read && (row.sound || c.read != "") {
			changed(row.line, c.column, c.was, c.read, faults)
		}
	}
}

// changed notes that a column differs from the rows before.
func changed(line int, c column, was, read string, faults *Faults) {
	faults.add(line, c.String(), "changes inside a round", read, "the same in every row of a round, here "+strconv.Quote(was))
}

// beginHole begins the hole of a row, which may not have been there before.
func (b *build) beginHole(row row, faults *Faults) {
	b.hole = golf.Hole{Number: row.hole, Par: row.par, ScoreOnly: row.scoreOnly}
	b.from, b.next, b.pickedAt, b.doubtful = len(b.shots), 1, 0, false
	if row.hole > 31 {
		return // the rules of a hole will say so
	}
	if b.holes&(1<<row.hole) != 0 {
		faults.add(row.line, colHole.String(), "hole comes again", strconv.Itoa(row.hole), "the rows of a hole together")
	}
	b.holes |= 1 << row.hole
}

// sameHole reports what is wrong with the place of a row on its hole.
func (b *build) sameHole(row row, faults *Faults) {
	if row.par != 0 && row.par != b.hole.Par && b.hole.Par != 0 {
		faults.add(row.line, colPar.String(), "changes inside a hole", strconv.Itoa(row.par), "the same in every row of a hole, here "+strconv.Itoa(b.hole.Par))
	}
	if b.next > 0 && row.number != 0 && row.number != b.next {
		faults.add(row.line, colShot.String(), "out of order", strconv.Itoa(row.number), strconv.Itoa(b.next)+" here")
	}
	if row.number != 0 {
		b.next = row.number + 1
	}
	if b.pickedAt > 0 {
		faults.add(b.pickedAt, colPickedUp.String(), "not the last row of the hole", "yes", "yes on the last row of a hole only")
		b.pickedAt, b.hole.PickedUp = 0, false
	}
	if row.pickedUp {
		b.pickedAt, b.hole.PickedUp = row.line, true
	}
	if row.scoreOnly != 0 && len(b.shots) > b.from {
		faults.add(row.line, colScoreOnly.String(), "not the first row of the hole", strconv.Itoa(row.scoreOnly), "the only row of a hole")
	}
}

// endHole puts the hole at hand into the round and checks its rules.
func (b *build) endHole(faults *Faults) {
	if b.hole.Number == 0 {
		return
	}
	h := b.hole
	h.Shots = b.shots[b.from:]
	b.hole = golf.Hole{}
	b.Holes = append(b.Holes, h)
	if b.doubtful {
		return
	}
	for _, p := range h.Check() {
		faults.add(b.lines[b.from+max(p.Shot-1, 0)], p.Field, p.What, p.Read, p.Allowed)
	}
}

// end returns the finished round. Its holes share one slice of shots, cut so that
// appending to one does not write into the next.
func (b *build) end(faults *Faults) golf.Round {
	b.endHole(faults)
	from := 0
	for i := range b.Holes {
		n := len(b.Holes[i].Shots)
		b.Holes[i].Shots = b.shots[from : from+n : from+n]
		from += n
	}
	return b.Round
}
