package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Assignment is something to practise, with the results so far.
type Assignment struct {
	ID       int64
	AuthorID *golf.PlayerID // nil when that account is gone
	Author   *string        // nil when that account went before names were kept
	What     string
	Amount   string
	PassMark string
	Figure   string // that it is to move, as the months write it; empty for none
	GivenAt  time.Time
	DueOn    time.Time
	DoneAt   *time.Time
	PlanID   *int64   // of the plan that it comes from; nil for none
	Drill    string   // key of its drill; empty for none
	Feet     float64  // from where that is played; 0 for a drill that cannot be moved
	SetUp    string   // of a drill of the author's own; empty for any other
	Tries    int      // of such a drill; 0 for any other
	Mark     int      // how many of its tries must count
	Results  []Result `db:"-"`
}

// Result is the result of one practice of an assignment.
type Result struct {
	AssignmentID int64
	ID           int64
	Day          time.Time
	Result       string
	Passed       bool
}

// Assign gives the player something to practise; asker is a coach or the player.
func (s *Store) Assign(ctx context.Context, asker, who golf.PlayerID, a Assignment) error {
	return changeOne(ctx, s.q, `
		insert into assignments (player_id, author_id, what, amount, pass_mark, figure, due_on, plan_id, drill, feet, set_up, tries, mark)
		select @who, @asker, @what, @amount, @pass_mark, @figure, @due, @plan::bigint, @drill, @feet::double precision, @set_up, @tries::integer, @mark::integer
		where @due::date >= `+accessFrom("@asker", "@who"),
		pgx.StrictNamedArgs{"asker": asker, "who": who, "what": a.What, "amount": a.Amount, "pass_mark": a.PassMark, "figure": a.Figure, "due": a.DueOn,
			"plan": a.PlanID, "drill": a.Drill, "feet": a.Feet, "set_up": a.SetUp, "tries": a.Tries, "mark": a.Mark})
}

const assignmentColumns = `t.id, t.author_id, coalesce(a.name, nullif(t.author_name, '')) as author, t.what, t.amount, t.pass_mark, t.figure, t.due_on, t.given_at, t.done_at, t.plan_id, t.drill, t.feet, t.set_up, t.tries, t.mark`

// Assignment returns one of the player's assignments that asker may see, without its
// results.
func (s *Store) Assignment(ctx context.Context, asker, who golf.PlayerID, id int64) (Assignment, error) {
	return one(ctx, s.q, pgx.RowToStructByName[Assignment], `
		select `+assignmentColumns+`
		from assignments t left join players a on a.id = t.author_id
		where t.player_id = @who and t.id = @id and t.removed_at is null and t.due_on >= `+accessFrom("@asker", "@who"),
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}

// Assignments lists the player's assignments that asker may see, each with its
// results: the open ones first, by when they are due.
func (s *Store) Assignments(ctx context.Context, asker, who golf.PlayerID, most int) ([]Assignment, error) {
	all, err := many(ctx, s.q, pgx.RowToStructByName[Assignment], `
		select `+assignmentColumns+`
		from assignments t left join players a on a.id = t.author_id
		where t.player_id = @who and t.removed_at is null and t.due_on >= `+accessFrom("@asker", "@who")+`
		order by t.done_at desc nulls first, t.due_on, t.given_at, t.id limit @most`,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "most": limit(most)})
	if err != nil || len(all) == 0 {
		return nil, err
	}
	ids, at := make([]int64, len(all)), map[int64]*Assignment{}
	for i := range all {
		ids[i], at[all[i].ID] = all[i].ID, &all[i]
	}
	results, err := many(ctx, s.q, pgx.RowToStructByName[Result], `
		select assignment_id, id, day, result, passed from assignment_results
		where player_id = @who and assignment_id = any(@ids) and removed_at is null and day >= `+accessFrom("@asker", "@who")+` order by day, recorded_at, id`,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "ids": ids})
	for _, r := range results {
		at[r.AssignmentID].Results = append(at[r.AssignmentID].Results, r)
	}
	return all, err
}

// RecordResult records a practice of the player's.
func (s *Store) RecordResult(ctx context.Context, who golf.PlayerID, assignment int64, r Result) error {
	return changeOne(ctx, s.q, `
		insert into assignment_results (player_id, assignment_id, day, result, passed)
		select player_id, id, @day, @result, @passed from assignments where player_id = @who and id = @assignment and removed_at is null`,
		pgx.StrictNamedArgs{"who": who, "assignment": assignment, "day": r.Day, "result": r.Result, "passed": r.Passed})
}

// TickOff marks an assignment as done, or as open again.
func (s *Store) TickOff(ctx context.Context, who golf.PlayerID, id int64, done bool) error {
	of := pgx.StrictNamedArgs{"who": who, "id": id}
	if done {
		return changeOne(ctx, s.q, `update assignments set done_at = now() where player_id = @who and id = @id and removed_at is null`, of)
	}
	return changeOne(ctx, s.q, `update assignments set done_at = null where player_id = @who and id = @id and removed_at is null`, of)
}

// Proposal is a target that a coach proposes.
type Proposal struct {
	CoachID golf.PlayerID
	Coach   string
	Target  float64
}

// ProposeTarget proposes a target to a pupil. It replaces an earlier proposal of
// the same coach.
func (s *Store) ProposeTarget(ctx context.Context, coach, who golf.PlayerID, target float64) error {
	return changeOne(ctx, s.q, `
		insert into target_proposals (player_id, coach_id, target, proposed_at)
		select @who, @coach, @target, now() where @coach::bigint <> @who::bigint and `+accessFrom("@coach", "@who")+` is not null
		on conflict (player_id, coach_id) do update set target = excluded.target, proposed_at = excluded.proposed_at`,
		pgx.StrictNamedArgs{"coach": coach, "who": who, "target": target})
}

// Proposals lists the targets proposed to a player. The player sees all of them,
// a coach only the coach's own.
func (s *Store) Proposals(ctx context.Context, asker, who golf.PlayerID) ([]Proposal, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Proposal], `
		select t.coach_id, c.name as coach, t.target from target_proposals t join players c on c.id = t.coach_id
		where t.player_id = @who and @asker in (t.player_id, t.coach_id) and `+accessFrom("@asker", "@who")+` is not null order by t.proposed_at`,
		pgx.StrictNamedArgs{"asker": asker, "who": who})
}

// AnswerProposal makes a coach's proposed target the player's, or declines it.
// Rounds keep the target they were played for.
func (s *Store) AnswerProposal(ctx context.Context, who, coach golf.PlayerID, accept bool) error {
	return s.Tx(ctx, func(tx *Store) error {
		target, err := one(ctx, tx.q, pgx.RowTo[float64], `delete from target_proposals where player_id = @who and coach_id = @coach returning target`,
			pgx.StrictNamedArgs{"who": who, "coach": coach})
		if err != nil || !accept {
			return err
		}
		return changeOne(ctx, tx.q, `update players set target = @target where id = @who`, pgx.StrictNamedArgs{"who": who, "target": target})
	})
}
