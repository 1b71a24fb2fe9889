-- The close of a year: its digest, who signed it, and what was counted of the common stock.

-- A digest of every entry that a close took in, chained to the close before it. Closes from before this have none.
alter table book.period_close
  add column entry_count integer,
  add column digest_sha256 text,
  add constraint period_close_digest_whole check ((entry_count is null) = (digest_sha256 is null)),
  add constraint period_close_digest_is_sha256 check (digest_sha256 ~ '^[0-9a-f]{64}$');

-- Reviewer, treasurer and coordinator each sign what was closed, once. What was signed is never taken back.
create table book.period_signature (
  storehouse_id uuid not null,
  closed_through date not null,
  duty text not null,
  person_id uuid not null,
  signed_at timestamptz not null,
  digest_sha256 text not null, -- what they saw
  remarks text not null default '',
  constraint period_signature_once_a_duty primary key (storehouse_id, closed_through, duty),
  constraint period_signature_close_fk foreign key (storehouse_id, closed_through) references book.period_close,
  constraint period_signature_person_fk foreign key (storehouse_id, person_id) references book.person,
  constraint period_signature_duty_known check (duty in ('reviewer', 'treasurer', 'coordinator')),
  constraint period_signature_two_people unique (storehouse_id, closed_through, person_id)
);

-- A count of common stock in one bag or container against the book. A difference posts nothing by itself.
create table book.stock_count (
  storehouse_id uuid not null,
  stock_count_id uuid not null default uuidv7(),
  account_id uuid not null,
  book_grams book.amount not null,
  counted_grams book.amount not null,
  note text not null default '',
  counted_by uuid not null,
  counted_at timestamptz not null,
  entry_id uuid, -- the entry that booked the difference
  primary key (storehouse_id, stock_count_id),
  constraint stock_count_account_fk foreign key (storehouse_id, account_id) references book.account,
  constraint stock_count_counted_by_fk foreign key (storehouse_id, counted_by) references book.person,
  constraint stock_count_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint stock_count_books_a_difference check (entry_id is null or book_grams <> counted_grams)
);
create index stock_count_by_account on book.stock_count (storehouse_id, account_id);
create index stock_count_by_entry on book.stock_count (storehouse_id, entry_id);

select book.keep_in_storehouse(t) from unnest(array['book.period_signature', 'book.stock_count']::regclass[]) as t;
grant select, insert on book.period_signature, book.stock_count to sheafbook_app;
grant update (entry_id) on book.stock_count to sheafbook_app;
