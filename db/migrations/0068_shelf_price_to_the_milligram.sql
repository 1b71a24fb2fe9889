-- A pound is no whole number of grams: a price for one is kept to the milligram, or a year's sum is off by what that rounds.
alter table book.shelf_price rename column grams to milligrams;
update book.shelf_price set milligrams = milligrams * 1000;
