package coach

import (
	"fmt"
	"strings"

	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// DigestInput is what mail about new notices is made of.
type DigestInput struct {
	Name    string // of the reader
	Site    string // the address that its links begin with
	Daily   bool   // or weekly
	Stop    string // where the reader ends the mail
	Notices []Notice
}

// Digest is mail about new notices, as plain text.
type Digest struct{ Subject, Text string }

// NewDigest words the mail: what the list of notices says, and no more. The subject
// names nobody, since it shows on a locked phone.
func NewDigest(in DigestInput) Digest {
	news := words.SpelledPlural(len(in.Notices), "new notice", "new notices")
	var b strings.Builder
	fmt.Fprintf(&b, "%s,\n\nYou have %s:\n", in.Name, news)
	for _, n := range in.Notices {
		row := n.row()
		fmt.Fprintf(&b, "\n%s %s\n%s\n%s%s\n", row.By, row.Text, row.When, in.Site, row.At)
	}
	often := "week"
	if in.Daily {
		often = "day"
	}
	fmt.Fprintf(&b, "\nAll notices: %s%s\n\nYou get this at most once a %s, because you chose it on your account page.\nTo stop these e-mails: %s\n", in.Site, paths.Notices, often, in.Stop)
	return Digest{Subject: "Strokeledger: " + news, Text: b.String()}
}
