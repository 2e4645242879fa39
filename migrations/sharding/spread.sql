-- Spreads the tables over the nodes of a Citus cluster. This is not a migration:
-- the operator runs it with psql on the coordinator, after the app has brought the
-- schema up to date, and again after every new version. It does only what is
-- missing, in one transaction, and keeps the data that is there.
--
-- Before the first time, in the database of the app: create extension citus on
-- every node; on the coordinator citus_set_coordinator_host, and citus_add_node
-- for each worker. Connect the app to the coordinator.
\set ON_ERROR_STOP on

-- Otherwise Citus would draw a new table with a foreign key to players into its
-- own bookkeeping as soon as a migration makes it, and could not shard it later.
select format('alter database %I set citus.enable_local_reference_table_foreign_keys = off', current_database()) \gexec
set citus.enable_local_reference_table_foreign_keys = off;

begin;
set local citus.multi_shard_modify_mode = 'sequential';

-- Whole on every node: what everybody reads or refers to. A table comes after
-- those that it refers to.
select create_reference_table(table_name::regclass)
from unnest(array['players', 'courses', 'course_holes', 'hole_pictures', 'invitations', 'tries', 'asked_addresses', 'goose_db_version']) with ordinality whole(table_name, place)
where not exists (select 1 from pg_dist_partition where logicalrelid = table_name::regclass)
order by place;

-- By player: every table with a player_id. The rows of one player are on one node.
select create_distributed_table('rounds', 'player_id')
where not exists (select 1 from pg_dist_partition where logicalrelid = 'rounds'::regclass);
select create_distributed_table(t.oid::regclass, 'player_id', colocate_with => 'rounds')
from pg_class t
join pg_attribute a on a.attrelid = t.oid and a.attname = 'player_id' and not a.attisdropped
where t.relnamespace = 'public'::regnamespace and t.relkind = 'r' and t.relname !~ '_\d{6,}$' -- not a shard
  and not exists (select 1 from pg_dist_partition where logicalrelid = t.oid)
order by t.oid;
commit;
