package handlers

import "strokeledger/analysis/golf"

// sayable is the rule for names and other short texts.
func sayable(text string, most int) bool { return golf.Sayable(text, most) }
