-- A thermometer is checked as a scale is: held into a known temperature, and what it shows is written down beside it. Both lie
-- in one table, since how they stand, who checks and who reads is one rule; each has figures of its own unit, and only those.
alter table book.equipment_item add column is_thermometer boolean not null default false;
grant update (is_thermometer) on book.equipment_item to sheafbook_app;
alter table book.equipment_item
  add constraint equipment_item_is_thermometer unique (storehouse_id, equipment_item_id, is_thermometer),
  add constraint equipment_item_measures_one_thing check (not (is_scale and is_thermometer));

alter table book.scale_check
  alter column laid_grams drop not null,
  alter column shown_grams drop not null,
  alter column limit_grams drop not null,
  add column is_thermometer boolean not null default false, -- as is_scale: what was checked as one stays one
  add column known_tenths integer, -- of a degree Celsius, as those below
  add column shown_tenths integer,
  add column limit_tenths integer,
  drop constraint scale_check_only_scales,
  add constraint scale_check_of_a_thermometer foreign key (storehouse_id, equipment_item_id, is_thermometer)
    references book.equipment_item (storehouse_id, equipment_item_id, is_thermometer),
  add constraint scale_check_of_one_kind check (is_scale <> is_thermometer),
  add constraint scale_check_grams_of_a_scale check
    (num_nonnulls(laid_grams, shown_grams, limit_grams) = case when is_scale then 3 else 0 end),
  add constraint scale_check_degrees_of_a_thermometer check
    (num_nonnulls(known_tenths, shown_tenths, limit_tenths) = case when is_thermometer then 3 else 0 end),
  add constraint scale_check_temperature_is_possible check
    (known_tenths between -1000 and 3000 and shown_tenths between -1000 and 3000),
  add constraint scale_check_degrees_limit_known check (limit_tenths between 0 and 4000);
