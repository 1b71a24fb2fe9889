-- The manifest with its receipt, the notice and the slip of an offer, and a giver's year.
alter table book.paper drop constraint paper_kind_known;
alter table book.paper add constraint paper_kind_known check (kind in ('buy-sheet', 'pledge-slip', 'quote-comparison',
  'order', 'landing-sheet', 'claim-letter', 'split-sheet', 'statement', 'who-owes', 'month', 'run-sheet', 'seam-log',
  'loan-slip', 'quarantine-tag', 'gift-manifest', 'offer-notice', 'transfer-slip', 'gift-year'));

-- What follows a gift is what was known when it was signed out: how warm it was kept, and who sealed it.
alter table book.gift_line
  add column warmth text not null default 'unknown'
    constraint gift_line_warmth_known check (warmth in ('cool', 'warm', 'unknown')),
  add column sealed_by text not null default 'home'
    constraint gift_line_sealer_known check (sealed_by in ('maker', 'home', 'licensed-kitchen', 'unsealed'));
update book.gift_line l set sealed_by = f.sealed_by from book.gift_fact f
  where f.storehouse_id = l.storehouse_id and f.container_id = l.container_id;
alter table book.gift_line alter column warmth drop default, alter column sealed_by drop default;
