-- The sheet of what is to be looked at, with the guided look's own findings for a pen.
alter table book.paper drop constraint paper_kind_known;
alter table book.paper add constraint paper_kind_known check (kind in ('buy-sheet', 'pledge-slip', 'quote-comparison',
  'order', 'landing-sheet', 'claim-letter', 'split-sheet', 'statement', 'who-owes', 'month', 'run-sheet', 'seam-log',
  'loan-slip', 'quarantine-tag', 'gift-manifest', 'offer-notice', 'transfer-slip', 'gift-year', 'handover', 'shelf-list',
  'eat-first-list', 'recall-notice', 'year-review', 'inspection-sheet'));
