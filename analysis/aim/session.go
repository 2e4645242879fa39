package aim

import (
	"fmt"
	"math"
	"strings"
)

// The limits of a range session.
const (
	MaxBalls  = 200
	maxOffYds = 300 // yd from the aim
)

// ParseBalls reads a session, a ball a line: yards left or right of the aim, then
// yards short or long, as "-8 3", "8 left, 3 long" or "12 right, 5 short".
func ParseBalls(text string) ([]Ball, Faults) {
	var all []Ball
	var faults Faults
	if len(text) > MaxBytes {
		return nil, Faults{{What: fmt.Sprintf("the session has %d bytes; allowed: at most %d", len(text), MaxBytes)}}
	}
	line := 0
	for row := range strings.SplitSeq(text, "\n") {
		line++
		words := rowWords(row)
		if len(words) == 0 {
			continue
		}
		b, err := parseBall(words)
		switch {
		case err != nil:
			faults = append(faults, Fault{Line: line, What: err.Error()})
		case len(all) == MaxBalls:
			return all, append(faults, Fault{Line: line, What: fmt.Sprintf("more than %d balls", MaxBalls)})
		default:
			all = append(all, b)
		}
	}
	return all, faults
}

const ballRow = "8 left, 3 long"

// parseBall reads the words of one ball.
func parseBall(words []string) (Ball, error) {
	var b Ball
	for _, axis := range []struct {
		to          *float64
		minus, plus string
	}{{&b.Side, "left", "right"}, {&b.Long, "short", "long"}} {
		if len(words) == 0 {
			return b, fmt.Errorf("a number is missing; such as: %s", ballRow)
		}
		x, err := parseNumber(words[0])
		if err != nil {
			return b, fmt.Errorf("%w; such as: %s", err, ballRow)
		}
		if words = words[1:]; len(words) > 0 && (words[0] == axis.minus || words[0] == axis.plus) {
			if x < 0 {
				return b, fmt.Errorf("%s %s; such as: %s", plain(x), words[0], ballRow)
			}
			if words[0] == axis.minus {
				x = 0 - x
			}
			words = words[1:]
		}
		if math.Abs(x) > maxOffYds {
			return b, fmt.Errorf("%s yd from the aim; allowed: at most %d", plain(x), maxOffYds)
		}
		*axis.to = x
	}
	return b, nothingElse(words, ballRow)
}
