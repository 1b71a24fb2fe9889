-- The door: logins and sessions live outside tenancy, reached through these few functions only (ledger-notes 6.18).
create table door.login (
  login_id uuid primary key default uuidv7(),
  email text not null,
  name text not null,
  password_hash text not null,
  made_at timestamptz not null,
  constraint login_email_once unique (email),
  constraint login_email_plain check (email = lower(email) and email ~ '^[^\s@]+@[^\s@]+$' and length(email) <= 254)
);
create table door.session (
  session_id text primary key, -- SHA-256 of the token in hex; the token itself is stored nowhere
  login_id uuid not null references door.login on delete cascade,
  expires_at timestamptz not null,
  constraint session_id_is_a_hash check (session_id ~ '^[0-9a-f]{64}$')
);
create index session_by_login on door.session (login_id);
create table door.attempt (
  attempt_id bigint generated always as identity primary key,
  attempt_key text not null,
  attempted_at timestamptz not null
);
create index attempt_by_key on door.attempt (attempt_key, attempted_at);

create function door.has_logins() returns boolean language sql stable security definer
  set search_path = pg_catalog, pg_temp return exists (select from door.login);
create function door.add_login(wanted_email text, wanted_name text, wanted_hash text, at timestamptz) returns uuid
  language sql security definer set search_path = pg_catalog, pg_temp
  begin atomic
    insert into door.login (email, name, password_hash, made_at) values (wanted_email, wanted_name, wanted_hash, at)
    returning login_id;
  end;
create function door.find_login_by_email(wanted_email text)
  returns table (login_id uuid, email text, name text, password_hash text)
  language sql stable security definer set search_path = pg_catalog, pg_temp
  begin atomic
    select l.login_id, l.email, l.name, l.password_hash from door.login l where l.email = wanted_email;
  end;
create function door.find_login(wanted uuid) returns table (login_id uuid, email text, name text)
  language sql stable security definer set search_path = pg_catalog, pg_temp
  begin atomic
    select l.login_id, l.email, l.name from door.login l where l.login_id = wanted;
  end;
create function door.change_password(of_login uuid, new_hash text) returns void
  language sql security definer set search_path = pg_catalog, pg_temp
  begin atomic
    update door.login set password_hash = new_hash where login_id = of_login;
  end;
create function door.add_session(new_id text, of_login uuid, until timestamptz) returns void
  language sql security definer set search_path = pg_catalog, pg_temp
  begin atomic
    insert into door.session (session_id, login_id, expires_at) values (new_id, of_login, until);
  end;
create function door.find_session(wanted text)
  returns table (session_id text, expires_at timestamptz, login_id uuid, email text, name text)
  language sql stable security definer set search_path = pg_catalog, pg_temp
  begin atomic
    select s.session_id, s.expires_at, l.login_id, l.email, l.name
    from door.session s join door.login l using (login_id) where s.session_id = wanted;
  end;
create function door.list_sessions(of_login uuid) returns table (session_id text, expires_at timestamptz)
  language sql stable security definer set search_path = pg_catalog, pg_temp
  begin atomic
    select s.session_id, s.expires_at from door.session s where s.login_id = of_login order by s.session_id;
  end;
create function door.prolong_session(wanted text, until timestamptz) returns void
  language sql security definer set search_path = pg_catalog, pg_temp
  begin atomic
    update door.session set expires_at = until where session_id = wanted;
  end;
create function door.end_session(wanted text) returns void
  language sql security definer set search_path = pg_catalog, pg_temp
  begin atomic
    delete from door.session where session_id = wanted;
  end;
create function door.end_sessions_of(of_login uuid) returns void
  language sql security definer set search_path = pg_catalog, pg_temp
  begin atomic
    delete from door.session where login_id = of_login;
  end;
create function door.end_expired_sessions(at timestamptz) returns void
  language sql security definer set search_path = pg_catalog, pg_temp
  begin atomic
    delete from door.session where expires_at <= at;
  end;
-- Counts tries in the window and notes this one, so that two racing tries both count.
create function door.note_attempt(of_key text, at timestamptz, since timestamptz) returns integer
  language sql security definer set search_path = pg_catalog, pg_temp
  begin atomic
    delete from door.attempt where attempt_key = of_key and attempted_at < since;
    insert into door.attempt (attempt_key, attempted_at) values (of_key, at);
    select count(*)::integer from door.attempt where attempt_key = of_key and attempted_at >= since;
  end;
create function door.forget_attempts(of_key text) returns void
  language sql security definer set search_path = pg_catalog, pg_temp
  begin atomic
    delete from door.attempt where attempt_key = of_key;
  end;
revoke execute on all functions in schema door from public;
grant execute on all functions in schema door to sheafbook_app;
