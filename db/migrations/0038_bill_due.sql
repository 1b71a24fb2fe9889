-- The day by which a bill asks to be paid; null where it names none, and then it is due when it is in the book.
alter table book.invoice add column due_on date;
alter table book.invoice add constraint invoice_due_from_its_day check (due_on >= on_day);
