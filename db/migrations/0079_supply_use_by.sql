-- Until when supplies are good that came with an entry, where somebody read it on the pack. What is on hand of them follows
-- from the movements, the oldest used first; here stands the day alone.
create table book.supply_use_by (
  storehouse_id uuid not null,
  entry_id uuid not null,
  supply_id uuid not null,
  use_by date not null, -- the last day on which they are good
  primary key (storehouse_id, entry_id, supply_id),
  constraint supply_use_by_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint supply_use_by_supply_fk foreign key (storehouse_id, supply_id) references book.supply,
  constraint supply_use_by_in_reach check (use_by between '1900-01-01' and '2199-12-31')
);
select book.keep_in_storehouse('book.supply_use_by');
grant select, insert on book.supply_use_by to sheafbook_app;
