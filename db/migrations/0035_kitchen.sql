/*
 * What a household has taken into its kitchen: stock at home that is out of its container. A household has one kitchen, and
 * its vessel has the household's own id, so there is never a second and nobody else's grams are ever in it. It may hold many
 * lots; their accounts keep them apart.
 */
alter table book.vessel drop constraint vessel_kind_known;
alter table book.vessel add constraint vessel_kind_known check (kind in ('bag', 'container', 'kitchen', 'supplier', 'eaten',
  'given', 'animals', 'composted', 'spilled', 'sampled', 'discarded', 'transformed', 'unexplained'));
drop index book.vessel_outside_once;
create unique index vessel_outside_once on book.vessel (storehouse_id, kind)
  where kind not in ('bag', 'container', 'kitchen');
alter table book.account add constraint account_kitchen_is_its_owners check (vessel_kind <> 'kitchen' or vessel_id = owner_id);
