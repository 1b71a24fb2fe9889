-- Whoever can own something: a household, the common stock, "nobody yet", or a supplier (ledger-notes 6.9: a real row).
create table book.owner (
  storehouse_id uuid not null references book.storehouse,
  owner_id uuid not null default uuidv7(),
  kind text not null,
  primary key (storehouse_id, owner_id),
  constraint owner_kind_known check (kind in ('household', 'common', 'unassigned', 'supplier')),
  constraint owner_id_and_kind unique (storehouse_id, owner_id, kind)
);
create unique index owner_single_kinds on book.owner (storehouse_id, kind) where kind in ('common', 'unassigned');
select book.keep_in_storehouse('book.owner');
grant select, insert on book.owner to sheafbook_app;

create table book.household (
  storehouse_id uuid not null,
  household_id uuid not null,
  owner_kind text not null default 'household',
  seat integer not null,
  name text not null,
  joined_on date not null,
  left_on date,
  version integer not null default 1,
  primary key (storehouse_id, household_id),
  constraint household_owner_fk foreign key (storehouse_id, household_id, owner_kind)
    references book.owner (storehouse_id, owner_id, kind),
  constraint household_is_an_owner check (owner_kind = 'household'),
  constraint household_seat_once unique (storehouse_id, seat),
  constraint household_seat_positive check (seat > 0),
  constraint household_name_once unique (storehouse_id, name),
  constraint household_named check (name ~ '\S' and length(name) <= 120),
  constraint household_leaves_after_joining check (left_on >= joined_on)
);
select book.keep_in_storehouse('book.household');
grant select, insert on book.household to sheafbook_app;
grant update (name, left_on, version) on book.household to sheafbook_app;

create table book.household_contact (
  storehouse_id uuid not null,
  household_id uuid not null,
  phone text not null default '',
  address text not null default '',
  shown_to_members boolean not null default false,
  version integer not null default 1,
  primary key (storehouse_id, household_id),
  constraint household_contact_household_fk foreign key (storehouse_id, household_id) references book.household
);
select book.keep_in_storehouse('book.household_contact');
grant select, insert, update, delete on book.household_contact to sheafbook_app;
-- A neighbour's telephone is read for a task only, or when its household shows it to members.
create policy household_contact_private on book.household_contact as restrictive for all
  using (household_id = (select book.current_household()) or shown_to_members
    or (select book.current_task()) in ('contact', 'leaving', 'take-along'))
  with check (household_id = (select book.current_household()) or (select book.current_task()) = 'leaving');

-- A person in one storehouse. The login may be absent: exports carry people, never credentials.
create table book.person (
  storehouse_id uuid not null references book.storehouse,
  person_id uuid not null default uuidv7(),
  login_id uuid,
  household_id uuid,
  name text not null,
  joined_on date not null,
  left_on date,
  primary key (storehouse_id, person_id),
  constraint person_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint person_login_once unique (storehouse_id, login_id),
  constraint person_named check (name ~ '\S' and length(name) <= 120)
);
create index person_by_login on book.person (login_id);
select book.keep_in_storehouse('book.person');
create policy my_storehouses on book.person for select
  using ((select book.current_storehouse()) is null and login_id = (select book.current_login()));
grant select, insert on book.person to sheafbook_app;
grant update (name, household_id, left_on, login_id) on book.person to sheafbook_app;
create policy my_storehouses on book.storehouse for select using ((select book.current_storehouse()) is null and exists
  (select from book.person p where p.storehouse_id = storehouse.storehouse_id
    and p.login_id = (select book.current_login()) and p.left_on is null));

create table book.duty_grant (
  storehouse_id uuid not null,
  duty_grant_id uuid not null default uuidv7(),
  person_id uuid not null,
  duty text not null,
  granted_by uuid,
  granted_at timestamptz not null,
  ended_at timestamptz,
  primary key (storehouse_id, duty_grant_id),
  constraint duty_grant_person_fk foreign key (storehouse_id, person_id) references book.person,
  constraint duty_grant_granted_by_fk foreign key (storehouse_id, granted_by) references book.person,
  constraint duty_grant_duty_known check (duty in
    ('coordinator', 'treasurer', 'packing_lead', 'equipment_keeper', 'reviewer'))
);
create unique index duty_grant_held_once on book.duty_grant (storehouse_id, person_id, duty) where ended_at is null;
select book.keep_in_storehouse('book.duty_grant');
grant select, insert on book.duty_grant to sheafbook_app;
grant update (ended_at) on book.duty_grant to sheafbook_app;

