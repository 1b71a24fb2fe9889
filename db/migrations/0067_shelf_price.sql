-- What a food costs on a shop's shelf, as a coordinator saw it: what a group pays is compared with it at the year's end.
create table book.shelf_price (
  storehouse_id uuid not null,
  shelf_price_id uuid not null default uuidv7(),
  food_id uuid not null,
  seen_on date not null,
  minor_units bigint not null,
  grams bigint not null, -- for this much
  seen_where text not null default '',
  noted_by uuid not null,
  noted_at timestamptz not null,
  withdrawn_at timestamptz, -- a slip of the pen; it counts no more
  primary key (storehouse_id, shelf_price_id),
  constraint shelf_price_food_fk foreign key (storehouse_id, food_id) references book.food,
  constraint shelf_price_noted_by_fk foreign key (storehouse_id, noted_by) references book.person,
  constraint shelf_price_is_a_price check (minor_units between 1 and 9007199254740991),
  constraint shelf_price_for_some_mass check (grams between 1 and 9007199254740991)
);
create index shelf_price_by_food on book.shelf_price (storehouse_id, food_id, seen_on);
select book.keep_in_storehouse('book.shelf_price');
grant select, insert on book.shelf_price to sheafbook_app;
grant update (withdrawn_at) on book.shelf_price to sheafbook_app;
