-- How a container that was filled was weighed (job map 6): its food alone, or with the container on the scale and its tare taken
-- off. What went into the book is the net in either case, so the three figures add up.
alter table book.packing_pour
  add column weighed_how text not null default 'net',
  add column gross_grams bigint,
  add column tare_grams bigint,
  add column container_tare_id uuid, -- the ten empties whose mean was taken off
  add constraint packing_pour_tare_fk foreign key (storehouse_id, container_tare_id) references book.container_tare,
  add constraint packing_pour_weighed_known check (weighed_how in ('net', 'tare-of-kind', 'own-tare')),
  add constraint packing_pour_weighed_whole check
    (num_nonnulls(gross_grams, tare_grams) = case when weighed_how = 'net' then 0 else 2 end),
  add constraint packing_pour_names_its_tare check ((weighed_how = 'tare-of-kind') = (container_tare_id is not null)),
  add constraint packing_pour_net_adds_up check (tare_grams between 1 and 100000 and gross_grams - tare_grams = grams);
-- Nothing refers to a weighing together with its kind.
alter table book.container_tare drop constraint container_tare_of_its_kind;
