-- The month with whose last day a storehouse's financial year ends.
alter table book.storehouse
  add column year_end_month smallint not null default 12,
  add constraint storehouse_year_ends_with_a_month check (year_end_month between 1 and 12);
grant update (year_end_month) on book.storehouse to sheafbook_app;
