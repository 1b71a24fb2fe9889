-- Whether a scale is true: a known weight is laid on, and what it shows is written down beside it. A check is never changed; a
-- later one stands in its place. The limit is the group's or the maker's, of that day.
alter table book.equipment_item add column is_scale boolean not null default false;
grant update (is_scale) on book.equipment_item to sheafbook_app;
alter table book.equipment_item add constraint equipment_item_is_scale unique (storehouse_id, equipment_item_id, is_scale);

create table book.scale_check (
  storehouse_id uuid not null,
  scale_check_id uuid not null default uuidv7(),
  equipment_item_id uuid not null,
  equipment_unit_id uuid not null,
  is_scale boolean not null default true, -- what was checked is a scale, and stays one
  laid_grams bigint not null,
  shown_grams bigint not null,
  limit_grams bigint not null,
  checked_on date not null,
  checked_by uuid not null,
  recorded_at timestamptz not null,
  primary key (storehouse_id, scale_check_id),
  constraint scale_check_unit_fk foreign key (storehouse_id, equipment_item_id, equipment_unit_id)
    references book.equipment_unit (storehouse_id, equipment_item_id, equipment_unit_id),
  constraint scale_check_of_a_scale foreign key (storehouse_id, equipment_item_id, is_scale)
    references book.equipment_item (storehouse_id, equipment_item_id, is_scale),
  constraint scale_check_checked_by_fk foreign key (storehouse_id, checked_by) references book.person,
  constraint scale_check_only_scales check (is_scale),
  constraint scale_check_lays_a_weight check (laid_grams between 1 and 9007199254740991),
  constraint scale_check_shows_a_weight check (shown_grams between 0 and 9007199254740991),
  constraint scale_check_limit_known check (limit_grams between 0 and 9007199254740991),
  constraint scale_check_has_happened check (checked_on <= (recorded_at at time zone 'UTC')::date + 1)
);
create index scale_check_by_unit on book.scale_check (storehouse_id, equipment_unit_id, checked_on);
select book.keep_in_storehouse('book.scale_check');
grant select, insert on book.scale_check to sheafbook_app;
