-- Every home page asks which jars were packed lately: found by their day, not by going through all that was ever packed.
create index container_by_packing on book.container (storehouse_id, packed_on) where opened_on is null;
