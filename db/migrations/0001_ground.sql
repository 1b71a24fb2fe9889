-- The ground: one tenant is one storehouse, and every table of a storehouse leads its keys with storehouse_id.
create schema book;
create schema door;
grant usage on schema book to sheafbook_app, sheafbook_poster, sheafbook_housekeeping;
grant usage on schema door to sheafbook_app;

-- nullif: a pooled connection keeps '' after its first transaction, and ''::uuid would raise (ledger-notes 2a).
create function book.current_storehouse() returns uuid language sql stable parallel safe
  return nullif(current_setting('app.storehouse', true), '')::uuid;
create function book.current_login() returns uuid language sql stable parallel safe
  return nullif(current_setting('app.login', true), '')::uuid;
create function book.current_household() returns uuid language sql stable parallel safe
  return nullif(current_setting('app.household', true), '')::uuid;
-- The task that needs a neighbour's private datum, such as 'fill'; every use is recorded in book.private_read.
create function book.current_task() returns text language sql stable parallel safe
  return coalesce(current_setting('app.task', true), '');
grant execute on function book.current_storehouse(), book.current_login(), book.current_household(), book.current_task()
  to sheafbook_app, sheafbook_poster, sheafbook_housekeeping;

-- Used by migrations only: the one policy that every tenant table has. Not forced, see ledger-notes 2d.
create function book.keep_in_storehouse(tenant_table regclass) returns void language plpgsql as $$
begin
  execute format('alter table %s enable row level security', tenant_table);
  execute format('create policy own_storehouse on %s using (storehouse_id = (select book.current_storehouse()))
    with check (storehouse_id = (select book.current_storehouse()))', tenant_table);
end $$;
revoke execute on function book.keep_in_storehouse(regclass) from public;

create domain book.amount as bigint constraint amount_exact_in_a_double check (value between 0 and 9007199254740991);

create table book.storehouse (
  storehouse_id uuid not null default uuidv7(),
  name text not null,
  currency char(3) not null,
  time_zone text not null,
  mass_display text not null default 'lb',
  language text not null default 'en',
  version integer not null default 1,
  founded_at timestamptz not null,
  primary key (storehouse_id),
  constraint storehouse_named check (name ~ '\S' and length(name) <= 120),
  constraint storehouse_currency_code check (currency ~ '^[A-Z]{3}$'),
  constraint storehouse_mass_display_known check (mass_display in ('lb', 'kg')),
  constraint storehouse_language_known check (language in ('en', 'es'))
);
alter table book.storehouse enable row level security;
create policy own_storehouse on book.storehouse using (storehouse_id = (select book.current_storehouse()))
  with check (storehouse_id = (select book.current_storehouse()));
grant select, insert on book.storehouse to sheafbook_app;
grant update (name, time_zone, mass_display, language, version) on book.storehouse to sheafbook_app;

-- The group's rules, never edited: a change is a new version, and a buy freezes the one in force when it is fixed.
create table book.rules (
  storehouse_id uuid not null references book.storehouse,
  rules_version integer not null,
  deposit_percent integer not null default 40,
  freight_basis text not null default 'by-weight',
  blend_numerator integer not null default 1,
  blend_denominator integer not null default 2,
  split_rule text not null default 'proportional',
  common_cap_grams book.amount not null default 0,
  levy_hundredths_of_percent integer not null default 0,
  write_off_limit_minor_units book.amount not null default 500,
  price_rise_percent integer not null default 2,
  claim_window_hours integer not null default 48,
  uncollected_days integer not null default 30,
  decided_by uuid,
  decided_at timestamptz not null,
  primary key (storehouse_id, rules_version),
  constraint rules_deposit_percent_in_range check (deposit_percent between 0 and 100),
  constraint rules_freight_basis_known check (freight_basis in ('by-weight', 'by-value', 'per-household', 'blend')),
  constraint rules_blend_in_range check (blend_denominator > 0 and blend_numerator between 0 and blend_denominator),
  constraint rules_split_rule_known check (split_rule in
    ('proportional', 'equal-awards', 'equal-losses', 'first-come', 'need-first', 'rotation-of-loss')),
  constraint rules_levy_in_range check (levy_hundredths_of_percent between 0 and 10000),
  constraint rules_waits_positive check (claim_window_hours > 0 and uncollected_days > 0 and price_rise_percent >= 0)
);
select book.keep_in_storehouse('book.rules');
grant select, insert on book.rules to sheafbook_app;
