-- Whoever waits for a thing that touches food says which foods, as whoever books it does: an offer carries them on.
create table book.equipment_wish_food (
  storehouse_id uuid not null,
  equipment_wish_id uuid not null,
  food_id uuid not null,
  primary key (storehouse_id, equipment_wish_id, food_id),
  constraint equipment_wish_food_wish_fk foreign key (storehouse_id, equipment_wish_id) references book.equipment_wish,
  constraint equipment_wish_food_food_fk foreign key (storehouse_id, food_id) references book.food
);
select book.keep_in_storehouse('book.equipment_wish_food');
grant select, insert on book.equipment_wish_food to sheafbook_app;
