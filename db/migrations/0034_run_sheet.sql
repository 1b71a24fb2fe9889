-- The run sheet of a packing day.
alter table book.paper drop constraint paper_kind_known;
alter table book.paper add constraint paper_kind_known check (kind in ('buy-sheet', 'pledge-slip', 'quote-comparison',
  'order', 'landing-sheet', 'claim-letter', 'split-sheet', 'statement', 'who-owes', 'month', 'run-sheet'));
