-- How each person wants to be reminded, and what each was told. A reminder itself is never stored: it follows from the
-- book as it stands, so that what is moved or cancelled moves or cancels it. Only that it was told is kept.
create table book.telling_wish (
  storehouse_id uuid not null,
  person_id uuid not null,
  language text not null,
  time_zone text not null,
  from_hour integer not null,
  to_hour integer not null, -- no longer in the hours; 24 is the end of the day
  digest_hour integer, -- null: each thing in a letter of its own
  is_email_on boolean not null,
  stopped_kinds text[] not null,
  version integer not null default 1,
  primary key (storehouse_id, person_id),
  constraint telling_wish_person_fk foreign key (storehouse_id, person_id) references book.person,
  constraint telling_wish_language_known check (language in ('en', 'es')),
  constraint telling_wish_hours_come check (from_hour between 0 and 23 and to_hour between 1 and 24
    and from_hour <> to_hour),
  constraint telling_wish_digest_comes check (digest_hour between 0 and 23 and case when from_hour < to_hour
    then digest_hour >= from_hour and digest_hour < to_hour
    else digest_hour >= from_hour or digest_hour < to_hour end)
);
create table book.telling (
  storehouse_id uuid not null,
  person_id uuid not null,
  channel text not null,
  telling_key text not null, -- what, which, when it is due, and how near: see the feature "reminder"
  told_at timestamptz not null,
  primary key (storehouse_id, person_id, channel, telling_key),
  constraint telling_person_fk foreign key (storehouse_id, person_id) references book.person,
  constraint telling_channel_known check (channel in ('email'))
);
-- The links in letters by which a kind is stopped without signing in: only a token's hash is kept, as of invitations.
create table book.stop_link (
  storehouse_id uuid not null,
  token_hash text not null,
  person_id uuid not null,
  kind text not null,
  made_at timestamptz not null,
  primary key (storehouse_id, token_hash),
  constraint stop_link_person_fk foreign key (storehouse_id, person_id) references book.person
);
select book.keep_in_storehouse(t)
  from unnest(array['book.telling_wish', 'book.telling', 'book.stop_link']::regclass[]) t;
grant select, insert, delete on book.telling_wish, book.telling, book.stop_link to sheafbook_app;
grant update (language, time_zone, from_hour, to_hour, digest_hour, is_email_on, stopped_kinds, version)
  on book.telling_wish to sheafbook_app;
