-- Who gets which grams and pays which cents, and when it leaves the store.
create table book.split (
  storehouse_id uuid not null,
  split_id uuid not null default uuidv7(),
  buy_id uuid not null,
  buy_line_id uuid not null,
  round_no integer not null, -- a released bag or a later part of the delivery is a further round
  rule text not null,
  method_version integer not null,
  answer jsonb not null,
  made_by uuid not null,
  made_at timestamptz not null,
  undone_at timestamptz,
  primary key (storehouse_id, split_id),
  constraint split_line_fk foreign key (storehouse_id, buy_id, buy_line_id)
    references book.buy_line (storehouse_id, buy_id, buy_line_id),
  constraint split_made_by_fk foreign key (storehouse_id, made_by) references book.person,
  constraint split_rule_known check (rule in
    ('proportional', 'equal-awards', 'equal-losses', 'first-come', 'need-first', 'rotation-of-loss'))
);
create unique index split_round_once on book.split (storehouse_id, buy_line_id, round_no) where undone_at is null;
-- Need-first inputs hold coverage figures, which stay private (job map section 5.2).
create table book.split_inputs (
  storehouse_id uuid not null,
  split_id uuid not null,
  inputs jsonb not null,
  primary key (storehouse_id, split_id),
  constraint split_inputs_split_fk foreign key (storehouse_id, split_id) references book.split
);
create table book.share (
  storehouse_id uuid not null,
  split_id uuid not null,
  owner_id uuid not null,
  claim_grams book.amount not null,
  award_grams book.amount not null,
  exact_award text not null, -- the exact fraction of grams, as printed on the split sheet
  carry_change_grams bigint not null default 0, -- actual loss minus proportional loss (job map section 5.3)
  primary key (storehouse_id, split_id, owner_id),
  constraint share_split_fk foreign key (storehouse_id, split_id) references book.split,
  constraint share_owner_fk foreign key (storehouse_id, owner_id) references book.owner
);
create table book.share_piece (
  storehouse_id uuid not null,
  split_id uuid not null,
  bag_id uuid not null,
  owner_id uuid not null,
  grams book.amount not null,
  primary key (storehouse_id, split_id, bag_id, owner_id),
  constraint share_piece_share_fk foreign key (storehouse_id, split_id, owner_id) references book.share,
  constraint share_piece_bag_fk foreign key (storehouse_id, bag_id) references book.bag,
  constraint share_piece_positive check (grams > 0)
);
create table book.charge_line (
  storehouse_id uuid not null,
  charge_line_id uuid not null default uuidv7(),
  buy_id uuid not null,
  cost_line text not null, -- such as 'goods:<line>', 'freight:by-weight', 'levy'; 'late:…' once shared out
  buy_line_id uuid,
  minor_units bigint not null, -- below zero: a credit
  entry_id uuid not null,
  primary key (storehouse_id, charge_line_id),
  constraint charge_line_buy_fk foreign key (storehouse_id, buy_id) references book.buy,
  constraint charge_line_line_fk foreign key (storehouse_id, buy_id, buy_line_id)
    references book.buy_line (storehouse_id, buy_id, buy_line_id),
  constraint charge_line_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint charge_line_exact_in_a_double check (minor_units between -9007199254740991 and 9007199254740991)
);
create index charge_line_by_buy on book.charge_line (storehouse_id, buy_id);
create table book.charge_share (
  storehouse_id uuid not null,
  charge_line_id uuid not null,
  owner_id uuid not null,
  minor_units bigint not null,
  weight numeric(40) not null,
  got_spare_unit boolean not null,
  primary key (storehouse_id, charge_line_id, owner_id),
  constraint charge_share_line_fk foreign key (storehouse_id, charge_line_id) references book.charge_line,
  constraint charge_share_owner_fk foreign key (storehouse_id, owner_id) references book.owner,
  constraint charge_share_exact_in_a_double check (minor_units between -9007199254740991 and 9007199254740991)
);
create table book.pick_up (
  storehouse_id uuid not null,
  pick_up_id uuid not null default uuidv7(),
  buy_id uuid not null,
  household_id uuid not null,
  starts_at timestamptz,
  ends_at timestamptz,
  signed_by text not null default '',
  handed_over_by uuid,
  collected_at timestamptz,
  version integer not null default 1,
  primary key (storehouse_id, pick_up_id),
  constraint pick_up_buy_fk foreign key (storehouse_id, buy_id) references book.buy,
  constraint pick_up_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint pick_up_handed_over_by_fk foreign key (storehouse_id, handed_over_by) references book.person,
  constraint pick_up_window_in_order check ((starts_at is null) = (ends_at is null) and starts_at < ends_at),
  constraint pick_up_signed check (collected_at is null or signed_by ~ '\S')
);
create table book.pick_up_piece (
  storehouse_id uuid not null,
  pick_up_id uuid not null,
  bag_id uuid not null,
  grams book.amount not null,
  primary key (storehouse_id, pick_up_id, bag_id),
  constraint pick_up_piece_pick_up_fk foreign key (storehouse_id, pick_up_id) references book.pick_up,
  constraint pick_up_piece_bag_fk foreign key (storehouse_id, bag_id) references book.bag,
  constraint pick_up_piece_positive check (grams > 0)
);
select book.keep_in_storehouse(t) from unnest(array['book.split', 'book.split_inputs', 'book.share', 'book.share_piece', 'book.charge_line',
  'book.charge_share', 'book.pick_up', 'book.pick_up_piece']::regclass[]) t;
create policy split_inputs_private on book.split_inputs as restrictive for select
  using ((select book.current_task()) in ('split', 'review'));
grant select, insert on book.split, book.split_inputs, book.share, book.share_piece, book.charge_line, book.charge_share, book.pick_up,
  book.pick_up_piece to sheafbook_app;
grant update (undone_at) on book.split to sheafbook_app;
grant update (starts_at, ends_at, signed_by, handed_over_by, collected_at, version) on book.pick_up to sheafbook_app;
