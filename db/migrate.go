package db

import (
	"context"

	"github.com/jackc/pgx/v5/pgxpool"
	"github.com/jackc/pgx/v5/stdlib"
	"github.com/pressly/goose/v3"
	"github.com/pressly/goose/v3/lock"

	"strokeledger/migrations"
)

// migrate brings the schema up to date. When several processes start at once, a lock
// in the database lets one of them do it while the others wait.
func migrate(ctx context.Context, pool *pgxpool.Pool) error {
	provider, closeDB, err := migrator(pool)
	if err != nil {
		return err
	}
	defer closeDB()
	_, err = provider.Up(ctx)
	return err
}

func migrator(pool *pgxpool.Pool) (*goose.Provider, func() error, error) {
	locker, err := lock.NewPostgresSessionLocker()
	if err != nil {
		return nil, nil, err
	}
	sqlDB := stdlib.OpenDBFromPool(pool)
	provider, err := goose.NewProvider(goose.DialectPostgres, sqlDB, migrations.Files, goose.WithSessionLocker(locker))
	if err != nil {
		return nil, nil, err
	}
	return provider, sqlDB.Close, nil
}
