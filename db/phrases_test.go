package db_test

import (
	"testing"

	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// Phrases are their coach's alone, each once; one that was removed can be brought back
// for thirty days.
func TestPhrases(t *testing.T) {
	p := newPair(t)
	for _, body := range []string{"The gate.", "Count to three.", "The gate."} {
		p.must(p.KeepPhrase(p.ctx, p.coach, body))
	}
	all, err := p.Phrases(p.ctx, p.coach)
	if p.must(err); len(all) != 2 || all[0].Body != "Count to three." || all[1].Body != "The gate." {
		t.Fatalf("%+v", all)
	}
	if others, err := p.Phrases(p.ctx, p.other); err != nil || len(others) != 0 {
		t.Errorf("%+v, %v", others, err)
	}
	id := all[0].ID
	p.refused(map[string]error{"another removes it": p.RemovePhrase(p.ctx, p.other, id)})
	p.must(p.RemovePhrase(p.ctx, p.coach, id))
	p.refused(map[string]error{"removed twice": p.RemovePhrase(p.ctx, p.coach, id), "another brings it back": p.RestorePhrase(p.ctx, p.other, id)})
	if gone, err := p.Removed(p.ctx, p.coach); err != nil || len(gone) != 1 || gone[0].Kind != db.RemovedPhrase || gone[0].Text != "Count to three." {
		t.Errorf("%+v, %v", gone, err)
	}
	p.must(p.RestorePhrase(p.ctx, p.coach, id))
	p.must(p.RemovePhrase(p.ctx, p.coach, id))
	dbtest.Exec(t, p.url, "update phrases set removed_at = now() - interval '40 days' where removed_at is not null")
	swept, err := p.Sweep(p.ctx)
	if p.must(err); swept["removed phrases"] != 1 {
		t.Errorf("%+v", swept)
	}
	p.must(p.DeletePlayer(p.ctx, p.coach))
}
