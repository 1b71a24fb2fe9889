-- Photos of equipment: of a thing as it is, of one of its parts, and of how it went out and came back in a loan.
alter table book.equipment_part
  add constraint equipment_part_of_its_item unique (storehouse_id, equipment_item_id, equipment_part_id);
alter table book.loan add constraint loan_of_its_piece unique (storehouse_id, equipment_unit_id, loan_id);

alter table book.photo
  alter column buy_id drop not null,
  add column equipment_item_id uuid,
  add column equipment_part_id uuid,
  add column equipment_unit_id uuid,
  add column loan_id uuid,
  add column moment text,
  add constraint photo_item_fk foreign key (storehouse_id, equipment_item_id) references book.equipment_item,
  add constraint photo_part_fk foreign key (storehouse_id, equipment_item_id, equipment_part_id)
    references book.equipment_part (storehouse_id, equipment_item_id, equipment_part_id),
  add constraint photo_unit_fk foreign key (storehouse_id, equipment_item_id, equipment_unit_id)
    references book.equipment_unit (storehouse_id, equipment_item_id, equipment_unit_id),
  add constraint photo_loan_fk foreign key (storehouse_id, equipment_unit_id, loan_id)
    references book.loan (storehouse_id, equipment_unit_id, loan_id),
  drop constraint photo_shows_one_thing,
  add constraint photo_shows_one_thing
    check (num_nonnulls(bag_id, claim_id, delivery_id, equipment_item_id) = 1
      and (buy_id is null) = (equipment_item_id is not null)),
  -- A loan is of one piece, and what is photographed of it went out or came back; a part is shown for itself.
  add constraint photo_of_loan_whole
    check (num_nonnulls(equipment_unit_id, loan_id, moment) in (0, 3)
      and (loan_id is null or equipment_item_id is not null)),
  add constraint photo_of_part_or_loan
    check (num_nonnulls(equipment_part_id, loan_id) <= 1
      and (equipment_part_id is null or equipment_item_id is not null)),
  add constraint photo_moment_known check (moment in ('out', 'back'));

drop index book.photo_once;
create unique index photo_once on book.photo
  (storehouse_id, bag_id, claim_id, delivery_id, equipment_item_id, equipment_part_id, loan_id, moment, sha256(content))
  nulls not distinct;
create index photo_by_item on book.photo (storehouse_id, equipment_item_id);
create index photo_by_loan on book.photo (storehouse_id, loan_id);
