-- How much oxygen the packets in a container take up, so that a pack with too few of them is found before it is closed.
alter table book.packing_pour add column absorber_millilitres integer;
alter table book.packing_pour add constraint packing_pour_absorber_takes_some
  check (absorber_millilitres is null or (absorber_millilitres > 0 and treatment = 'oxygen-absorber'));
