-- Foods of a storehouse: adopted from the reference table with its source and release, or the group's own.
create table book.food (
  storehouse_id uuid not null references book.storehouse,
  food_id uuid not null default uuidv7(),
  food_code text not null,
  name_en text not null,
  name_es text not null,
  food_group text not null,
  is_own boolean not null,
  kilocalories_per_100_grams integer, -- null: unknown, and then energy coverage says so
  protein_milligrams_per_100_grams integer,
  fat_milligrams_per_100_grams integer,
  carbohydrate_milligrams_per_100_grams integer,
  fibre_milligrams_per_100_grams integer,
  bulk_micrograms_per_millilitre integer,
  allergens text[] not null, -- an empty list is a statement: none
  gluten text not null,
  keeping_class text,
  needs_moisture_test boolean not null,
  source text not null,
  source_release text not null,
  source_number text not null,
  version integer not null default 1,
  retired_at timestamptz,
  primary key (storehouse_id, food_id),
  constraint food_code_once unique (storehouse_id, food_code),
  constraint food_code_shape check (food_code ~ '^[a-z0-9]+(-[a-z0-9]+)*$'),
  constraint food_named check (name_en ~ '\S' and name_es ~ '\S'),
  constraint food_group_known check (food_group in
    ('grains', 'legumes', 'dried-milk', 'fats', 'sugars', 'salt', 'other')),
  constraint food_allergens_known check (allergens <@ array['milk', 'egg', 'fish', 'crustacean-shellfish', 'tree-nuts',
    'peanuts', 'wheat', 'soy', 'sesame']::text[]),
  constraint food_gluten_known check (gluten in ('yes', 'no', 'cross-contact')),
  constraint food_figures_in_range check (kilocalories_per_100_grams between 0 and 950
    and protein_milligrams_per_100_grams between 0 and 100000 and fat_milligrams_per_100_grams between 0 and 100000
    and carbohydrate_milligrams_per_100_grams between 0 and 100000
    and fibre_milligrams_per_100_grams between 0 and 100000 and bulk_micrograms_per_millilitre between 1000 and 3000000)
);
select book.keep_in_storehouse('book.food');
grant select, insert on book.food to sheafbook_app;
grant update (name_en, name_es, food_group, kilocalories_per_100_grams, protein_milligrams_per_100_grams,
  fat_milligrams_per_100_grams, carbohydrate_milligrams_per_100_grams, fibre_milligrams_per_100_grams,
  bulk_micrograms_per_millilitre, allergens, gluten, needs_moisture_test, source, version, retired_at)
  on book.food to sheafbook_app;

create table book.container_kind (
  storehouse_id uuid not null references book.storehouse,
  container_kind_id uuid not null default uuidv7(),
  kind_code text not null,
  name_en text not null,
  name_es text not null,
  is_own boolean not null,
  capacity_microlitres bigint not null,
  tare_grams integer,
  price_minor_units book.amount,
  source text not null,
  version integer not null default 1,
  primary key (storehouse_id, container_kind_id),
  constraint container_kind_code_once unique (storehouse_id, kind_code),
  constraint container_kind_holds_something check (capacity_microlitres between 1000 and 1000000000),
  constraint container_kind_tare_in_range check (tare_grams between 0 and 100000)
);
select book.keep_in_storehouse('book.container_kind');
grant select, insert on book.container_kind to sheafbook_app;
grant update (price_minor_units, tare_grams, version) on book.container_kind to sheafbook_app;

create table book.supplier (
  storehouse_id uuid not null,
  supplier_id uuid not null,
  owner_kind text not null default 'supplier',
  name text not null,
  contact text not null default '',
  version integer not null default 1,
  primary key (storehouse_id, supplier_id),
  constraint supplier_owner_fk foreign key (storehouse_id, supplier_id, owner_kind)
    references book.owner (storehouse_id, owner_id, kind),
  constraint supplier_is_an_owner check (owner_kind = 'supplier'),
  constraint supplier_name_once unique (storehouse_id, name),
  constraint supplier_named check (name ~ '\S' and length(name) <= 120)
);
select book.keep_in_storehouse('book.supplier');
grant select, insert on book.supplier to sheafbook_app;
grant update (name, contact, version) on book.supplier to sheafbook_app;
