-- What the bank says beside what the book says, and the cash tin counted.
create table book.bank_file (
  storehouse_id uuid not null,
  bank_file_id uuid not null,
  name text not null,
  headings text not null, -- one text of the headings, to know the next file of this bank by
  columns jsonb not null, -- which column holds what, as the treasurer confirmed it
  taken_by uuid not null,
  taken_at timestamptz not null,
  primary key (storehouse_id, bank_file_id),
  constraint bank_file_taken_by_fk foreign key (storehouse_id, taken_by) references book.person,
  constraint bank_file_named check (name ~ '\S' and length(name) <= 200)
);
select book.keep_in_storehouse('book.bank_file');
grant select, insert on book.bank_file to sheafbook_app;

-- Append-only. The same line in an overlapping file is the same row: two equal payments of a day differ by occurrence.
create table book.bank_line (
  storehouse_id uuid not null,
  bank_line_id uuid not null default uuidv7(),
  bank_file_id uuid not null,
  row_no integer not null,
  on_day date not null,
  minor_units bigint not null, -- above zero came in, below zero went out
  words text not null,
  fingerprint text not null,
  occurrence integer not null,
  primary key (storehouse_id, bank_line_id),
  constraint bank_line_file_fk foreign key (storehouse_id, bank_file_id) references book.bank_file,
  constraint bank_line_once unique (storehouse_id, fingerprint, occurrence),
  constraint bank_line_amount_moves check (minor_units <> 0 and abs(minor_units) <= 9007199254740991),
  constraint bank_line_words_fit check (length(words) <= 500 and length(fingerprint) <= 600),
  constraint bank_line_counted_from_one check (occurrence >= 1 and row_no >= 1)
);
create index bank_line_by_day on book.bank_line (storehouse_id, on_day, bank_line_id);
select book.keep_in_storehouse('book.bank_line');
grant select, insert on book.bank_line to sheafbook_app;

-- What became of a line: it is an entry of the book, or it was set aside. One open answer a line, one line an entry.
create table book.bank_match (
  storehouse_id uuid not null,
  bank_match_id uuid not null default uuidv7(),
  bank_line_id uuid not null,
  how text not null,
  entry_id uuid,
  reason text not null default '', -- why it was set aside, or what answered the question whether it is a second receipt
  matched_by uuid not null,
  matched_at timestamptz not null,
  undone_by uuid,
  undone_at timestamptz,
  undone_because text,
  primary key (storehouse_id, bank_match_id),
  constraint bank_match_line_fk foreign key (storehouse_id, bank_line_id) references book.bank_line,
  constraint bank_match_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint bank_match_matched_by_fk foreign key (storehouse_id, matched_by) references book.person,
  constraint bank_match_undone_by_fk foreign key (storehouse_id, undone_by) references book.person,
  constraint bank_match_how_known check (how in ('in-book', 'posted', 'set-aside')),
  constraint bank_match_entry_fits_how check ((how = 'set-aside') = (entry_id is null)),
  constraint bank_match_set_aside_explained check (how <> 'set-aside' or reason ~ '\S'),
  constraint bank_match_undone_whole check ((undone_by is null) = (undone_at is null)
    and (undone_at is null) = (undone_because is null) and (undone_because is null or undone_because ~ '\S'))
);
create unique index bank_match_line_once on book.bank_match (storehouse_id, bank_line_id) where undone_at is null;
create unique index bank_match_entry_once on book.bank_match (storehouse_id, entry_id) where undone_at is null;
create index bank_match_by_line on book.bank_match (storehouse_id, bank_line_id);
create index bank_match_by_entry on book.bank_match (storehouse_id, entry_id) where entry_id is not null;
select book.keep_in_storehouse('book.bank_match');
grant select, insert on book.bank_match to sheafbook_app;
grant update (undone_by, undone_at, undone_because) on book.bank_match to sheafbook_app;
grant select on book.bank_match to sheafbook_poster;

-- A line is an entry only if the bank's account moved by the line's amount in it, and only while the entry stands. An
-- import brings matches before it brings movements, so it can be put off to the end of a transaction.
create function book.bank_match_fits() returns trigger language plpgsql set search_path = pg_catalog, pg_temp as $$
declare
  said bigint;
  booked bigint;
