// Package handicap answers "what would my Handicap Index be?" from the scores
// of recorded rounds, by the World Handicap System (Rules of Handicapping 2024,
// USGA and The R&A).
//
// It refuses to issue one: only an authorised association does. What the rules
// leave to others is taken as it stands here: no playing conditions calculation
// (PCC 0), no review by a committee, every recorded round an acceptable score.
package handicap
