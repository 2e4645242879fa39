package paths

import (
	"net/url"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
)

// Plan says what to practise.
func (w Whose) Plan() string { return w.at("/plan") }

// Plans is where a plan is taken.
func (w Whose) Plans() string { return w.at("/plans") }

// TakenPlan is a plan as it was taken, beside what came since.
func (w Whose) TakenPlan(id int64) string { return w.Plans() + "/" + number(id) }

// RemovePlan removes a plan that was taken.
func (w Whose) RemovePlan(id int64) string { return w.TakenPlan(id) + "/remove" }

// PlanOf says what to practise, by the latest rounds of a span; of all rounds for the
// zero value.
func (w Whose) PlanOf(span golf.Span) string {
	if span == (golf.Span{}) {
		return w.Plan()
	}
	return w.Plan() + "?" + url.Values{"span": {span.String()}}.Encode()
}

// PlanFor is the place of a part of the game in that plan.
func (w Whose) PlanFor(part golf.Category, span golf.Span) string {
	return w.PlanOf(span) + "#" + PlanPlace(part)
}

// PlanPlace is the place of a part of the game on the page of a plan.
func PlanPlace(part golf.Category) string {
	return "plan-" + strings.ReplaceAll(part.String(), " ", "-")
}

// Drill is how a drill is set up, and its mark for the player.
func (w Whose) Drill(key string) string { return w.at("/drills/" + url.PathEscape(key)) }

// DrillFrom is that page with the drill played from some feet; 0 for where it usually
// is.
func (w Whose) DrillFrom(key string, feet float64) string {
	if feet == 0 {
		return w.Drill(key)
	}
	return w.Drill(key) + "?feet=" + strconv.FormatFloat(feet, 'f', -1, 64)
}

// RunOut is the player's run-out book.
func (w Whose) RunOut() string { return w.at("/run-out") }

// RunOutFile is the book as a file.
func (w Whose) RunOutFile() string { return w.at("/run-out.csv") }

// RemoveTrial removes a ball from the book.
func (w Whose) RemoveTrial(id int64) string { return w.RunOut() + "/" + number(id) + "/remove" }

// StartLine is how straight the player starts putts.
func (w Whose) StartLine() string { return w.at("/start-line") }

// DrillShowing is that page with the result of a session.
func (w Whose) DrillShowing(key string, session int64) string {
	return w.Drill(key) + "?session=" + number(session)
}

// DrillTyped is that page with a session in its form that is not saved yet.
func (w Whose) DrillTyped(key string, typed url.Values) string {
	return w.Drill(key) + "?" + typed.Encode()
}

// Log is every session of practice, by week.
func (w Whose) Log() string { return w.at("/log") }

// Session is where a session of a drill is changed.
func (w Whose) Session(id int64) string { return w.at("/sessions/" + number(id)) }

// RemoveSession removes a session of a drill.
func (w Whose) RemoveSession(id int64) string { return w.Session(id) + "/remove" }
