package golfer

// spec describes a parameter: what it is, where a calibration starts and is
// drawn back to, and which of its three numbers it may move.
type spec struct {
	name, unit, meaning string
	start               Skill
	free                moves
	prior               float64 // how far the prior lets it wander, 0: as priorSpread says
}

// moves says which numbers of a Skill a calibration may move.
type moves uint8

const (
	base moves = 1 << iota
	slope
	curve
	growth = slope | curve
	all    = base | growth
)

// specs lists the parameters in the order of their keys. The starting values
// are a prototype's, fitted to the same published figures; there is no
// published source for them, so a calibration treats them as a weak prior.
var specs = [parameterCount]spec{
	drive:          {"drive", "yd", "length of a sound tee shot with full reach", Skill{277, -.261, -.029}, all, 0},
	angle10:        {"angle 10", "deg", "spread of direction of a 10 yd shot from the fairway", Skill{3.43, 0, 0}, base, 0},
	angle40:        {"angle 40", "deg", "the same at 40 yd", Skill{2.98, 0, 0}, base, 0},
	angle110:       {"angle 110", "deg", "the same at 110 yd", Skill{1.62, 0, 0}, base, 0},
	angle180:       {"angle 180", "deg", "the same at 180 yd", Skill{2.49, 0, 0}, base, 0},
	angle260:       {"angle 260", "deg", "the same at 260 yd, the driver", Skill{3.61, 0, 0}, base, 0},
	shortAngle:     {"short angle growth", "", "growth with t of the spread of direction at 10 and 40 yd", Skill{1, .358, -.057}, growth, 0},
	longAngle:      {"long angle growth", "", "the same at 110 and 180 yd", Skill{1, .821, -.045}, growth, 0},
	driverAngle:    {"driver angle growth", "", "the same at 260 yd", Skill{1, .804, -.045}, growth, 0},
	length10:       {"length 10", "share", "spread of length of a 10 yd shot from the fairway, as a share of its length", Skill{.198, 0, 0}, base, 0},
	length40:       {"length 40", "share", "the same at 40 yd", Skill{.099, 0, 0}, base, 0},
	length110:      {"length 110", "share", "the same at 110 yd", Skill{.065, 0, 0}, base, 0},
	length180:      {"length 180", "share", "the same at 180 yd", Skill{.043, 0, 0}, base, 0},
	length260:      {"length 260", "share", "the same at 260 yd", Skill{.068, 0, 0}, base, 0},
	shortLength:    {"short length growth", "", "growth with t of the spread of length at 10 and 40 yd", Skill{1, .358, -.057}, growth, 0},
	longLength:     {"long length growth", "", "the same at 110 yd and beyond", Skill{1, .821, -.045}, growth, 0},
	longMishit:     {"long mishit", "chance", "a full shot struck badly, before it saturates", Skill{.010, 3.36, -.77}, all, 0},
	badLength:      {"bad length", "share", "how far a badly struck full shot goes, as a share of its target", Skill{.74, 0, 0}, base, .2},
	shortMishit:    {"short mishit", "chance", "a chip or pitch struck fat or thin, before it saturates", Skill{.008, 2.56, -.60}, all, .8},
	thinOdds:       {"thin odds", "to one", "thin chips and pitches for each fat one", Skill{.667, 0, 0}, base, .5},
	fatLength:      {"fat length", "share", "how far a fat chip or pitch goes, as a share of its target", Skill{.45, 0, 0}, base, 0},
	thinLength:     {"thin length", "share", "how far a thin one goes", Skill{1.6, 0, 0}, base, 0},
	fluff:          {"fluff", "chance", "a chip or pitch that hardly moves the ball, before it saturates", Skill{.004, 2.5, -.6}, all, .8},
	sandFails:      {"sand fails", "chance", "a shot from sand near the green that stays in the sand, before it saturates", Skill{.012, 2.6, -.6}, all, .8},
	sandMishit:     {"sand mishit", "factor", "bad strikes from sand for each from the fairway", Skill{1.6, 0, 0}, base, 0},
	recoveryFails:  {"recovery fails", "chance", "a ball in trouble stays in trouble, before it saturates", Skill{.044, 1.36, -.27}, all, 0},
	bunkerShort:    {"bunker short", "factor", "spread of a greenside bunker shot against the fairway", Skill{1.30, .25, -.05}, all, 0},
	bunkerMiddle:   {"bunker middle", "factor", "spread of a bunker shot of 60 to 100 yd", Skill{2.37, 0, 0}, base, 0},
	bunkerLong:     {"bunker long", "factor", "spread of a fairway bunker shot", Skill{1.76, 0, 0}, base, 0},
	roughShort:     {"rough short", "factor", "spread of a chip from rough", Skill{1.64, 0, 0}, base, 0},
	roughLong:      {"rough long", "factor", "spread of a full shot from rough", Skill{1.55, 0, 0}, base, 0},
	recoverySpread: {"recovery spread", "factor", "spread of a shot out of trouble", Skill{1.73, 0, 0}, base, 0},
	teeShort:       {"tee short", "factor", "spread of a par-3 tee shot", Skill{1.065, 0, 0}, base, 0},
	reachFairway:   {"reach fairway", "share", "longest shot from the fairway, as a share of the drive", Skill{.903, .022, 0}, base, 0},
	reachRough:     {"reach rough", "share", "the same from rough", Skill{.809, 0, 0}, base, 0},
	reachBunker:    {"reach bunker", "share", "the same from a bunker", Skill{.664, 0, 0}, base, 0},
	reachRecovery:  {"reach recovery", "share", "the same out of trouble", Skill{.392, 0, 0}, base, 0},
	recoveryAim:    {"recovery aim", "share", "how much of the distance a shot out of trouble tries for", Skill{.541, 0, 0}, base, 0},
	greenRadius:    {"green radius", "yd", "distance from the hole at which half the balls are on the green", Skill{13.5, 0, 0}, base, .05},
	greenEdge:      {"green edge", "yd", "softness of that edge", Skill{1.93, 0, 0}, base, 0},
	nearApron:      {"near apron", "share", "misses near the green that lie on fairway or fringe", Skill{.136, 0, 0}, base, 0},
	nearBunker:     {"near bunker", "share", "misses near the green that lie in sand", Skill{.179, 0, 0}, base, 0},
	nearRecovery:   {"near recovery", "share", "misses 40 yd from the hole that lie in trouble", Skill{.052, 0, 0}, base, 0},
	nearPenalty:    {"near penalty", "share", "misses near the green that cost a penalty", Skill{.0135, 0, 0}, base, 0},
	fairwayHalf:    {"fairway half width", "yd", "sideways distance at which half the balls are on the fairway", Skill{16.7, 0, 0}, base, 0},
	fairwayEdge:    {"fairway edge", "yd", "softness of that edge", Skill{3.9, 0, 0}, base, 0},
	fairwayBunker:  {"fairway bunkers", "share", "misses of the fairway that lie in sand", Skill{.077, 0, 0}, base, 0},
	recoveryFrom:   {"recovery from", "yd", "sideways distance at which trouble begins", Skill{32.7, 0, 0}, base, 0},
	recoveryShare:  {"recovery share", "share", "balls beyond it that lie in trouble", Skill{.28, 0, 0}, base, 0},
	penaltyFrom:    {"penalty from", "yd", "sideways distance at which penalties begin", Skill{66.8, 0, 0}, base, .6},
	penaltyShare:   {"penalty share", "share", "balls beyond it that cost a penalty", Skill{.118, 0, 0}, base, .6},
	penaltyGrowth:  {"penalty growth", "", "growth with t of both penalty shares", Skill{1, .069, 0}, slope, .6},
	puttAngle:      {"putt angle", "deg", "spread of a putt's start line", Skill{1.040, .528, -.143}, all, 0},
	puttLength:     {"putt length", "share", "spread of a putt's length", Skill{.0750, .783, -.267}, all, 0},
	puttReading:    {"putt reading", "ft", "length at which reading the line has made the spread of the start line 1.4 times as wide", Skill{33, 0, 0}, base | slope, .6},
	puttClose:      {"putt close", "factor", "spread of the start line right at the hole against the same golfer's from farther away", Skill{1, 0, 0}, slope, 1},
}

// Start returns the parameters from which a calibration starts.
func Start() Parameters {
	var p Parameters
	for i, s := range specs {
		p[i] = s.start
	}
	return p
}
