-- Whether a household lets its food be run together with others' of the same lot, kind and treatment. What that comes to is reckoned
-- from the bags and the wishes until the grams that change hands are booked; nobody's food is mixed who has not said so.
alter table book.packing_wish add column may_mix boolean not null default false;

-- Grams that changed hands in the bags, so that each container of a mixed run has one owner, with what each household had of it.
create table book.packing_mix (
  storehouse_id uuid not null,
  packing_mix_id uuid not null default uuidv7(),
  packing_session_id uuid not null,
  line smallint not null,
  lot_id uuid not null,
  container_kind_id uuid not null,
  treatment text not null,
  grams_each book.amount not null,
  wish_ids uuid[] not null,
  shares jsonb not null, -- by seat: put in, containers, left over, got
  entry_id uuid not null,
  posted_by uuid not null,
  posted_at timestamptz not null,
  undone_entry_id uuid,
  primary key (storehouse_id, packing_mix_id),
  constraint packing_mix_session_fk foreign key (storehouse_id, packing_session_id) references book.packing_session,
  constraint packing_mix_lot_fk foreign key (storehouse_id, lot_id) references book.lot,
  constraint packing_mix_kind_fk foreign key (storehouse_id, container_kind_id) references book.container_kind,
  constraint packing_mix_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint packing_mix_undone_entry_fk foreign key (storehouse_id, undone_entry_id) references book.entry,
  constraint packing_mix_posted_by_fk foreign key (storehouse_id, posted_by) references book.person,
  constraint packing_mix_of_several check (cardinality(wish_ids) > 1 and line between 1 and 20)
);
create unique index packing_mix_stands_once on book.packing_mix
  (storehouse_id, packing_session_id, line, lot_id, container_kind_id, treatment, grams_each) where undone_entry_id is null;
select book.keep_in_storehouse('book.packing_mix');
grant select, insert on book.packing_mix to sheafbook_app;
grant update (undone_entry_id) on book.packing_mix to sheafbook_app;
