-- What an import made, so that it can be taken back as one while nothing leans on it yet.
create table book.import_thing (
  storehouse_id uuid not null,
  import_id uuid not null,
  kind text not null,
  thing_id uuid not null, -- of one of several tables, and eaters are deleted: hence no foreign key
  primary key (storehouse_id, import_id, thing_id),
  constraint import_thing_import_fk foreign key (storehouse_id, import_id) references book.import,
  constraint import_thing_kind_known check (kind in
    ('household', 'person', 'eater', 'food', 'supplier', 'equipment_item', 'lot', 'container'))
);
create table book.import_undoing (
  storehouse_id uuid not null,
  import_id uuid not null,
  undone_by uuid not null,
  undone_at timestamptz not null,
  reason text not null,
  primary key (storehouse_id, import_id),
  constraint import_undoing_import_fk foreign key (storehouse_id, import_id) references book.import,
  constraint import_undoing_undone_by_fk foreign key (storehouse_id, undone_by) references book.person,
  constraint import_undoing_explained check (reason ~ '\S' and length(reason) <= 500)
);
select book.keep_in_storehouse(t) from unnest(array['book.import_thing', 'book.import_undoing']::regclass[]) t;
grant select, insert on book.import_thing, book.import_undoing to sheafbook_app;
grant delete on book.equipment_item to sheafbook_app; -- one that was brought over by mistake and never used
grant update (food_code) on book.food to sheafbook_app; -- a food that was taken back leaves its code free

-- A file may be brought over again once its import was taken back.
alter table book.import_file add column taken_back boolean not null default false;
grant update (taken_back) on book.import_file to sheafbook_app;
alter table book.import_file drop constraint import_file_once;
create unique index import_file_once on book.import_file (storehouse_id, sha256) where not taken_back;

/*
 * What leans on the things of an import: rows of any table whose foreign keys point at them, told from the catalogue so
 * that a table that is added later is not forgotten. It runs as the owner of the tables, because a pledge leans on its
 * household whoever may read it; it tells the table and how many, and nothing of what they say. The book's own entries
 * are looked at by the caller, and that somebody read a private datum is a record and no use.
 */
create function book.list_leaning_on_import(p_import uuid)
  returns table (leaning text, kind text, thing_id uuid, row_count bigint)
  language plpgsql stable security definer set search_path = pg_catalog, pg_temp as $$
declare
  s uuid := book.current_storehouse();
  link record;
begin
  for link in
    select c.conrelid::regclass as leaning, a.attname as link_column, p.attname as id_column, t.kind
    from (values ('book.household', 'household_id', 'household'), ('book.owner', 'owner_id', 'household'),
      ('book.person', 'person_id', 'person'), ('book.eater', 'eater_id', 'eater'), ('book.food', 'food_id', 'food'),
      ('book.supplier', 'supplier_id', 'supplier'), ('book.owner', 'owner_id', 'supplier'),
      ('book.equipment_item', 'equipment_item_id', 'equipment_item'), ('book.lot', 'lot_id', 'lot'),
      ('book.unit', 'unit_id', 'lot'), ('book.container', 'container_id', 'container'),
      ('book.vessel', 'vessel_id', 'container')) t (target, target_column, kind)
    join pg_constraint c on c.contype = 'f' and c.confrelid = t.target::regclass
    cross join lateral unnest(c.conkey, c.confkey) k (link_no, target_no)
    join pg_attribute f on f.attrelid = c.confrelid and f.attnum = k.target_no and f.attname = t.target_column
    join pg_attribute a on a.attrelid = c.conrelid and a.attnum = k.link_no
    join pg_constraint pk on pk.contype = 'p' and pk.conrelid = c.conrelid
    join pg_attribute p on p.attrelid = c.conrelid and p.attnum = pk.conkey[2] -- the first is the storehouse's
    where c.conrelid not in ('book.account'::regclass, 'book.movement'::regclass, 'book.private_read'::regclass,
      'book.household_contact'::regclass)
    order by 1, 4
  loop
    return query execute format('select %L::text, t.kind, t.thing_id, count(*) from book.import_thing t
      join %s r on r.storehouse_id = t.storehouse_id and r.%I = t.thing_id
      where t.storehouse_id = $1 and t.import_id = $2 and t.kind = %L and not exists (select from book.import_thing o
        where o.storehouse_id = $1 and o.import_id = $2 and o.thing_id::text = r.%I::text)
      group by t.kind, t.thing_id', replace(link.leaning::text, 'book.', ''), link.leaning, link.link_column, link.kind, link.id_column)
      using s, p_import;
  end loop;
end $$;
revoke execute on function book.list_leaning_on_import from public;
grant execute on function book.list_leaning_on_import to sheafbook_app;

-- Whoever brings a sheet over writes down the telephone and the address that it has; they are shown to nobody by that.
alter policy household_contact_private on book.household_contact
  using (household_id = (select book.current_household()) or shown_to_members
    or (select book.current_task()) in ('contact', 'leaving', 'take-along', 'import'))
  with check (household_id = (select book.current_household())
    or (select book.current_task()) = 'leaving'
    or (select book.current_task()) = 'import' and not shown_to_members);
