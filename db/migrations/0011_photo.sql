-- Photos of what landed and of what is claimed. They are evidence, so they are kept with the book and go with it wherever
-- it goes; a photo taken by mistake may be taken away until its buy is closed.

alter table book.bag add constraint bag_of_its_buy unique (storehouse_id, buy_id, bag_id);
alter table book.claim add constraint claim_of_its_buy unique (storehouse_id, buy_id, claim_id);

create table book.photo (
  storehouse_id uuid not null,
  photo_id uuid not null default uuidv7(),
  buy_id uuid not null,
  bag_id uuid,
  claim_id uuid,
  delivery_id uuid,
  content bytea not null,
  width_pixels integer not null,
  height_pixels integer not null,
  note text not null default '',
  added_by uuid not null,
  added_at timestamptz not null,
  primary key (storehouse_id, photo_id),
  constraint photo_bag_fk foreign key (storehouse_id, buy_id, bag_id) references book.bag (storehouse_id, buy_id, bag_id),
  constraint photo_claim_fk foreign key (storehouse_id, buy_id, claim_id)
    references book.claim (storehouse_id, buy_id, claim_id),
  constraint photo_delivery_fk foreign key (storehouse_id, buy_id, delivery_id)
    references book.delivery (storehouse_id, buy_id, delivery_id),
  constraint photo_added_by_fk foreign key (storehouse_id, added_by) references book.person,
  constraint photo_shows_one_thing check (num_nonnulls(bag_id, claim_id, delivery_id) = 1),
  constraint photo_of_2_mebibytes check (octet_length(content) between 4 and 2 * 1024 * 1024),
  constraint photo_is_jpeg check (substring(content from 1 for 3) = '\xffd8ff'::bytea),
  constraint photo_has_size check (width_pixels > 0 and height_pixels > 0)
);
create unique index photo_once on book.photo (storehouse_id, bag_id, claim_id, delivery_id, sha256(content))
  nulls not distinct;
create index photo_by_buy on book.photo (storehouse_id, buy_id);
alter table book.photo alter column content set storage external; -- a JPEG does not press any smaller

select book.keep_in_storehouse('book.photo');
grant select, insert, delete on book.photo to sheafbook_app;
