package play

import (
	"fmt"

	"strokeledger/analysis"
	"strokeledger/analysis/aim"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// HoleInput is what the page of a hole's plan is made of.
type HoleInput struct {
	Whose    paths.Whose
	Player   string // the player's name, for a coach
	Course   golf.CourseID
	Name     string // of the course, with its tees
	Holes    []int  // of the course
	Hole     golf.CardHole
	Picture  aim.Picture
	Drawn    bool
	By       string // who drew it, and when
	As       analysis.PlaysAs
	Target   float64
	Unit     golf.Unit
	Plan     analysis.HolePlan
	Flag     string        // the place of the flag; empty for the middle
	Approach *aim.Approach // at that flag; nil for the plan's
	Shapes   []ShapedAim
	Advice   []Advised        // what coaches say of the hole
	Changed  bool             // the player answered what is not there any more
	Form     *form.HoleAdvice // what a coach typed; nil for what is kept
}

// ShapedAim is the best aim with the best club when the ball is bent on purpose.
type ShapedAim struct {
	Yd   float64 // right is positive
	Shot aim.TeeShot
}

// HolePage is where to aim on a hole.
type HolePage struct {
	layout.Page
	Heading  string
	At       string
	Lede     string
	Thin     string // that it is the target's golfer; empty otherwise
	Changed  string // that an answer was not recorded; empty otherwise
	Stands   string // what stands in the plan in place of the best aim; empty for nothing
	Sub      []components.Link
	Draw     components.Link
	Drawn    bool
	InWords  []string
	Tee      *TeeView // nil for a par 3, and for a hole that is not drawn
	Approach *ApproachView
	Advice   *AdviceView       // nil for nothing
	Around   []components.Link // the holes before and after
}

// TeeView is the tee shot: the map, the curve of costs, and the clubs.
type TeeView struct {
	Aside    string
	Map      Map
	FlatSaid string
	Curve    Curve
	BestName string
	ThatName string
	Shares   []ShareRow
	Clubs    []ClubRow
	Shapes   []ShapeRow
	Shaped   string // the club whose shapes they are
	Patterns string // what the patterns stand on
	Bag      string // where balls from the range are entered
}

// ClubRow is a club for the tee.
type ClubRow struct {
	Name, Length, Aim, Cost, Straight string
	Chosen                            bool
}

// ShapeRow is an aim with another shape.
type ShapeRow struct{ Name, Aim, Cost string }

// NewHolePage makes the page.
func NewHolePage(page layout.Page, in HoleInput) HolePage {
	page.Title, page.Here = fmt.Sprintf("Hole %d, %s", in.Hole.Number, in.Name), layout.Here(in.Whose, in.Whose.Play())
	page.Explained = "aims"
	page.Foot = "Costs are average strokes to hole out, " + in.playing() + ". Any single shot may do better or worse. Written notes are normally allowed under the Rules. Ask the committee about distance devices, green maps and advice during a round."
	p := HolePage{Page: page, Heading: fmt.Sprintf("Hole %d, %s", in.Hole.Number, in.Name), At: in.at(), Drawn: in.Drawn,
		Sub: subLinks(in.Whose, in.Course, ""), Draw: components.Link{Name: "Change the drawing", At: paths.Picture(in.Course, in.Hole.Number)}, Around: around(in)}
	m := measure{in.Unit}
	p.Advice, p.Changed = newAdviceView(m, in), in.changed()
	if !in.Drawn {
		p.Lede, p.Draw.Name = "This hole has not been drawn yet, so there is nothing to aim away from. Draw it to see where to aim.", "Draw it in a minute"
		return p
	}
	p.Thin = thinAs(in.As, in.Target)
	p.InWords = InWords(in.Picture)
	p.Stands = in.stands(m)
	approach := in.approach()
	if in.Plan.Advice.Approach == nil {
		p.Tee = newTeeView(m, in)
		p.Lede = teeLede(m, in.Plan.Advice)
	} else {
		p.Lede = approachLede(m, *approach)
	}
	if approach != nil {
		p.Approach = newApproachView(m, in, *approach)
	}
	return p
}

// playing says as whom a hole is played.
func (in HoleInput) playing() string {
	switch {
	case in.As.Thin.Any():
		return "for a golfer of the target"
	case in.Whose.Own:
		return "playing as you do now"
	default:
		return "as " + in.Player + " plays now"
	}
}

func (in HoleInput) at() string {
	text := fmt.Sprintf("Par %d, %s yd", in.Hole.Par, yards(in.Hole.Length.Yards()))
	if in.Hole.Index > 0 {
		text += fmt.Sprintf(", index %d", in.Hole.Index)
	}
	text += "."
	if in.Drawn {
		text += " " + asWords(in.Whose, in.Player, in.As) + " " + in.By + "."
	}
	return text
}

// asWords says for whom something is worked out.
func asWords(whose paths.Whose, player string, as analysis.PlaysAs) string {
	level := fmt.Sprintf("%.0f", as.Overall)
	switch {
	case as.Thin.Any():
		return fmt.Sprintf("For a golfer of %s.", level)
	case whose.Own:
		return fmt.Sprintf("For you as you play now: %s.", level)
	default:
		return fmt.Sprintf("For %s, who plays to %s now.", player, level)
	}
}

// thinAs says why it is the target's golfer; empty when it is the player.
func thinAs(as analysis.PlaysAs, target float64) string {
	if !as.Thin.Any() {
		return ""
	}
	return fmt.Sprintf("%s. Until then this is the golfer of the target, %s.", capital(words.Thin(as.Thin)), words.Plain(target))
}

// approach is the shot at the green; nil where there is none.
func (in HoleInput) approach() *aim.Approach {
	if in.Approach != nil {
		return in.Approach
	}
	if in.Plan.Advice.Approach != nil {
		return in.Plan.Advice.Approach
	}
	return in.Plan.Approach
}

// Shapes are by how many yards the ball is bent on purpose where shapes are compared.
// Common practice: a shape that can be seen moves about eight yards.
var Shapes = []float64{-8, 0, 8}

// around leads to the holes before and after.
func around(in HoleInput) []components.Link {
	var all []components.Link
	for i, n := range in.Holes {
		if n != in.Hole.Number {
			continue
		}
		if i > 0 {
			all = append(all, components.Link{Name: fmt.Sprintf("Hole %d", in.Holes[i-1]), At: in.Whose.HolePlan(in.Course, in.Holes[i-1], "")})
		}
		if i+1 < len(in.Holes) {
			all = append(all, components.Link{Name: fmt.Sprintf("Hole %d", in.Holes[i+1]), At: in.Whose.HolePlan(in.Course, in.Holes[i+1], "")})
		}
	}
	return all
}

// teeLede is the sentence of a tee shot.
func teeLede(m measure, a aim.Advice) string {
	best, straight := a.Best(), a.Straight()
	if !matters(saved(straight.Straight.Cost, best.Best.Cost)) {
		return fmt.Sprintf("The aim hardly matters here: %s down the middle costs %s strokes, and no aim saves %s or more.", straight.Club.Name, strokes(straight.Straight.Cost), strokes(aim.MattersFrom))
	}
	return fmt.Sprintf("%s, %s: %s strokes. %s down the middle: %s.", capital(best.Club.Name), m.ofMiddle(best.Best.Side), strokes(best.Best.Cost), capital(straight.Club.Name), strokes(straight.Straight.Cost))
}

func newTeeView(m measure, in HoleInput) *TeeView {
	a := in.Plan.Advice
	best, straight := a.Best(), a.Straight()
	v := &TeeView{Aside: teeAside(m, a), Curve: newCurve(m, a), Shares: shareRows(best.Best.Shares, straight.Straight.Shares),
		BestName: best.Club.Name + ", " + m.side(best.Best.Side), ThatName: straight.Club.Name + ", straight", FlatSaid: flatSaid(m, best), Shaped: best.Club.Name, Bag: in.Whose.Bag()}
	v.Map = NewMap("hole-map", fmt.Sprintf("Hole %d from above, the tee at the foot, with where nine balls in ten end: %s, and %s", in.Hole.Number, v.ThatName, v.BestName), in.Picture)
	tee := aim.Point{}
	v.Map.Patterns = []Rings{ringsOf(straightClass(false), tee, straight.Straight, 4), ringsOf(straightClass(true), tee, best.Best, 4)}
	for i, c := range a.Clubs {
		v.Clubs = append(v.Clubs, ClubRow{capital(c.Club.Name), m.distance(c.Club.Length), m.side(c.Best.Side), strokes(c.Best.Cost), strokes(c.Straight.Cost), i == 0})
	}
	for _, s := range in.Shapes {
		v.Shapes = append(v.Shapes, ShapeRow{shapeName(m, s.Yd), m.side(s.Shot.Best.Side), strokes(s.Shot.Best.Cost)})
	}
	v.Patterns = patternWords(m, a.Clubs)
	return v
}

// straightClass is the pattern of the best aim, or that of the straight one.
func straightClass(best bool) string {
	if best {
		return "pattern-best"
	}
	return "pattern-straight"
}

// teeAside says what the best aim keeps out of, and what it gives for that.
func teeAside(m measure, a aim.Advice) string {
	best, straight := a.Best(), a.Straight()
	text := trouble(best.Best.Shares, straight.Straight.Shares)
	if shorter := straight.Club.Length - best.Club.Length; best.Club.Name != straight.Club.Name && !m.none(shorter) {
		text += fmt.Sprintf(" The %s is %s shorter.", best.Club.Name, m.distance(shorter))
	}
	return text
}

// flatSaid says over how wide a strip the cost is the same within a hundredth.
func flatSaid(m measure, t aim.TeeShot) string {
	from, to := m.side(t.Flat[0]), m.side(t.Flat[1])
	if from == to {
		return ""
	}
	return fmt.Sprintf("Anywhere from %s to %s, the %s costs the same to within 0.01 of a stroke.", from, to, t.Club.Name)
}

func shapeName(m measure, yd float64) string {
	switch {
	case yd < 0:
		return "Curving " + m.distance(yd) + " left"
	case yd > 0:
		return "Curving " + m.distance(yd) + " right"
	default:
		return "The usual shape"
	}
}

// patternWords says what the patterns of the clubs stand on.
func patternWords(m measure, all []aim.TeeShot) string {
	text := ""
	for _, t := range all {
		p := t.Club.Pattern
		if !p.Known() {
			continue
		}
		on := ""
		if p.Balls > 0 {
			on = words.Plural(p.Balls, "ball", "balls") + " on the range"
		}
		if p.Shots > 0 {
			on = words.List(nonEmpty(on, words.Plural(p.Shots, "shot", "shots")+" of rounds"))
		}
		text += fmt.Sprintf("The %s’s pattern comes from %s: the middle of the pattern is %s of the aim, %s. ", t.Club.Name, on, biasWords(m, p.Side), biasSure(p))
	}
	if text == "" {
		return "Where balls finish is the usual pattern of the level. Balls hit on the range say more."
	}
	return text + "For clubs not named here it is the usual pattern of the level."
}

func nonEmpty(all ...string) []string {
	var some []string
	for _, text := range all {
		if text != "" {
			some = append(some, text)
		}
	}
	return some
}
