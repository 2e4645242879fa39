package coach

import (
	"fmt"
	"math"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// RosterRow is one pupil: a line that opens.
type RosterRow struct {
	Name  string
	Day   string // of the latest round, or that there is none
	Score string // of that round; empty for none
	Over  string // its target, with a sign; empty for none
	Holes string // of how many holes, unless 18
	Round string // strokes a round over the last ten; empty without one
	Parts []RosterPart
	Whole figures.SplitBar // the parts on one bar, for a narrow screen
	Sum   string           // names what the parts add up to, for those who check it
	Words []RosterWord     // what is new, clear or late; none for nothing
	Open  RosterOpen
}

// RosterPart is what a part of the game loses a round.
type RosterPart struct {
	Name   string
	Bar    chart.Bar
	Figure string // in tenths, with a sign; empty without a round
}

// RosterWord is a word at the end of the line.
type RosterWord struct {
	Class string // flag-word for what is new, clear-word, leaning-word or late-word
	Text  string
}

// RosterOpen is what shows when a line is opened.
type RosterOpen struct {
	Target   string
	Lost     string // strokes a round by part; empty without a round
	Plays    string // what each part plays to
	Doubles  string // empty without a round
	Month    string // how many rounds this month
	Practice string
	Late     string // by how many days practice is late; empty when not
	Since    string // from which day on the coach sees rounds; empty for everything
	Groups   string // empty for none
	Links    []components.Link
}

func newRosterRow(p *RosterPupil, today golf.Date) RosterRow {
	r := RosterRow{Name: p.Name, Day: "no rounds yet", Sum: fmt.Sprintf("pupil-%d", p.ID), Words: p.words(today), Open: p.opened(today)}
	if p.Holes > 0 {
		r.Day, r.Score = words.NearDay(p.Last, today), words.Score(p.Score, p.Lifted)
		r.Over = words.Signed(math.Round(p.Score)-p.HolesTarget, places(p.HolesTarget))
		if p.Holes != 18 {
			r.Holes = fmt.Sprintf(" on %d", p.Holes)
		}
	}
	r.parts(&p.Form)
	return r
}

// places is how many decimals a target is written with.
func places(target float64) int { return words.Tally(target != math.Trunc(target)) }

// parts fills in what the parts lose; the tenths add up to what all lose.
func (r *RosterRow) parts(f *compare.Form) {
	if f.Rounds == 0 {
		for _, c := range golf.Categories {
			r.Parts = append(r.Parts, RosterPart{Name: words.Capital(c.String()), Bar: chart.Bar{Empty: true}})
		}
		return
	}
	all := figures.Tenth(f.Lost[0])
	r.Round = words.Signed(all, 1)
	split := figures.Split{Over: int(math.Round(all * 10))}
	for i, lost := range figures.Tenths(f.Lost[1:], all) {
		r.Parts = append(r.Parts, RosterPart{Name: words.Capital(golf.Categories[i].String()), Bar: partScale.Bar(lost), Figure: words.Signed(lost, 1)})
		split.Parts[i] = int(math.Round(lost * 10))
	}
	r.Whole = figures.NewAverageBar(split)
}

// words are what is new, then what has changed, then what is late.
func (p *RosterPupil) words(today golf.Date) []RosterWord {
	var all []RosterWord
	for _, n := range p.news() {
		all = append(all, RosterWord{Class: "flag-word", Text: n})
	}
	for _, c := range golf.Categories {
		change, way := p.Form.Changes[c], "better"
		if change.Mean > 0 {
			way = "worse"
		}
		switch change.Word {
		case compare.Clear:
			all = append(all, RosterWord{Class: "clear-word", Text: c.String() + " " + way + ", clear"})
		case compare.Leaning:
			all = append(all, RosterWord{Class: "leaning-word", Text: c.String() + " " + way + ", leaning"})
		}
	}
	if p.late(today) > 0 {
		all = append(all, RosterWord{Class: "late-word", Text: "practice late"})
	}
	if p.still(today) > 0 {
		all = append(all, RosterWord{Class: "flag-word", Text: "quiet"})
	}
	return all
}

// news counts what is new since the coach's visit before.
func (p *RosterPupil) news() []string {
	var all []string
	if len(p.Asked) > 0 {
		all = append(all, words.OneOrMany(len(p.Asked), "asks", fmt.Sprintf("asks %d times", len(p.Asked))))
	}
	for _, n := range []struct {
		count     int
		one, many string
	}{{p.Unread, "reply", "replies"}, {p.NewRounds, "new round", "new rounds"}, {p.Changed, "round corrected", "rounds corrected"}, {p.Results, "practice result", "practice results"}} {
		if n.count > 0 {
			all = append(all, words.Plural(n.count, n.one, n.many))
		}
	}
	return all
}

// opened is what shows when the line is opened.
func (p *RosterPupil) opened(today golf.Date) RosterOpen {
	pages := paths.Whose{Player: p.ID}
	o := RosterOpen{Target: words.Plain(p.Target), Month: words.Capital(words.SpelledPlural(p.Month, "round", "rounds")) + " this month.", Plays: p.plays(), Groups: words.List(p.Groups),
		Links: []components.Link{{Name: "Overview", At: pages.Overview()}, {Name: "Rounds", At: pages.Rounds()}, {Name: "Months", At: paths.Comparison{Whose: pages}.Months()},
			{Name: "Practice", At: pages.Lessons()}, {Name: "Report", At: pages.Report()}, {Name: "Groups and archive", At: pages.Overview() + "#arrange"}}}
	if f := &p.Form; f.Rounds > 0 {
		o.Lost = fmt.Sprintf("Over %s from %s:", words.SpelledPlural(f.Rounds, "round", "rounds"), words.NearDay(p.From, today))
		o.Doubles = fmt.Sprintf("%.1f doubles for 18 holes", f.Doubles)
		if f.Doubles > 0 {
			o.Doubles += ", " + words.Percent(f.Compound) + " of them compound"
		}
		o.Doubles += "."
	}
	switch late := p.late(today); {
	case p.DueWhat == "":
		o.Practice = "none set"
	case late > 0:
		o.Practice, o.Late = p.DueWhat, daysLate(late)
	default:
		o.Practice = p.DueWhat + ", " + words.DueDay(p.Due, today)
	}
	if !p.Since.IsZero() {
		o.Since = "Shared from " + words.NearDay(p.Since, today) + "."
	}
	return o
}

// plays says what each part of the game plays to.
func (p *RosterPupil) plays() string {
	var all []string
	for _, c := range golf.Categories {
		l := figures.NewPartLevel(figures.PartLevelInput{Part: c, Now: p.Form.Now[c], Before: p.Form.Before[c], Change: p.Form.Changes[c], Target: p.Target}, chart.NewRange(5, p.Target))
		text := c.String() + " " + l.Now
		if l.Interval != "" {
			text += " (" + l.Interval + ")"
		}
		all = append(all, text)
	}
	return words.List(all) + "."
}