begin
  select l.minor_units into said from book.bank_line l
    where l.storehouse_id = new.storehouse_id and l.bank_line_id = new.bank_line_id;
  select coalesce(sum(case when d.kind = 'bank' then m.amount else 0 end)
      - sum(case when o.kind = 'bank' then m.amount else 0 end), 0) into booked
    from book.movement m
    join book.account d on d.storehouse_id = m.storehouse_id and d.account_id = m.destination_id
    join book.account o on o.storehouse_id = m.storehouse_id and o.account_id = m.source_id
    where m.storehouse_id = new.storehouse_id and m.entry_id = new.entry_id;
  if said is distinct from booked then
    raise exception 'the line says % and the entry %', said, booked
      using errcode = 'check_violation', constraint = 'bank_match_same_amount';
  end if;
  if new.undone_at is null and exists (select from book.entry e where e.storehouse_id = new.storehouse_id
      and (e.reverses_id = new.entry_id or (e.entry_id = new.entry_id and e.reverses_id is not null))) then
    raise exception 'the entry was taken back'
      using errcode = 'check_violation', constraint = 'bank_match_entry_stands';
  end if;
  return null;
end $$;
create constraint trigger bank_match_fits after insert on book.bank_match deferrable
  for each row when (new.entry_id is not null) execute function book.bank_match_fits();

-- What the bank has confirmed is not taken back under it: first its line is let go.
create function book.refuse_reversal_of_matched() returns trigger language plpgsql
  set search_path = pg_catalog, pg_temp as $$
begin
  if exists (select from book.bank_match m where m.storehouse_id = new.storehouse_id
      and m.entry_id = new.reverses_id and m.undone_at is null) then
    raise exception 'a line of the bank is matched with this entry'
      using errcode = 'check_violation', constraint = 'entry_not_at_the_bank';
  end if;
  return new;
end $$;
create trigger entry_not_at_the_bank before insert on book.entry
  for each row when (new.reverses_id is not null) execute function book.refuse_reversal_of_matched();

-- What the bank said it held at the end of a day; the newest word for a day counts.
create table book.bank_balance (
  storehouse_id uuid not null,
  bank_balance_id uuid not null default uuidv7(),
  on_day date not null,
  minor_units bigint not null,
  bank_file_id uuid, -- empty where the treasurer read it off the statement
  said_by uuid not null,
  said_at timestamptz not null,
  primary key (storehouse_id, bank_balance_id),
  constraint bank_balance_file_fk foreign key (storehouse_id, bank_file_id) references book.bank_file,
  constraint bank_balance_said_by_fk foreign key (storehouse_id, said_by) references book.person,
  constraint bank_balance_exact_in_a_double check (abs(minor_units) <= 9007199254740991)
);
create index bank_balance_by_day on book.bank_balance (storehouse_id, on_day, said_at);
select book.keep_in_storehouse('book.bank_balance');
grant select, insert on book.bank_balance to sheafbook_app;

create table book.cash_count (
  storehouse_id uuid not null,
  cash_count_id uuid not null,
  on_day date not null,
  expected_minor_units book.amount not null,
  counted_minor_units book.amount not null,
  pieces jsonb, -- notes and coins by their worth, where they were counted one by one
  reason text not null default '',
  entry_id uuid,
  counted_by uuid not null,
  counted_with uuid, -- whoever counted along
  counted_at timestamptz not null,
  primary key (storehouse_id, cash_count_id),
  constraint cash_count_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint cash_count_entry_once unique (storehouse_id, entry_id),
  constraint cash_count_counted_by_fk foreign key (storehouse_id, counted_by) references book.person,
  constraint cash_count_counted_with_fk foreign key (storehouse_id, counted_with) references book.person,
  constraint cash_count_by_two_people check (counted_with <> counted_by),
  constraint cash_count_difference_posted check ((expected_minor_units = counted_minor_units) = (entry_id is null)),
  constraint cash_count_difference_explained check (expected_minor_units = counted_minor_units or reason ~ '\S')
);
select book.keep_in_storehouse('book.cash_count');
grant select, insert on book.cash_count to sheafbook_app;
