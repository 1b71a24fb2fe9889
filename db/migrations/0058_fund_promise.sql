-- What is promised out of the store fund: an amount for a purpose, until an entry fulfils it or it is withdrawn.
create table book.fund_promise (
  storehouse_id uuid not null,
  fund_promise_id uuid not null default uuidv7(),
  minor_units book.amount not null,
  purpose text not null,
  equipment_item_id uuid, -- where it is for a thing of the group's
  override_reason text not null default '', -- why it was promised though the fund had less free
  approved_by uuid not null,
  approved_at timestamptz not null,
  entry_id uuid, -- what fulfilled it; where that was taken back, the promise stands again
  withdrawn_by uuid,
  withdrawn_at timestamptz,
  withdrawn_because text,
  primary key (storehouse_id, fund_promise_id),
  constraint fund_promise_item_fk foreign key (storehouse_id, equipment_item_id) references book.equipment_item,
  constraint fund_promise_approved_by_fk foreign key (storehouse_id, approved_by) references book.person,
  constraint fund_promise_withdrawn_by_fk foreign key (storehouse_id, withdrawn_by) references book.person,
  constraint fund_promise_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint fund_promise_entry_once unique (storehouse_id, entry_id),
  constraint fund_promise_promises_something check (minor_units > 0),
  constraint fund_promise_has_a_purpose check (purpose ~ '\S'),
  constraint fund_promise_withdrawn_whole check ((withdrawn_at is null) = (withdrawn_by is null)
    and (withdrawn_at is null) = (withdrawn_because is null)),
  constraint fund_promise_ends_once check (entry_id is null or withdrawn_at is null)
);
create index fund_promise_by_item on book.fund_promise (storehouse_id, equipment_item_id);
select book.keep_in_storehouse('book.fund_promise');
grant select, insert on book.fund_promise to sheafbook_app;
grant update (entry_id, withdrawn_by, withdrawn_at, withdrawn_because) on book.fund_promise to sheafbook_app;
