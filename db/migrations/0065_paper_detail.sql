-- Two papers of one kind, printed on one day for two periods, years or pantries, are two papers: `detail` is what else tells
-- them apart. Printed again they keep their number.
alter table book.paper add column detail text not null default '';
alter table book.paper drop constraint paper_printing_once;
alter table book.paper add constraint paper_printing_once unique nulls not distinct
  (storehouse_id, kind, buy_id, household_id, subject_id, detail, as_of_entry_no, printed_on, printed_by);

-- What a notice is about, in Spanish; empty where it is a name or what a person wrote, which is the same in both.
alter table book.notice add column about_es text not null default '';
