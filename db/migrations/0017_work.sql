-- Work in the background: what a change owes to somebody is written in the change's own transaction (an outbox). The
-- queue's own tables stand in the schema graphile_worker and hold nothing but the ids of these rows.
create table book.work (
  storehouse_id uuid not null references book.storehouse,
  work_id uuid not null default uuidv7(),
  task text not null,
  payload jsonb not null,
  job_key text,
  person_id uuid, -- whom it is for: all that a coordinator learns besides the task and the reason
  state text not null default 'waiting',
  version integer not null default 1,
  tries integer not null default 0,
  last_reason text,
  made_at timestamptz not null default now(),
  due_at timestamptz, -- null: at once
  ended_at timestamptz,
  primary key (storehouse_id, work_id),
  constraint work_person_fk foreign key (storehouse_id, person_id) references book.person,
  constraint work_task_named check (task ~ '^[a-z][a-z-]{0,60}$'),
  constraint work_key_fits check (length(job_key) between 1 and 200),
  constraint work_state_known check (state in ('waiting', 'done', 'dead')),
  constraint work_ended_when_over check ((ended_at is null) = (state = 'waiting')),
  constraint work_dead_explained check (state <> 'dead' or last_reason is not null),
  constraint work_tries_counted check (tries >= 0)
);
create unique index work_waiting_once on book.work (storehouse_id, job_key) where state = 'waiting';
create index work_waiting on book.work (storehouse_id, due_at) where state = 'waiting';
create index work_dead on book.work (storehouse_id, ended_at) where state = 'dead';
select book.keep_in_storehouse('book.work');
grant select, delete on book.work to sheafbook_app;
grant update (state, tries, last_reason, due_at, ended_at) on book.work to sheafbook_app;
grant select, delete on book.work to sheafbook_housekeeping;
create policy housekeeping on book.work for all to sheafbook_housekeeping using (true);

/*
 * Tells the queue of one row. A storehouse is one queue, so that its work is done one after another; and whoever has
 * much waiting stands further back with each, so that a thousand letters of one storehouse don't hold up the one of
 * another. A row has one job at most: its id is the job's key.
 */
create function book.queue_work(of_storehouse uuid, of_work uuid, due timestamptz) returns void language plpgsql
  set search_path = pg_catalog, pg_temp as $$
declare ahead integer;
begin
  select count(*) into ahead from (select from book.work w
    where w.storehouse_id = of_storehouse and w.state = 'waiting' and w.work_id <> of_work
      and (w.due_at is null or w.due_at <= now()) limit 1000) waiting;
  perform graphile_worker.add_job('work', json_build_object('storehouseId', of_storehouse, 'workId', of_work),
    queue_name := of_storehouse::text, run_at := due, max_attempts := 32767::smallint, job_key := of_work::text,
    priority := ahead::smallint);
end $$;
revoke execute on function book.queue_work from public;

create function book.enqueue_work(in_storehouse uuid, wanted_task text, wanted_payload jsonb, due timestamptz,
  wanted_key text, for_person uuid) returns uuid language plpgsql security definer
  set search_path = pg_catalog, pg_temp as $$
declare made uuid;
begin
  if in_storehouse is distinct from book.current_storehouse() then
    raise exception 'work belongs to the storehouse of its transaction' using errcode = 'insufficient_privilege';
  end if;
  insert into book.work as w (storehouse_id, task, payload, job_key, person_id, due_at)
    values (in_storehouse, wanted_task, wanted_payload, wanted_key, for_person, due)
    on conflict (storehouse_id, job_key) where state = 'waiting' do update set task = excluded.task,
      payload = excluded.payload, person_id = excluded.person_id, due_at = excluded.due_at, version = w.version + 1,
      tries = 0, last_reason = null
    returning work_id into made;
  perform book.queue_work(in_storehouse, made, due);
  return made;
end $$;

-- What is done every so often, in every storehouse; where it still waits, it is not asked for again.
create function book.enqueue_everywhere(wanted_task text) returns integer language plpgsql security definer
  set search_path = pg_catalog, pg_temp as $$