-- A session and what its login is in one storehouse: every request of a member begins with this look.
create function door.find_member(wanted text, wanted_storehouse uuid) returns table (session_id text,
  expires_at timestamptz, login_id uuid, email text, name text, person_id uuid, household_id uuid, currency text,
  time_zone text, duties text[])
  language sql stable security definer set search_path = pg_catalog, pg_temp
  begin atomic
    select s.session_id, s.expires_at, s.login_id, s.email, s.name, p.person_id,
      case when h.left_on is null then p.household_id end, st.currency::text, st.time_zone,
      array(select d.duty from book.duty_grant d
        where d.storehouse_id = p.storehouse_id and d.person_id = p.person_id and d.ended_at is null)
    from door.find_session(wanted) s
    left join book.person p
      on p.storehouse_id = wanted_storehouse and p.login_id = s.login_id and p.left_on is null
    left join book.household h on h.storehouse_id = p.storehouse_id and h.household_id = p.household_id
    left join book.storehouse st on st.storehouse_id = p.storehouse_id;
  end;
revoke execute on function door.find_member from public;
grant execute on function door.find_member to sheafbook_app;

create table book.invitation (
  storehouse_id uuid not null references book.storehouse,
  invitation_id uuid not null default uuidv7(),
  token_hash text not null,
  household_id uuid, -- null: whoever comes founds a new household
  household_name text,
  made_by uuid not null,
  made_at timestamptz not null,
  expires_at timestamptz not null,
  used_at timestamptz,
  withdrawn_at timestamptz,
  primary key (storehouse_id, invitation_id),
  constraint invitation_token_once unique (storehouse_id, token_hash),
  constraint invitation_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint invitation_made_by_fk foreign key (storehouse_id, made_by) references book.person
);
select book.keep_in_storehouse('book.invitation');
grant select, insert on book.invitation to sheafbook_app;
-- Once used it names the household it led to and forgets the suggested name, which leaves with its household.
grant update (used_at, withdrawn_at, household_id, household_name) on book.invitation to sheafbook_app;

-- Eaters and plans are the worst leak between neighbours, hence a second, restrictive policy (ledger-notes 6.19).
create table book.eater (
  storehouse_id uuid not null,
  eater_id uuid not null default uuidv7(),
  household_id uuid not null,
  name text not null,
  birth_on text not null, -- YYYY, YYYY-MM or YYYY-MM-DD; a month or a year counts as its first day
  sex text not null default 'unstated',
  activity text not null default 'moderate',
  present_percent integer not null default 100,
  height_centimetres integer,
  mass_kilograms integer,
  typed_kilocalories integer,
  excluded_allergens text[] not null default '{}',
  excluded_food_codes text[] not null default '{}',
  avoids_gluten boolean not null default false,
  version integer not null default 1,
  primary key (storehouse_id, eater_id),
  constraint eater_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint eater_named check (name ~ '\S' and length(name) <= 120),
  constraint eater_birth_shape check (birth_on ~ '^\d{4}(-\d{2}(-\d{2})?)?$'),
  constraint eater_sex_known check (sex in ('female', 'male', 'unstated')),
  constraint eater_activity_known check (activity in ('sedentary', 'moderate', 'active')),
  constraint eater_present_in_range check (present_percent between 0 and 100),
  constraint eater_measures_in_range check (height_centimetres between 30 and 250 and mass_kilograms between 1 and 400
    and typed_kilocalories between 0 and 10000)
);
create index eater_by_household on book.eater (storehouse_id, household_id);
select book.keep_in_storehouse('book.eater');
create policy eater_private on book.eater as restrictive for all
  using (household_id = (select book.current_household())
    or (select book.current_task()) in ('coverage-totals', 'need-first', 'leaving'))
  with check (household_id = (select book.current_household()));
grant select, insert, update, delete on book.eater to sheafbook_app;

create table book.household_plan (
  storehouse_id uuid not null,
  household_id uuid not null,
  need_basis text not null default 'guideline',
  target_days integer not null default 365,
  target_groups text[] not null default '{grains,legumes}',
  add_year boolean not null default false,
  version integer not null default 1,
  primary key (storehouse_id, household_id),
  constraint household_plan_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint household_plan_basis_known check (need_basis in ('guideline', 'energy')),
  constraint household_plan_target_in_range check (target_days between 1 and 3650)
);
create table book.household_guideline (
  storehouse_id uuid not null,
  household_id uuid not null,
  food_group text not null,
  grams_per_adult_year book.amount not null,
  primary key (storehouse_id, household_id, food_group),
  constraint household_guideline_household_fk foreign key (storehouse_id, household_id) references book.household
);
select book.keep_in_storehouse('book.household_plan');
select book.keep_in_storehouse('book.household_guideline');
create policy household_plan_private on book.household_plan as restrictive for all
  using (household_id = (select book.current_household())
    or (select book.current_task()) in ('coverage-totals', 'need-first', 'leaving'))
  with check (household_id = (select book.current_household()));
