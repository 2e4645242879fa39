package paths

import (
	"net/url"
	"strconv"

	"strokeledger/analysis/golf"
)

// Picture is where a hole is drawn.
func Picture(id golf.CourseID, hole int) string {
	return Course(id) + "/holes/" + strconv.Itoa(hole) + "/picture"
}

// PictureVersion is that page with an earlier drawing in its fields.
func PictureVersion(id golf.CourseID, hole, version int) string {
	return Picture(id, hole) + "?version=" + strconv.Itoa(version)
}

// PictureFile is the picture of a hole as a file.
func PictureFile(id golf.CourseID, hole int) string { return Picture(id, hole) + ".json" }

// UploadPicture is where such a file is sent.
func UploadPicture(id golf.CourseID, hole int) string { return Picture(id, hole) + "/file" }

// PictureBack is where a drawing is removed, or an earlier one restored.
func PictureBack(id golf.CourseID, hole int) string { return Picture(id, hole) + "/back" }

// Pictures lists the holes of a course with what is drawn of them.
func Pictures(id golf.CourseID) string { return Course(id) + "/pictures" }

// Play is where a player prepares a round: the courses, and the bag.
func (w Whose) Play() string { return w.at("/play") }

// RoundPlan is the plan of a round on a course, with the card to carry.
func (w Whose) RoundPlan(id golf.CourseID) string { return w.Play() + "/" + number(int64(id)) }

// CarryCard is the card to carry alone, for the phone.
func (w Whose) CarryCard(id golf.CourseID) string { return w.RoundPlan(id) + "/card" }

// Chance is how likely the target is on a course.
func (w Whose) Chance(id golf.CourseID) string { return w.RoundPlan(id) + "/chance" }

// Planned sets a round beside the plan of its course.
func (w Whose) Planned(course golf.CourseID, round golf.RoundID) string {
	return w.RoundPlan(course) + "/rounds/" + number(int64(round))
}

// HolePlan is where to aim on a hole; flag is where the hole is cut, empty for the
// middle of the green.
func (w Whose) HolePlan(id golf.CourseID, hole int, flag string) string {
	at := w.RoundPlan(id) + "/holes/" + strconv.Itoa(hole)
	if flag != "" {
		at += "?" + url.Values{"flag": {flag}}.Encode() + "#approach"
	}
	return at
}

// HoleAdvice is where a coach says something of a hole, or proposes a club and an aim.
func (w Whose) HoleAdvice(id golf.CourseID, hole int) string {
	return w.HolePlan(id, hole, "") + "/advice"
}

// AnswerAdvice is where the player takes or declines such a proposal.
func (w Whose) AnswerAdvice(id golf.CourseID, hole int) string {
	return w.HoleAdvice(id, hole) + "/answer"
}

// Bag is the clubs of a player, with the balls hit on the range.
func (w Whose) Bag() string { return w.at("/bag") }

// Range is where balls hit on the range are entered.
func (w Whose) Range() string { return w.Bag() + "/range" }

// RemoveRange removes a range session.
func (w Whose) RemoveRange(id int64) string { return w.Range() + "/" + number(id) + "/remove" }