declare made record; asked integer := 0;
begin
  for made in insert into book.work (storehouse_id, task, payload, job_key)
      select s.storehouse_id, wanted_task, '{}', 'every ' || wanted_task from book.storehouse s
      on conflict (storehouse_id, job_key) where state = 'waiting' do nothing returning storehouse_id, work_id loop
    perform book.queue_work(made.storehouse_id, made.work_id, null);
    asked := asked + 1;
  end loop;
  return asked;
end $$;

-- Dead work, once more from the start. False when it is not dead (any more).
create function book.retry_work(wanted uuid) returns boolean language plpgsql security definer
  set search_path = pg_catalog, pg_temp as $$
begin
  update book.work set state = 'waiting', tries = 0, due_at = null, ended_at = null, version = version + 1
    where storehouse_id = book.current_storehouse() and work_id = wanted and state = 'dead';
  if not found then return false; end if;
  perform book.queue_work(book.current_storehouse(), wanted, null);
  return true;
end $$;

-- What is due at an instant, over all storehouses, longest waiting first: for doing it without a queue.
create function book.due_work(at timestamptz) returns table (storehouse_id uuid, work_id uuid)
  language sql stable security definer set search_path = pg_catalog, pg_temp
  begin atomic
    select w.storehouse_id, w.work_id from book.work w
    where w.state = 'waiting' and (w.due_at is null or w.due_at <= at) order by w.made_at, w.work_id;
  end;
revoke execute on function book.enqueue_work, book.enqueue_everywhere, book.retry_work, book.due_work from public;
grant execute on function book.enqueue_work, book.enqueue_everywhere, book.retry_work, book.due_work to sheafbook_app;

-- A letter is a piece of work with words. Its address is looked up when it is sent and stands nowhere here.
create table book.letter (
  storehouse_id uuid not null,
  letter_id uuid not null, -- its work's
  person_id uuid not null,
  kind text not null,
  subject text not null,
  body_text text not null,
  body_html text not null,
  stop_url text,
  state text not null default 'waiting',
  unsent_because text,
  sending_at timestamptz,
  ended_at timestamptz,
  primary key (storehouse_id, letter_id),
  constraint letter_work_fk foreign key (storehouse_id, letter_id) references book.work on delete cascade,
  constraint letter_person_fk foreign key (storehouse_id, person_id) references book.person,
  constraint letter_kind_named check (kind ~ '^[a-z][a-z-]{0,60}$'),
  constraint letter_subject_is_one_line check (subject ~ '\S' and subject !~ '[[:cntrl:]]' and length(subject) <= 200),
  constraint letter_stop_url_plain check (stop_url ~ '^https?://[!-~]+$' and stop_url !~ '[<>]'),
  constraint letter_state_known check (state in ('waiting', 'sending', 'sent', 'unsent')),
  constraint letter_unsent_explained check ((state = 'unsent') = (unsent_because is not null))
);
create index letter_by_person on book.letter (storehouse_id, person_id);
select book.keep_in_storehouse('book.letter');
-- What stands in a letter is between Sheafbook and its reader: only sending it reads it.
create policy letter_private on book.letter as restrictive for all
  using ((select book.current_task()) in ('letter', 'leaving')) with check (true);
grant select, insert, delete on book.letter to sheafbook_app;
grant update (state, unsent_because, sending_at, ended_at) on book.letter to sheafbook_app;

-- As before, and work that is done, with its letters, goes after 30 days. What is dead stays until somebody sees to it.
drop function book.keep_house(timestamptz);
create function book.keep_house(now_at timestamptz) returns void language sql security definer
  set search_path = pg_catalog, pg_temp
  begin atomic
    delete from book.kept_answer where kept_at < now_at - interval '30 days';
    delete from book.private_read where read_at < now_at - interval '24 months';
    delete from book.work where state = 'done' and ended_at < now_at - interval '30 days';
  end;
revoke execute on function book.keep_house(timestamptz) from public;
grant execute on function book.keep_house(timestamptz) to sheafbook_app;
alter function book.keep_house(timestamptz) owner to sheafbook_housekeeping;
