-- Calendars: addresses that only their owners know, and what has been told under them.
create table book.calendar_feed (
  storehouse_id uuid not null,
  calendar_feed_id uuid not null default uuidv7(),
  person_id uuid not null,
  scope text not null,
  item_kind text, -- what the feed is about when it is about one thing: a buy, an equipment item
  item_id uuid,
  language text not null,
  secret_sha256 text not null, -- of the secret in the address; the secret itself is stored nowhere
  made_at timestamptz not null,
  renewed_at timestamptz,
  ended_at timestamptz,
  primary key (storehouse_id, calendar_feed_id),
  constraint calendar_feed_person_fk foreign key (storehouse_id, person_id) references book.person,
  constraint calendar_feed_secret_once unique (storehouse_id, secret_sha256),
  constraint calendar_feed_secret_is_sha256 check (secret_sha256 ~ '^[0-9a-f]{64}$'),
  constraint calendar_feed_scope_known check (scope in ('mine', 'storehouse', 'item')),
  constraint calendar_feed_item_whole
    check ((scope = 'item') = (item_kind is not null) and (item_kind is null) = (item_id is null)),
  constraint calendar_feed_language_known check (language in ('en', 'es'))
);
create index calendar_feed_by_secret on book.calendar_feed (secret_sha256);
create index calendar_feed_by_person on book.calendar_feed (storehouse_id, person_id);
select book.keep_in_storehouse('book.calendar_feed');
grant select, insert on book.calendar_feed to sheafbook_app;
grant update (secret_sha256, renewed_at, ended_at) on book.calendar_feed to sheafbook_app;

-- An appointment as it was told last. RFC 5545 wants a number that rises with each change of it, and the facts that it
-- is drawn from are of many tables, not all of which count their versions.
create table book.calendar_event (
  storehouse_id uuid not null references book.storehouse,
  event_key text not null,
  household_id uuid, -- null: everybody's
  content jsonb not null,
  sequence integer not null default 0,
  modified_at timestamptz not null,
  primary key (storehouse_id, event_key),
  constraint calendar_event_household_fk foreign key (storehouse_id, household_id) references book.household
);
create index calendar_event_by_household on book.calendar_event (storehouse_id, household_id);
select book.keep_in_storehouse('book.calendar_event');
create policy calendar_event_private on book.calendar_event as restrictive for all
  using (household_id is null or household_id = (select book.current_household())
    or (select book.current_task()) = 'leaving')
  with check (household_id is null or household_id = (select book.current_household()));
grant select, insert, delete on book.calendar_event to sheafbook_app;
grant update (content, sequence, modified_at) on book.calendar_event to sheafbook_app;

-- A calendar program has no session: the hash of what it knows leads to the feed and to whose it is, as long as that
-- person belongs to the storehouse.
create function door.find_calendar_feed(wanted text) returns table (calendar_feed_id uuid, storehouse_id uuid,
  storehouse_name text, scope text, item_kind text, item_id uuid, language text, person_id uuid, login_id uuid,
  household_id uuid, currency text, time_zone text)
  language sql stable security definer set search_path = pg_catalog, pg_temp
  begin atomic
    select f.calendar_feed_id, f.storehouse_id, st.name, f.scope, f.item_kind, f.item_id, f.language, p.person_id,
      p.login_id, case when h.left_on is null then p.household_id end, st.currency::text, st.time_zone
    from book.calendar_feed f
    join book.storehouse st on st.storehouse_id = f.storehouse_id
    join book.person p on p.storehouse_id = f.storehouse_id and p.person_id = f.person_id
      and p.left_on is null and p.login_id is not null
    left join book.household h on h.storehouse_id = p.storehouse_id and h.household_id = p.household_id
    where f.secret_sha256 = wanted and f.ended_at is null;
  end;
revoke execute on function door.find_calendar_feed from public;
grant execute on function door.find_calendar_feed to sheafbook_app;
