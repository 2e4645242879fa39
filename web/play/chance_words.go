package play

import (
	"strokeledger/analysis/forecast"
	"strokeledger/web/words"
)

// ifName is what a change is called in the table.
func ifName(c forecast.Change, target float64) string {
	as := "as " + words.A(target)
	switch c {
	case forecast.TeeShotsAsTarget:
		return "Tee shots " + as
	case forecast.ApproachAsTarget:
		return "Approach " + as
	case forecast.ShortGameAsTarget:
		return "Short game " + as
	case forecast.PuttingAsTarget:
		return "Putting " + as
	case forecast.ShortPutts:
		return "Putts of 6 ft and in " + as
	case forecast.NoCompounding:
		return "No second error after trouble"
	case forecast.Longer:
		return "15 yards longer"
	case forecast.PlansAims:
		return "The aims of the plan"
	default:
		return "One club less off the tee"
	}
}

// ifSentence is a change at the head of a sentence.
func ifSentence(c forecast.Change, target float64) string {
	switch c {
	case forecast.TeeShotsAsTarget, forecast.ApproachAsTarget, forecast.ShortGameAsTarget, forecast.PuttingAsTarget, forecast.ShortPutts:
		return "With " + lowerFirst(ifName(c, target))
	case forecast.Longer:
		return "With 15 yards more"
	case forecast.OneClubLess:
		return "With one club less off the tee"
	case forecast.PlansAims:
		return "With the aims of the plan"
	default:
		return "With " + lowerFirst(ifName(c, target))
	}
}

func lowerFirst(text string) string {
	if text == "" {
		return ""
	}
	return string(text[0]|0x20) + text[1:]
}
