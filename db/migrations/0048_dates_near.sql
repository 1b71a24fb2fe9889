-- The group's own days for the three dates of a container, and how long before these it is told. They start as common
-- practice has them, no source: offered 60 days before gifts close and 90 before eat-first where no pantry takes it.
alter table book.rules
  add column offer_days integer not null default 60,
  add column offer_days_without_pantry integer not null default 90,
  add column gift_window_days integer not null default 30,
  add column eat_first_margin_days integer not null default 30;
alter table book.rules add constraint rules_dates_in_range check
  (offer_days between 0 and 1000 and offer_days_without_pantry between 0 and 1000
    and gift_window_days between 1 and 365 and eat_first_margin_days between 1 and 365);
