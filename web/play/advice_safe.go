package play

import (
	"fmt"
	"slices"
	"strings"

	"strokeledger/analysis/aim"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

// asks reports whether there is something to take or decline.
func (a Advised) asks() bool { return a.Proposes || a.Safe != 0 }

// canStand reports whether it can be taken: its aim can be played, and its green is drawn.
func (a Advised) canStand(drawn bool) bool { return drawn && (a.Price != nil || !a.Proposes) }

// proposal is all that is proposed, in words.
func (a Advised) proposal(m measure) string {
	var all []string
	if a.Proposes {
		all = append(all, a.aim(m))
	}
	if a.Safe != 0 {
		all = append(all, a.Safe.String()+" as the safe side of the green")
	}
	return strings.Join(all, "; ")
}

// otherwise is the button that declines it.
func (a Advised) otherwise() string {
	if a.Proposes {
		return "Keep the best aim"
	}
	return "Keep the plan’s safe side"
}

// missed sets what a miss on the proposed side leaves beside the cheapest side, as both
// are printed, for the flag that the page shows.
func (a Advised) missed(in HoleInput) string {
	approach := in.approach()
	if approach == nil {
		return ""
	}
	i := slices.IndexFunc(approach.Misses, func(m aim.Missed) bool { return m.Side == a.Safe })
	if i < 0 {
		return ""
	}
	least := approach.Misses[0]
	text := fmt.Sprintf("A miss %s leaves %s on average", a.Safe, strokes(approach.Misses[i].Strokes))
	if in.Flag != "" {
		text = "At this flag a" + text[1:]
	}
	more := saved(approach.Misses[i].Strokes, least.Strokes)
	if more <= 0 {
		return text + ", and no side leaves less."
	}
	return fmt.Sprintf("%s, one %s %s: %s more.", text, least.Side, strokes(least.Strokes), strokes(more))
}

// safeTaken says who proposed the safe side that stands in the plan; empty for nobody.
func (in HoleInput) safeTaken() string {
	for _, a := range in.Advice {
		if a.Taken && in.Plan.Safe != 0 && a.Safe == in.Plan.Safe {
			return fmt.Sprintf("In the plan: %s, as %s proposes.", in.Plan.Safe, a.Coach)
		}
	}
	return ""
}

// safeField is where a coach proposes a safe side, beside the one that is worked out.
func safeField(in HoleInput, f form.HoleAdvice) (components.Field, []components.Choice) {
	field := components.Field{Name: "safe", Label: "Safe side of the green", Hint: "Worked out: any."}
	if a := in.approach(); a != nil && len(a.Safe) > 0 {
		field.Hint = "Worked out: " + sides(a.Safe) + "."
	}
	all := []components.Choice{{Name: "As worked out", Chosen: f.Safe.Value == ""}}
	for _, s := range form.SafeSides {
		all = append(all, components.Choice{Value: s, Name: words.Capital(s), Chosen: s == f.Safe.Value})
	}
	return components.Filled(field, f.Safe), all
}
