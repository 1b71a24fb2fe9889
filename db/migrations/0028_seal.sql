-- Machines that close containers, what the makers allow, and every check of a seam or a seal. A failed check puts the machine
-- out and holds what it closed since the last good one.
create table book.seal_machine (
  storehouse_id uuid not null references book.storehouse,
  seal_machine_id uuid not null default uuidv7(),
  name text not null,
  kind text not null,
  out_since timestamptz, -- null while it may run
  version integer not null default 1,
  primary key (storehouse_id, seal_machine_id),
  constraint seal_machine_name_once unique (storehouse_id, name),
  constraint seal_machine_named check (name ~ '\S'),
  constraint seal_machine_kind_known check (kind in ('can-seamer', 'heat-sealer', 'vacuum-sealer'))
);

-- What the maker of a can or its lid allows, in thousandths of an inch. There are none of our own.
create table book.seam_limit (
  storehouse_id uuid not null,
  container_kind_id uuid not null,
  width_least integer not null,
  width_most integer not null,
  thickness_least integer not null,
  thickness_most integer not null,
  countersink_least integer not null,
  countersink_most integer not null,
  overlap_percent integer not null,
  lid_plate integer not null,
  body_plate integer not null,
  source text not null,
  primary key (storehouse_id, container_kind_id),
  constraint seam_limit_kind_fk foreign key (storehouse_id, container_kind_id) references book.container_kind,
  constraint seam_limit_sourced check (source ~ '\S'),
  constraint seam_limit_runs_forward check (0 < width_least and width_least <= width_most
    and 0 < thickness_least and thickness_least <= thickness_most
    and 0 < countersink_least and countersink_least <= countersink_most
    and overlap_percent between 1 and 100 and lid_plate > 0 and body_plate > 0
    and width_least > 2 * lid_plate + body_plate)
);

create table book.seal_check (
  storehouse_id uuid not null,
  seal_check_id uuid not null default uuidv7(),
  seal_machine_id uuid not null,
  packing_session_id uuid not null,
  line smallint not null,
  serial integer, -- the container that was looked at; null for a can that was closed to try the machine
  container_kind_id uuid not null,
  how text not null,
  looks_good boolean not null,
  measures jsonb, -- of a teardown: width, thickness, countersink and both hooks
  faults jsonb not null, -- what lay outside the limits of that moment
  passed boolean not null,
  note text not null default '',
  suspect_from integer, -- serials in doubt when it failed
  suspect_to integer,
  checked_by uuid not null,
  checked_at timestamptz not null,
  primary key (storehouse_id, seal_check_id),
  constraint seal_check_machine_fk foreign key (storehouse_id, seal_machine_id) references book.seal_machine,
  constraint seal_check_session_fk foreign key (storehouse_id, packing_session_id) references book.packing_session,
  constraint seal_check_kind_fk foreign key (storehouse_id, container_kind_id) references book.container_kind,
  constraint seal_check_checked_by_fk foreign key (storehouse_id, checked_by) references book.person,
  constraint seal_check_how_known check (how in ('visual', 'teardown', 'squeeze')),
  constraint seal_check_teardown_measured check (how <> 'teardown' or measures is not null),
  constraint seal_check_serial_counted check (line between 1 and 20 and serial > 0),
  constraint seal_check_passes_without_fault check (not passed or (looks_good and faults = '[]')),
  constraint seal_check_window_runs_forward check ((suspect_from is null) = (suspect_to is null)
    and suspect_from <= suspect_to and not (passed and suspect_from is not null))
);
create index seal_check_by_session on book.seal_check (storehouse_id, packing_session_id, line);

-- A container in doubt: nothing is poured into it, until somebody has answered for it.
create table book.seal_hold (
  storehouse_id uuid not null,
  container_id uuid not null,
  seal_check_id uuid not null,
  disposition text,
  settled_by uuid,
  settled_at timestamptz,
  note text not null default '',
  primary key (storehouse_id, container_id, seal_check_id),
  constraint seal_hold_container_fk foreign key (storehouse_id, container_id) references book.container,
  constraint seal_hold_check_fk foreign key (storehouse_id, seal_check_id) references book.seal_check,
  constraint seal_hold_settled_by_fk foreign key (storehouse_id, settled_by) references book.person,
  constraint seal_hold_disposition_known check (disposition in ('re-can', 'eat-now', 'release', 'discard')),
  constraint seal_hold_settled_whole check ((disposition is null) = (settled_by is null)
    and (settled_by is null) = (settled_at is null))
);

select book.keep_in_storehouse(t) from unnest(array['book.seal_machine', 'book.seam_limit', 'book.seal_check',
  'book.seal_hold']::regclass[]) t;
grant select, insert on book.seal_machine, book.seam_limit, book.seal_check, book.seal_hold to sheafbook_app;
grant update (out_since, version) on book.seal_machine to sheafbook_app;
grant update (width_least, width_most, thickness_least, thickness_most, countersink_least, countersink_most,
  overlap_percent, lid_plate, body_plate, source) on book.seam_limit to sheafbook_app;
grant update (disposition, settled_by, settled_at, note) on book.seal_hold to sheafbook_app;
