-- What the group pays for what a treatment uses up, so that ways to keep food can be compared by what they cost.
create table book.supply_price (
  storehouse_id uuid not null references book.storehouse,
  supply_code text not null, -- a packet by its millilitres of oxygen, or a kilogram of dry ice
  price_minor_units book.amount not null,
  primary key (storehouse_id, supply_code),
  constraint supply_price_code_known check (supply_code ~ '^absorber-(20|50|100|200|300|500|1000|2000)$'
    or supply_code = 'dry-ice-kilogram')
);
select book.keep_in_storehouse('book.supply_price');
grant select, insert, delete on book.supply_price to sheafbook_app;
grant update (price_minor_units) on book.supply_price to sheafbook_app;
