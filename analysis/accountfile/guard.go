package accountfile

import (
	"io"
	"unicode/utf8"
)

// guard passes a file on as long as it is UTF-8, not too large, not nested too
// deeply, and without a text or number so long that it would fill the memory.
type guard struct {
	in     io.Reader
	read   int    // bytes so far
	depth  int    // lists and objects that are open
	piece  int    // bytes of the text, number or white space at hand; the decoder scans it from its start each time more of it arrives
	quoted bool   // inside a text
	escape bool   // behind a backslash in a text
	last   int    // bytes after which a value that is read whole is too long; 0 for none
	half   []byte // the beginning of a letter whose end is still to come
}

// atATime is how many bytes the decoder is given at a time, so that it is never far ahead
// of what it decodes.
const atATime = 4 << 10

// Read passes on what it read, or the fault in it.
func (g *guard) Read(p []byte) (int, error) {
	n, err := g.in.Read(p[:min(len(p), atATime)])
	switch g.read += n; {
	case g.read > MaxBytes:
		return 0, faulty("the file is larger than %d MiB, the most that is allowed", MaxBytes>>20)
	case g.last != 0 && g.read > g.last:
		return 0, faulty("more bytes than are allowed")
	}
	if fault := g.look(p[:n]); fault != nil {
		return 0, fault
	}
	if err == io.EOF && len(g.half) > 0 {
		return 0, errNotUTF8
	}
	return n, err
}

var errNotUTF8 = faulty("the file is not text in UTF-8")

// look checks the next bytes of the file.
func (g *guard) look(data []byte) error {
	if !g.whole(data) {
		return errNotUTF8
	}
	for _, c := range data {
		g.take(c)
		switch {
		case c == 0:
			return faulty("the file contains a NUL byte")
		case g.depth > deepest:
			return faulty("the file is nested more than %d deep", deepest)
		case g.piece > longestPiece:
			return faulty("a text, number or space is longer than %d bytes", longestPiece)
		}
	}
	return nil
}

// take follows the brackets and quotes of JSON over one byte. It need not know
// whether the file is JSON: the decoder does.
func (g *guard) take(c byte) {
	g.piece++
	switch {
	case g.escape:
		g.escape = false
	case g.quoted && c == '\\':
		g.escape = true
	case c == '"':
		g.quoted, g.piece = !g.quoted, 0
	case g.quoted:
	case c == '{' || c == '[':
		g.depth, g.piece = g.depth+1, 0
	case c == '}' || c == ']':
		g.depth, g.piece = g.depth-1, 0
	case c == ',' || c == ':':
		g.piece = 0
	}
}

// whole reports whether data continues the file in UTF-8. A letter may be cut by
// the end of data; its beginning is kept in half until the rest comes.
func (g *guard) whole(data []byte) bool {
	for len(g.half) > 0 && len(data) > 0 {
		g.half, data = append(g.half, data[0]), data[1:]
		if utf8.FullRune(g.half) {
			if !utf8.Valid(g.half) {
				return false
			}
			g.half = g.half[:0]
		}
	}
	end := len(data)
	for back := 1; back < utf8.UTFMax && back <= len(data); back++ {
		if at := len(data) - back; utf8.RuneStart(data[at]) {
			if !utf8.FullRune(data[at:]) {
				end = at
			}
			break
		}
	}
	g.half = append(g.half, data[end:]...)
	return utf8.Valid(data[:end])
}
