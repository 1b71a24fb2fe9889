-- What was found on a container, from outside or as it was opened, and what becomes of the food. Nothing of it is changed
-- afterwards; whoever looks again writes again, and the last look counts.
create table book.inspection (
  storehouse_id uuid not null,
  inspection_id uuid not null default uuidv7(),
  container_id uuid not null,
  household_id uuid, -- whose the container was; null for common stock
  how text not null,
  findings text[] not null,
  best text not null, -- the best outcome that the findings allow
  outcome text not null, -- what whoever looked chose; never laxer
  damaged_kernels integer, -- damaged by insects, in a sample of so many grams
  sample_grams integer,
  note text not null default '',
  entry_id uuid, -- of the grams that were moved out in the same step
  inspected_by uuid not null,
  inspected_at timestamptz not null,
  inspected_on date not null,
  primary key (storehouse_id, inspection_id),
  constraint inspection_container_fk foreign key (storehouse_id, container_id) references book.container,
  constraint inspection_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint inspection_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint inspection_inspected_by_fk foreign key (storehouse_id, inspected_by) references book.person,
  constraint inspection_how_known check (how in ('outside', 'opened')),
  constraint inspection_finds_something check (cardinality(findings) > 0
    and (cardinality(findings) = 1 or 'nothing-wrong' <> all (findings))),
  constraint inspection_findings_known check (findings <@ array['nothing-wrong', 'bulge-hiss-spurt', 'surface-rust',
    'pitting-or-seam-rust', 'dented-body', 'dented-seam', 'leak', 'loose-seal', 'torn-liner', 'absorber-hard',
    'rancid-smell', 'sour-or-musty-smell', 'chemical-smell', 'live-insects', 'webbing', 'insect-damaged-kernels',
    'stones-or-chaff', 'glass-or-metal', 'wet-or-caked', 'mould', 'rodent-marks', 'dark-colour', 'dyed-seed',
    'stale-taste']),
  constraint inspection_outcome_never_laxer check (
    array_position(array['table', 'kitchen-soon', 'freeze-and-repack', 'animals', 'compost', 'discard'], outcome)
    >= array_position(array['table', 'kitchen-soon', 'freeze-and-repack', 'animals', 'compost', 'discard'], best)),
  constraint inspection_outcome_known check (
    outcome in ('table', 'kitchen-soon', 'freeze-and-repack', 'animals', 'compost', 'discard')
    and best in ('table', 'kitchen-soon', 'freeze-and-repack', 'animals', 'compost', 'discard')),
  constraint inspection_kernels_of_a_sample check ((damaged_kernels is null) = (sample_grams is null)
    and damaged_kernels >= 0 and sample_grams > 0),
  constraint inspection_moves_what_is_lost check (entry_id is null or outcome in ('animals', 'compost', 'discard'))
);
create index inspection_by_container on book.inspection (storehouse_id, container_id, inspected_at desc);

-- What stood beside something that was found: to be looked at by whoever has it. It ends with the next look at it.
create table book.watch (
  storehouse_id uuid not null,
  container_id uuid not null,
  inspection_id uuid not null,
  household_id uuid, -- whose the container is; null for common stock
  finding text not null,
  is_same_window boolean not null, -- packed in the same go, so that the same fault is likely
  since timestamptz not null,
  primary key (storehouse_id, container_id, inspection_id),
  constraint watch_container_fk foreign key (storehouse_id, container_id) references book.container,
  constraint watch_inspection_fk foreign key (storehouse_id, inspection_id) references book.inspection,
  constraint watch_household_fk foreign key (storehouse_id, household_id) references book.household
);
create index watch_by_household on book.watch (storehouse_id, household_id);

select book.keep_in_storehouse(t) from unnest(array['book.inspection', 'book.watch']::regclass[]) t;
-- What a household found at home is its own affair. Whoever finds something writes watches for others, and reads none of them.
create policy inspection_private on book.inspection as restrictive for all
  using (household_id is null or household_id = (select book.current_household()))
  with check (household_id is null or household_id = (select book.current_household()));
create policy watch_private on book.watch as restrictive for select
  using (household_id is null or household_id = (select book.current_household()));
grant select, insert on book.inspection, book.watch to sheafbook_app;
