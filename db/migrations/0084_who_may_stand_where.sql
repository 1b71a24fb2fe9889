-- Who may work seated only, and who is under 16: nobody that young is at the seamer or the sealing bar, nor answers for a seal.
-- No date of birth is asked for.
alter table book.packing_hand
  add column seated_only boolean not null default false,
  add column is_under_16 boolean not null default false,
  add constraint packing_hand_old_enough_to_seam check (not (is_under_16 and may_seam));
grant update (seated_only, is_under_16) on book.packing_hand to sheafbook_app;

-- Both are written behind the session's row lock, so neither slips past the other.
create function book.refuse_young_operator() returns trigger language plpgsql set search_path = pg_catalog, pg_temp as $$
begin
  if exists (select from book.packing_hand h
    where h.storehouse_id = new.storehouse_id and h.packing_session_id = new.packing_session_id
      and h.person_id = new.checked_by and h.is_under_16) then
    raise exception 'nobody under 16 works the machine' using errcode = 'check_violation',
      constraint = 'seal_check_operator_old_enough';
  end if;
  return new;
end $$;
create trigger seal_check_operator_old_enough before insert on book.seal_check
  for each row execute function book.refuse_young_operator();
