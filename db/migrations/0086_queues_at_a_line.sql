-- How many containers wait in front of a station, as somebody there said at a moment: only added to, and never of a person.
create table book.packing_queue (
  storehouse_id uuid not null,
  packing_queue_id uuid not null default uuidv7(),
  packing_session_id uuid not null,
  line smallint not null,
  station text not null,
  waiting smallint not null,
  said_by uuid not null,
  said_at timestamptz not null,
  primary key (storehouse_id, packing_queue_id),
  constraint packing_queue_session_fk foreign key (storehouse_id, packing_session_id) references book.packing_session,
  constraint packing_queue_said_by_fk foreign key (storehouse_id, said_by) references book.person,
  constraint packing_queue_in_range check (line between 1 and 20 and waiting between 0 and 999),
  constraint packing_queue_station_known check (station in ('fill', 'weigh', 'absorber', 'seam', 'label', 'box'))
);
create index packing_queue_by_session on book.packing_queue (storehouse_id, packing_session_id, said_at);
select book.keep_in_storehouse('book.packing_queue');
grant select, insert on book.packing_queue to sheafbook_app;
