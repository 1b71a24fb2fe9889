-- The seam log, the loan slip and the quarantine tag.
alter table book.paper drop constraint paper_kind_known;
alter table book.paper add constraint paper_kind_known check (kind in ('buy-sheet', 'pledge-slip', 'quote-comparison',
  'order', 'landing-sheet', 'claim-letter', 'split-sheet', 'statement', 'who-owes', 'month', 'run-sheet', 'seam-log',
  'loan-slip', 'quarantine-tag'));
