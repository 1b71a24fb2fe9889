-- Where whoever came stood, in spells of 45 minutes: written once, as the mass of a packing day is signed, so that the next day begins
-- them elsewhere.
create table book.packing_stood (
  storehouse_id uuid not null,
  packing_session_id uuid not null,
  person_id uuid not null,
  station text not null,
  spells smallint not null,
  primary key (storehouse_id, packing_session_id, person_id, station),
  constraint packing_stood_session_fk foreign key (storehouse_id, packing_session_id) references book.packing_session,
  constraint packing_stood_person_fk foreign key (storehouse_id, person_id) references book.person,
  constraint packing_stood_station_known check (station in ('fill', 'weigh', 'absorber', 'seam', 'label', 'box')),
  constraint packing_stood_counts_some check (spells > 0)
);
create index packing_stood_by_person on book.packing_stood (storehouse_id, person_id);
select book.keep_in_storehouse('book.packing_stood');
grant select, insert on book.packing_stood to sheafbook_app;
