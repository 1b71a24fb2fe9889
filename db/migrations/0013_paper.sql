-- Papers that were printed, so that the code and the QR on each lead back to what it is about; and what was written on
-- one with a pen and keyed in later.
alter table book.code_counter drop constraint code_counter_known;
alter table book.code_counter add constraint code_counter_known
  check (counter in ('bag', 'container', 'order', 'paper', 'seat'));
insert into book.code_counter (storehouse_id, counter) select storehouse_id, 'paper' from book.storehouse;

create table book.paper (
  storehouse_id uuid not null,
  paper_id uuid not null default uuidv7(),
  paper_no bigint not null,
  paper_code text not null,
  kind text not null,
  buy_id uuid,
  household_id uuid,
  subject_id uuid, -- the order, split or claim that it is about
  as_of_entry_no bigint not null, -- the last entry of the book when it was printed
  printed_on date not null,
  printed_by uuid not null,
  printed_at timestamptz not null,
  primary key (storehouse_id, paper_id),
  constraint paper_buy_fk foreign key (storehouse_id, buy_id) references book.buy,
  constraint paper_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint paper_printed_by_fk foreign key (storehouse_id, printed_by) references book.person,
  constraint paper_no_once unique (storehouse_id, paper_no),
  constraint paper_code_once unique (storehouse_id, paper_code),
  -- Printed again on the same day by the same person with nothing booked meanwhile, a paper keeps its number.
  constraint paper_printing_once unique nulls not distinct
    (storehouse_id, kind, buy_id, household_id, subject_id, as_of_entry_no, printed_on, printed_by),
  constraint paper_kind_known check (kind in ('buy-sheet', 'pledge-slip', 'quote-comparison', 'order', 'landing-sheet',
    'claim-letter', 'split-sheet', 'statement', 'who-owes'))
);

create table book.keying (
  storehouse_id uuid not null,
  keying_id uuid not null default uuidv7(),
  what text not null,
  subject_id uuid not null, -- the pledge, delivery, bag or pick-up
  buy_id uuid not null,
  household_id uuid, -- whose it is, where it is one household's
  paper_id uuid,
  written_at timestamptz not null, -- what the pen says
  keyed_at timestamptz not null,
  keyed_by uuid not null,
  is_entered_for boolean not null,
  primary key (storehouse_id, keying_id),
  constraint keying_buy_fk foreign key (storehouse_id, buy_id) references book.buy,
  constraint keying_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint keying_paper_fk foreign key (storehouse_id, paper_id) references book.paper,
  constraint keying_keyed_by_fk foreign key (storehouse_id, keyed_by) references book.person,
  constraint keying_what_known check (what in ('pledge', 'delivery', 'count', 'bag', 'weight', 'pick-up')),
  constraint keying_written_first check (written_at <= keyed_at)
);
create index keying_by_subject on book.keying (storehouse_id, subject_id);
create index keying_by_buy on book.keying (storehouse_id, buy_id);
select book.keep_in_storehouse(t) from unnest(array['book.paper', 'book.keying']::regclass[]) t;
grant select, insert on book.paper, book.keying to sheafbook_app;
