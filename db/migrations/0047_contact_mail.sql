-- Where a household can be written to before any of its people has a login: an import brings it, an invitation is sent there.
-- It is as private as telephone and address: the row's own policy holds it (job map 14).
alter table book.household_contact
  add column email text not null default '',
  add constraint household_contact_email_plain
    check (email = '' or (email = lower(email) and email ~ '^[^\s@]+@[^\s@]+$' and length(email) <= 254));
