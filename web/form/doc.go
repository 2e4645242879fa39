// Package form reads what a person typed: the text stays as it was, beside what
// it meant and what was wrong with it, in one value, so that a page can show
// all three again.
//
// It answers "what did this mean?" and refuses to guess: what is not allowed is
// said beside the place, with what is. What is allowed but unlikely, or may well
// have been meant otherwise, is asked.
//
// # The line of a hole
//
// A hole is typed in one line. Its grammar, in any letter case:
//
//	line     = score | { sep }, [ tee, { sep, item } | item, { sep, item } ], { sep } ;
//	tee      = [ "t" | teeshot ], marks, [ club ] ;
//	item     = [ shot ], marks, [ club ] | score ;
//	teeshot  = "t", gap, distance | number, [ unit ], "t" ;
//	shot     = [ lie, gap ], distance | number, [ unit ], lie ;
//	lie      = "f" | "r" | "b" | "v" | "g" | "t" ;
//	distance = number, [ gap, unit ] ;
//	number   = digit, { digit }, [ ( "." | "," ), { digit } ] ;
//	unit     = "yd" | "m" | "ft" | "p" ;
//	marks    = { mark }, [ "-" | "h" ] ;
//	mark     = "s", [ number ]
//	         | "x" | "w" | "u" | "u2" | "d" | "+", gap, "1" … "9" ;
//	score    = "=", gap, digit, [ digit ] ;
//	club     = "/", { any letter but a space } ;
//	sep      = " " | "," ;
//	gap      = { sep } ;
//
// A "~" anywhere around the number of a distance says that it is not remembered
// well; it counts all the same. A unit behind a gap ends its item, and no item is
// empty.
//
// What the grammar does not say:
//
//   - A shot is told by where it was played from. The tee shot is played from the
//     card's length and needs an item only when there is something to say of it.
//   - The letter may be left out to repeat the lie before; so a bare number on the
//     green is the next putt. Nothing but a letter can follow the tee.
//   - v is a recovery, a lie from which a stroke at the green is blocked; p are
//     paces of a yard. Without a unit the number is in the player's own.
//   - Marks follow the stroke that went there. x: lost or out of bounds, a stroke,
//     and another from the same spot, which costs nothing itself. w: penalty area;
//     u: unplayable, a stroke each. u2: unplayable in a bunker, dropped outside; d:
//     the local rule for a lost ball, two strokes each. +n: any other penalty. After
//     w, u, u2 and d the next shot is the drop, so x cannot stand behind them.
//     Behind x stands what the second ball did: xx, xw and x+1 are two balls, and
//     +1x is one that cost a stroke more before it was lost.
//   - s is the short side, with the yards of green where they are known. It is said
//     of a spot, so of every ball that was played from there.
//   - "-": picked up, the last shot lay there and was not played. h: holed, needed
//     only for a hole in one. Behind them nothing but the score may stand.
//   - A score behind shots checks them; alone it is the whole line, and the hole is
//     known by its score only.
//
// A comma between two digits is a decimal comma, as in g2,5, unless the line
// shows that its commas stand between shots: one stands against a letter with no
// space around it, as in f140,g30,3; several follow each other, as in 30,3,2; or
// the number has a point as well. A decimal comma behind two or more digits and a
// separating comma between two single digits are asked about.
package form