create policy household_guideline_private on book.household_guideline as restrictive for all
  using (household_id = (select book.current_household())
    or (select book.current_task()) in ('coverage-totals', 'need-first', 'leaving'))
  with check (household_id = (select book.current_household()));
grant select, insert, update, delete on book.household_plan, book.household_guideline to sheafbook_app;

-- A helper's right to act for a household always ends.
create table book.helper_grant (
  storehouse_id uuid not null,
  helper_grant_id uuid not null default uuidv7(),
  person_id uuid not null,
  household_id uuid not null,
  reason text not null,
  granted_by uuid not null,
  granted_at timestamptz not null,
  expires_at timestamptz not null,
  ended_at timestamptz,
  primary key (storehouse_id, helper_grant_id),
  constraint helper_grant_person_fk foreign key (storehouse_id, person_id) references book.person,
  constraint helper_grant_granted_by_fk foreign key (storehouse_id, granted_by) references book.person,
  constraint helper_grant_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint helper_grant_ends check (expires_at > granted_at)
);
select book.keep_in_storehouse('book.helper_grant');
grant select, insert on book.helper_grant to sheafbook_app;
grant update (ended_at, reason) on book.helper_grant to sheafbook_app; -- the reason leaves with its household

-- Who looked at a household's private things, when and why; shown to that household, never changed.
create table book.private_read (
  storehouse_id uuid not null,
  private_read_id uuid not null default uuidv7(),
  household_id uuid not null,
  person_id uuid not null,
  what text not null,
  purpose text not null,
  read_at timestamptz not null,
  primary key (storehouse_id, private_read_id),
  constraint private_read_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint private_read_person_fk foreign key (storehouse_id, person_id) references book.person
);
create index private_read_by_household on book.private_read (storehouse_id, household_id, private_read_id desc);
select book.keep_in_storehouse('book.private_read');
grant select, insert on book.private_read to sheafbook_app;
grant select, delete on book.private_read to sheafbook_housekeeping;
create policy housekeeping on book.private_read for all to sheafbook_housekeeping using (true);

/*
 * Nothing new is tied to a household that has left. Leaving locks the household's row first, so a write that races with
 * it waits here and then finds it gone. An import therefore sets left_on last.
 */
create function book.refuse_left_household() returns trigger language plpgsql set search_path = pg_catalog, pg_temp as $$
declare gone date;
begin
  select h.left_on into gone from book.household h
    where h.storehouse_id = new.storehouse_id and h.household_id = new.household_id for key share;
  if gone is not null then
    raise exception 'the household has left' using errcode = 'check_violation', constraint = 'household_still_here';
  end if;
  return new;
end $$;
create trigger household_still_here before insert on book.person
  for each row execute function book.refuse_left_household();
create trigger household_still_here before insert on book.invitation
  for each row execute function book.refuse_left_household();
create trigger household_still_here before insert on book.household_contact
  for each row execute function book.refuse_left_household();
create trigger household_still_here before insert on book.eater
  for each row execute function book.refuse_left_household();
create trigger household_still_here before insert on book.household_plan
  for each row execute function book.refuse_left_household();
create trigger household_still_here before insert on book.helper_grant
  for each row execute function book.refuse_left_household();

-- A retry gets the first answer back (ledger-notes 6.17). Refusals are not kept.
create table book.kept_answer (
  storehouse_id uuid not null references book.storehouse,
  login_id uuid not null,
  idempotency_key text not null,
  request_hash text not null,
  status integer not null,
  body jsonb,
  kept_at timestamptz not null,
  primary key (storehouse_id, login_id, idempotency_key),
  constraint kept_answer_key_length check (length(idempotency_key) between 1 and 200)
);
select book.keep_in_storehouse('book.kept_answer');
grant select, insert on book.kept_answer to sheafbook_app;
grant update (status, body) on book.kept_answer to sheafbook_app;
grant select, delete on book.kept_answer to sheafbook_housekeeping;
create policy housekeeping on book.kept_answer for all to sheafbook_housekeeping using (true);

-- Answers go after 30 days, looks into private things after 24 months (job map section 14).
create function book.keep_house(now_at timestamptz) returns void language sql security definer
  set search_path = pg_catalog, pg_temp
  begin atomic
    delete from book.kept_answer where kept_at < now_at - interval '30 days';
    delete from book.private_read where read_at < now_at - interval '24 months';
  end;
revoke execute on function book.keep_house(timestamptz) from public;
grant execute on function book.keep_house(timestamptz) to sheafbook_app;
alter function book.keep_house(timestamptz) owner to sheafbook_housekeeping;
