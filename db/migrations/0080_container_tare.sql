-- What ten empty containers of a kind weigh, written down when a new batch of them or of their lids is opened (job map 6). The mean
-- and the spread follow from the ten by one function and are not kept. A weighing is never changed; a later one stands in its place.
create table book.container_tare (
  storehouse_id uuid not null,
  container_tare_id uuid not null default uuidv7(),
  container_kind_id uuid not null,
  readings integer[] not null, -- grams, in the order in which they were weighed
  weighed_by uuid not null,
  weighed_at timestamptz not null,
  recorded_at timestamptz not null,
  primary key (storehouse_id, container_tare_id),
  constraint container_tare_kind_fk foreign key (storehouse_id, container_kind_id) references book.container_kind,
  constraint container_tare_weighed_by_fk foreign key (storehouse_id, weighed_by) references book.person,
  constraint container_tare_of_ten check
    (array_ndims(readings) = 1 and cardinality(readings) = 10 and array_position(readings, null) is null),
  constraint container_tare_weighs_something check (1 <= all (readings) and 100000 >= all (readings)),
  constraint container_tare_has_happened check (weighed_at <= recorded_at + interval '5 minutes'),
  constraint container_tare_of_its_kind unique (storehouse_id, container_tare_id, container_kind_id)
);
create index container_tare_by_kind on book.container_tare (storehouse_id, container_kind_id, weighed_at);
select book.keep_in_storehouse('book.container_tare');
grant select, insert on book.container_tare to sheafbook_app;
