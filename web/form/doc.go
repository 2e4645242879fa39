// Package form reads what a person typed: the text stays as it was, beside what
// it meant and what was wrong with it, in one value, so that a page can show
// all three again.
//
// It answers "what did this mean?" and refuses to guess: what is not allowed is
// said beside the place, with what is. What is allowed but unlikely, or may well
// have been meant otherwise, is asked.
//
// A field of a form is a Field: a Text, Number, Whole, Day, Length, Unit or a
// choice. A form is a struct of fields, with a function that reads it from what
// was sent and a method Sound, such as Settings, RoundStart or CourseForm. What a
// field may hold is written once, in analysis/golf.
//
// # The line of a hole
//
// A hole is typed in one line. Its grammar, in any letter case:
//
//	line      = gap, ( score | first, { break, item }, [ break, score ] ), gap ;
//	first     = "t", { mark }, [ ending ], [ club ] | item ;
//	item      = shot, { mark }, [ ending ], [ club ]
//	          | mark, { mark }, [ ending ], [ club ]
//	          | ending, [ club ]
//	          | club
//	          | [ lie, gap ], [ about, gap ], number, break, unit ;
//	shot      = [ lie, gap ], [ about, gap ], number, measure
//	          | about, lie, [ about ], number, measure
//	          | [ about, gap ], number, measure, lie, [ about ] ;
//	measure   = [ about ], [ unit ], [ about ] ;
//	lie       = "t" | "f" | "r" | "b" | "v" | "g" ;
//	unit      = "ft" | "yd" | "m" | "p" ;
//	about     = "~" ;
//	number    = digit, { digit }, [ ".", { digit } | ",", digit, { digit } ] ;
//	mark      = "s", [ number ] | "x" | "w" | "u" | "u2" | "d" | "+", gap, digit, { digit } ;
//	ending    = "-" | "h" ;
//	club      = "/", { ? any character but white space ? } ;
//	score     = "=", gap, digit, { digit } ;
//	break     = separator, gap ;
//	gap       = { separator } ;
//	separator = "," | ? white space ? ;
//	digit     = "0" | "1" | "2" | "3" | "4" | "5" | "6" | "7" | "8" | "9" ;
//
// A line has at most 500 bytes and no control character. What the grammar does
// not say:
//
//   - A shot is described by where it was played from. The tee shot is played from the
//     card's length and needs an item only when there is something to say about it.
//   - The letter may be left out to repeat the lie before; so a bare number on the
//     green is the next putt. Nothing but a letter can follow the tee.
//   - v is a recovery, a lie from which a stroke at the green is blocked; p are
//     paces of a yard. Without a unit the number is in the player's own. A "~" says
//     that the distance is not remembered well; it counts all the same.
//   - Marks follow the shot that went there. x: lost or out of bounds, a stroke,
//     and another from the same spot, which costs nothing itself. w: penalty area;
//     u: unplayable, a stroke each. u2: unplayable in a bunker, dropped outside; d:
//     the local rule for a lost ball, two strokes each. +n: any other penalty of 1 to
//     9 strokes. After w, u, u2 and d the next shot is the drop, so x cannot stand
//     behind them. Behind x stands what the second ball did: xx, xw and x+1 are two
//     balls, and +1x is one that cost a stroke more before it was lost.
//   - s is the short side, with the yards of green where they are known. It is said
//     of a spot, so of every ball that was played from there.
//   - "-": picked up, the last shot lay there and was not played. h: holed, needed
//     only for a hole in one. Behind them nothing but the score may stand.
//   - A score is 1 to 99. Behind shots it checks them; alone it is the whole line,
//     and the hole is known by its score only.
//
// A comma between two digits is a decimal comma, as in g2,5, unless the line
// shows that its commas stand between shots: one stands against a letter with no
// space around it, as in f140,g30,3; several follow each other, as in 30,3,2; or
// the number has a point as well. A decimal comma behind two or more digits and a
// separating comma between two single digits are asked about. A comma behind a
// slash belongs to the name of the club, which ends at white space.
//
// # The card of a course as text
//
// A card is pasted with a line for each hole:
//
//	card      = { heading }, { hole } ;
//	heading   = { ? any character but a digit or a line end ? }, end ;
//	hole      = blank, [ position, between ], par, between, length, [ between, index ], blank, end ;
//	position  = { "#" }, figures, { "." | ":" | ")" } ;
//	par       = "3" | "4" | "5" | "6" ;
//	length    = figures, [ ( "." | "," ), figures ], [ blank, unit ] ;
//	unit      = "m" | "metre" | "metres" | "meter" | "meters"
//	          | "y" | "yd" | "yds" | "yard" | "yards" ;
//	index     = figures ;
//	figures   = digit, { digit } ;
//	digit     = "0" | "1" | "2" | "3" | "4" | "5" | "6" | "7" | "8" | "9" ;
//	between   = ( ";" | "," | " " | ? tab ? ), { ";" | "," | " " | ? tab ? } ;
//	blank     = { " " | ? tab ? } ;
//	end       = ? line end ? ;
//
// What the grammar does not say:
//
//   - A unit may be written in any letter case. Without one the number is in the
//     player's own.
//   - A comma between digits is a decimal comma where two digits or more stand
//     before it, one or two behind it, and the line has a space, a tab or a
//     semicolon as well.
//   - The first number of a line is the position of the hole when those numbers rise
//     from line to line, and either there are more than four lines or every second
//     number is a par and a line has a third.
//   - An empty line does not count. A card has at most 18 holes; what the numbers may
//     be is checked when the card is read.
package form
