-- What the book tells by itself in the background has no writer; what a person wrote has one. Equipment has a kind of its own.
alter table book.notice alter column written_by drop not null;
alter table book.notice add constraint notice_of_a_person_has_its_writer check (kind <> 'written' or written_by is not null);
alter table book.notice drop constraint notice_kind_known;
alter table book.notice add constraint notice_kind_known check (kind in ('written', 'stage', 'landing-moved', 'held',
  'released', 'packing', 'offer', 'equipment'));
