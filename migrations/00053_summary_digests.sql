-- +goose Up

-- What a summary comes to is known by its digest, so that a list of many players is
-- shown without reading their summaries.
alter table round_summaries add column digest bytea;
update round_summaries set digest = sha256(summary);
alter table round_summaries alter column digest set not null;

-- +goose Down
alter table round_summaries drop column digest;
