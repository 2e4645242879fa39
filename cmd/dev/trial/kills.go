package trial

import (
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"time"
)

// Plan is how much is killed.
type Plan struct {
	App      int    // kills of the app
	Postgres int    // kills of its Postgres
	Seed     uint64 // of the moments and the order
	Root     string // folder of the source tree
}

// Result is what came of a plan.
type Result struct {
	App, Postgres int           // kills done
	Acknowledged  int           // saves
	Doubtful      int           // saves without an answer, which may be there or not
	Lost          []string      // acknowledged saves that are not there, or are other ones
	SlowestStart  time.Duration // of the app after a kill, until it says where it is
	SlowestReady  time.Duration // of the app after a kill of Postgres, until it is ready
}

// StartLimit is how long a start after a kill may take.
const StartLimit = 25 * time.Second

// Err says what is wrong with a result, nil when nothing is.
func (r Result) Err() error {
	var wrong []error
	if len(r.Lost) > 0 {
		wrong = append(wrong, fmt.Errorf("%d acknowledged saves are lost, as %s", len(r.Lost), r.Lost[0]))
	}
	if r.SlowestStart > StartLimit || r.SlowestReady > StartLimit {
		wrong = append(wrong, fmt.Errorf("a start took longer than %s", StartLimit))
	}
	return errors.Join(wrong...)
}

// String is a result in one line.
func (r Result) String() string {
	return fmt.Sprintf("%d kills of the app, %d of Postgres; %d saves acknowledged, %d without an answer; %d lost; slowest start %s, slowest recovery of Postgres %s",
		r.App, r.Postgres, r.Acknowledged, r.Doubtful, len(r.Lost), r.SlowestStart.Round(time.Millisecond), r.SlowestReady.Round(time.Millisecond))
}

// run is a plan being carried out.
type run struct {
	app    *app
	player *player
	rng    *rand.Rand
	result Result
}

// mostBetween is how many saves there are between two kills at most, and
// mostDelay how long after the start of a save a kill may come.
const (
	mostBetween = 6
	mostDelay   = 12 * time.Millisecond
)

// Run carries a plan out, and says on progress how far it is.
func Run(plan Plan, progress io.Writer) (result Result, err error) {
	folder, err := os.MkdirTemp("", "ledger-kills-")
	if err != nil {
		return result, err
	}
	defer os.RemoveAll(folder)
	if err := os.Chmod(folder, 0o755); err != nil { // the server may be another user's
		return result, err
	}
	app, err := build(plan.Root, folder)
	if err != nil {
		return result, err
	}
	if err := app.start(); err != nil {
		return result, errors.Join(err, app.stop())
	}
	defer func() { err = errors.Join(err, app.stop()) }()
	player, err := join(app)
	if err != nil {
		return result, err
	}
	r := &run{app: app, player: player, rng: rand.New(rand.NewPCG(plan.Seed, 1))}
	for i, postgres := range order(plan, r.rng) {
		if err := r.round(postgres); err != nil {
			return r.result, fmt.Errorf("kill %d: %w", i+1, err)
		}
		if (i+1)%50 == 0 {
			fmt.Fprintln(progress, r.result)
		}
	}
	return r.result, nil
}

// order says of each kill whether it is one of Postgres.
func order(plan Plan, rng *rand.Rand) []bool {
	all := make([]bool, plan.App+plan.Postgres)
	for i := range plan.Postgres {
		all[i] = true
	}
	rng.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	return all
}

// round saves a few holes, kills between two saves or during one, waits until
// the app is there again, and looks for everything that was acknowledged.
func (r *run) round(postgres bool) error {
	for range r.rng.IntN(mostBetween + 1) {
		if acknowledged, err := r.player.save(); err != nil {
			return err
		} else if !acknowledged {
			return errors.New("a save failed while nothing was killed")
		}
	}
	var during chan error
	if r.rng.IntN(2) == 0 {
		during = make(chan error, 1)
		at := r.app.url
		go func() {
			_, err := r.player.saveAt(at)
			during <- err
		}()
		time.Sleep(time.Duration(r.rng.Int64N(int64(mostDelay))))
	}
	began := time.Now()
	if err := r.kill(postgres); err != nil {
		return err
	}
	if during != nil {
		if err := <-during; err != nil {
			return err
		}
	}
	if err := r.again(postgres, began); err != nil {
		return err
	}
	lost, err := r.player.lost()
	r.result.Lost = append(r.result.Lost, lost...)
	r.result.Acknowledged, r.result.Doubtful = len(r.player.acknowledged), r.player.doubtful
	return err
}

func (r *run) kill(postgres bool) error {
	if postgres {
		r.result.Postgres++
		return r.app.killPostgres(r.rng.IntN(2) == 0)
	}
	r.result.App++
	r.app.kill()
	return nil
}

// again waits until the app serves after a kill, and keeps how long it took.
func (r *run) again(postgres bool, began time.Time) error {
	if postgres {
		err := r.app.waitReady()
		r.result.SlowestReady = max(r.result.SlowestReady, time.Since(began))
		return err
	}
	err := r.app.start()
	r.result.SlowestStart = max(r.result.SlowestStart, time.Since(began))
	return err
}
