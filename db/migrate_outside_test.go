package db_test

import (
	"flag"
	"testing"

	"strokeledger/analysis"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

var update = flag.Bool("update", false, "write the golden files anew")

func TestMigrationsGoUpDownUp(t *testing.T) { db.CheckMigrations(t, dbtest.Clone(t), *update) }

func TestOldLinesAreInThePlayersUnits(t *testing.T) { db.CheckOldLines(t, dbtest.Clone(t)) }

func TestOldBooksCount(t *testing.T) { db.CheckOldBooks(t, dbtest.Clone(t), analysis.RunBook) }

func TestOldLooksAreKept(t *testing.T) { db.CheckOldLooks(t, dbtest.Clone(t)) }
