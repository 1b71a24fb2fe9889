-- Cartons: each holds so many containers of a kind (`pieces_each`), so that a day wants one for each so many begun.
alter table book.supply
  drop constraint supply_kind_known,
  add constraint supply_kind_known check (kind in ('container', 'lid', 'liner', 'carton', 'absorber', 'dry-ice', 'label',
    'glove', 'other')),
  drop constraint supply_fits_its_container,
  add constraint supply_fits_its_container check ((kind in ('container', 'lid', 'liner', 'carton'))
    = (container_kind_id is not null));
