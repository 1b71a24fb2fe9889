-- What a packing day uses up: cans, lids, liners, absorbers, dry ice, labels, gloves. Each is a unit of the ledger, counted in
-- pieces (dry ice in grams).
create table book.supply (
  storehouse_id uuid not null references book.storehouse,
  supply_id uuid not null,
  unit_kind text not null default 'supply',
  name text not null,
  kind text not null,
  container_kind_id uuid, -- of a container, a lid or a liner: for which kind
  size_millilitres integer, -- of absorbers: the oxygen that one takes up
  pieces_each integer not null default 1, -- how many a container, a helper or a day takes
  pack_pieces integer not null,
  pack_minor_units book.amount, -- null when nobody knows
  is_retired boolean not null default false,
  version integer not null default 1,
  primary key (storehouse_id, supply_id),
  constraint supply_unit_fk foreign key (storehouse_id, supply_id, unit_kind)
    references book.unit (storehouse_id, unit_id, kind),
  constraint supply_container_kind_fk foreign key (storehouse_id, container_kind_id) references book.container_kind,
  constraint supply_name_once unique (storehouse_id, name),
  constraint supply_named check (name ~ '\S'),
  constraint supply_unit_is_its_own check (unit_kind = 'supply'),
  constraint supply_kind_known check (kind in ('container', 'lid', 'liner', 'absorber', 'dry-ice', 'label', 'glove',
    'other')),
  constraint supply_fits_its_container check ((kind in ('container', 'lid', 'liner')) = (container_kind_id is not null)),
  constraint supply_has_its_size check ((kind = 'absorber') = (size_millilitres is not null) and size_millilitres > 0),
  constraint supply_counts_something check (pieces_each between 1 and 1000 and pack_pieces between 1 and 1000000)
);
-- A plan counts on one supply for each thing that it needs. Gloves and the rest may be of many sorts.
create unique index supply_one_of_its_sort on book.supply (storehouse_id, kind, container_kind_id, size_millilitres)
  nulls not distinct where not is_retired and kind not in ('glove', 'other');
select book.keep_in_storehouse('book.supply');
grant select, insert on book.supply to sheafbook_app;
grant update (name, pieces_each, pack_pieces, pack_minor_units, is_retired, version) on book.supply to sheafbook_app;

-- Pieces that nobody owns stand outside: what a shop sold and what was used up. The storehouse's own never fall below nothing.
alter table book.account drop constraint account_guard_fits_kind;
alter table book.account add constraint account_guard_fits_kind check (guard = case
  when kind in ('buy_deposit', 'loan_deposit') or vessel_kind = 'supplier' then 'not_above'
  when kind = 'pieces' and owner_id is null then 'none'
  when kind in ('cash_tin', 'supplier_claim', 'supplies', 'common_stock', 'equipment', 'pieces') then 'not_below'
  when vessel_kind in ('transformed', 'unexplained') then 'none'
  when kind = 'mass' then 'not_below'
  else 'none' end);
