package accountfile

import "time"

// Written is what is written about an account and what it has to practise. It is
// there to be read, and not taken in again.
type Written struct {
	Notes    []Note     `json:"notes,omitempty"`
	Private  []Note     `json:"private_notes_on_pupils,omitempty"`
	Practice []Practice `json:"practice,omitempty"`
}

// Note is a note with its conversation.
type Note struct {
	By      string    `json:"by,omitempty"`
	On      string    `json:"on,omitempty"` // the pupil, of a private note
	Kind    string    `json:"kind"`
	Day     string    `json:"day"`
	Hole    int       `json:"hole,omitempty"`
	Shot    int       `json:"shot,omitempty"`
	Body    string    `json:"body"`
	Written time.Time `json:"written"`
	Replies []Reply   `json:"replies,omitempty"`
}

// Reply is an answer to a note.
type Reply struct {
	By      string    `json:"by"`
	Body    string    `json:"body"`
	Written time.Time `json:"written"`
}

// Practice is something that was set to practise.
type Practice struct {
	What     string   `json:"what"`
	Amount   string   `json:"amount,omitempty"`
	PassMark string   `json:"pass_mark,omitempty"`
	Due      string   `json:"due"`
	Done     bool     `json:"done"`
	Results  []Result `json:"results,omitempty"`
}

// Result is a practice that was recorded.
type Result struct {
	Day    string `json:"day"`
	Result string `json:"result"`
	Passed bool   `json:"passed"`
}
