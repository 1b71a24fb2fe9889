-- What was spilled or sampled at a line keeps the hour at which a pen or a phone wrote it, beside the one at which it reached the
-- book, as pours and checks do. What it came to stands in its entry.
create table book.packing_loss (
  storehouse_id uuid not null,
  entry_id uuid not null,
  packing_session_id uuid not null,
  bag_id uuid not null,
  household_id uuid not null,
  lost_at timestamptz not null,
  recorded_at timestamptz not null,
  primary key (storehouse_id, entry_id),
  constraint packing_loss_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint packing_loss_bag_brought_fk foreign key (storehouse_id, packing_session_id, bag_id, household_id)
    references book.packing_bag (storehouse_id, packing_session_id, bag_id, household_id),
  constraint packing_loss_lost_before_recorded check (lost_at <= recorded_at)
);
create index packing_loss_by_session on book.packing_loss (storehouse_id, packing_session_id, lost_at);
select book.keep_in_storehouse('book.packing_loss');
grant select, insert on book.packing_loss to sheafbook_app;

-- Of older ones the book knows no other hour than its own.
insert into book.packing_loss (storehouse_id, entry_id, packing_session_id, bag_id, household_id, lost_at, recorded_at)
select e.storehouse_id, e.entry_id, e.subject_id, b.vessel_id, b.owner_id, e.recorded_at, e.recorded_at
  from book.entry e
  join book.movement m on m.storehouse_id = e.storehouse_id and m.entry_id = e.entry_id
  join book.account b on b.storehouse_id = m.storehouse_id and b.account_id = m.source_id and b.vessel_kind = 'bag'
  join book.packing_bag p on p.storehouse_id = e.storehouse_id and p.packing_session_id = e.subject_id
    and p.bag_id = b.vessel_id and p.household_id = b.owner_id
  where e.what in ('session-spilled', 'session-sampled');
