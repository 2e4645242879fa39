// Package trial gives the app hard days: it ends the app and its private Postgres
// by force while holes are saved and looks for lost saves, and it lets many
// players save at once and measures how long they wait.
//
// It answers "does what the app said it saved outlive a crash?" and "how long
// does a player wait?", and refuses to run on a data folder that anybody uses.
package trial
