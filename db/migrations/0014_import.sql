-- A group that comes from a spreadsheet: what was brought over, when, from which files, and the things it lends.
create table book.equipment_item (
  storehouse_id uuid not null references book.storehouse,
  equipment_item_id uuid not null default uuidv7(),
  owner_id uuid not null, -- common stock's owner: the group's own things
  name text not null,
  kind_note text not null default '',
  parts_list text not null default '', -- one part a line, as it was written
  value_minor_units book.amount, -- null: nobody said what it is worth
  kept_where text not null default '',
  entered_by uuid not null,
  entered_at timestamptz not null,
  version integer not null default 1,
  primary key (storehouse_id, equipment_item_id),
  constraint equipment_item_owner_fk foreign key (storehouse_id, owner_id) references book.owner,
  constraint equipment_item_entered_by_fk foreign key (storehouse_id, entered_by) references book.person,
  constraint equipment_item_name_once unique (storehouse_id, name),
  constraint equipment_item_named check (name ~ '\S' and length(name) <= 120)
);
create table book.import (
  storehouse_id uuid not null references book.storehouse,
  import_id uuid not null,
  import_no integer not null,
  opening_on date not null,
  imported_by uuid not null,
  imported_at timestamptz not null,
  primary key (storehouse_id, import_id),
  constraint import_no_once unique (storehouse_id, import_no),
  constraint import_imported_by_fk foreign key (storehouse_id, imported_by) references book.person
);
-- The files themselves are not kept, only what tells one from another: they hold what households keep to themselves.
create table book.import_file (
  storehouse_id uuid not null,
  import_id uuid not null,
  position integer not null,
  kind text not null,
  file_name text not null,
  sha256 text not null,
  new_rows integer not null,
  skipped_rows integer not null,
  primary key (storehouse_id, import_id, position),
  constraint import_file_once unique (storehouse_id, sha256),
  constraint import_file_import_fk foreign key (storehouse_id, import_id) references book.import,
  constraint import_file_kind_known check (kind in
    ('households', 'eaters', 'foods', 'balances', 'stock', 'equipment')),
  constraint import_file_hashed check (sha256 ~ '^[0-9a-f]{64}$'),
  constraint import_file_counts check (new_rows >= 0 and skipped_rows >= 0)
);
select book.keep_in_storehouse(t) from unnest(array['book.equipment_item', 'book.import', 'book.import_file']::regclass[]) t;
grant select, insert on book.equipment_item, book.import, book.import_file to sheafbook_app;

alter table book.container alter household_id drop not null; -- null: it is common stock's

-- Whoever brings a sheet over writes down for a household what it told the group; the household sees that it was done.
alter policy eater_private on book.eater
  using (household_id = (select book.current_household())
    or (select book.current_task()) in ('coverage-totals', 'need-first', 'leaving', 'import'))
  with check (household_id = (select book.current_household()) or (select book.current_task()) = 'import');
