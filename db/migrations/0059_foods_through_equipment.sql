-- What went through a mill or a funnel leaves its allergens there: whoever books such a thing says which foods.
alter table book.equipment_item add column touches_food boolean not null default false;
grant update (touches_food) on book.equipment_item to sheafbook_app;

create table book.booking_food (
  storehouse_id uuid not null,
  booking_id uuid not null,
  food_id uuid not null,
  primary key (storehouse_id, booking_id, food_id),
  constraint booking_food_booking_fk foreign key (storehouse_id, booking_id) references book.booking,
  constraint booking_food_food_fk foreign key (storehouse_id, food_id) references book.food
);
select book.keep_in_storehouse('book.booking_food');
grant select, insert on book.booking_food to sheafbook_app;
