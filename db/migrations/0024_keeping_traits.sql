-- What a container does for its food beside holding it, and what was done to the food as it was packed. Null is unknown:
-- nobody has said what a kind is made of, how a container was treated, or how moist its food was.
alter table book.container_kind
  add column barrier text,
  add column is_dark boolean not null default false,
  add column is_breakable boolean not null default false,
  add column is_rodent_proof boolean not null default false,
  add column needs_outer boolean not null default false,
  add column is_reusable boolean not null default false,
  add column most_stacked integer,
  add column traits_source text not null default '',
  add constraint container_kind_barrier_known
    check (barrier in ('metal', 'foil', 'glass', 'pet', 'bare-plastic', 'open')),
  add constraint container_kind_stack_in_range check (most_stacked between 1 and 100);
grant update (barrier, is_dark, is_breakable, is_rodent_proof, needs_outer, is_reusable, most_stacked, traits_source)
  on book.container_kind to sheafbook_app;

-- Storehouses that were founded before get the traits of the reference kinds, as a new one copies them.
update book.container_kind kind
  set barrier = known.barrier, is_dark = known.dark, is_breakable = known.breaks, is_rodent_proof = known.rodents,
    needs_outer = known.wants_outer, is_reusable = known.reuses, most_stacked = known.high, traits_source = known.source
  from (values
    ('can-no-10', 'metal', true, false, true, false, false, null::integer, 'common practice, no source'),
    ('can-no-2-5', 'metal', true, false, true, false, false, null, 'common practice, no source'),
    ('pail-5-gallon-lined', 'foil', true, false, false, false, true, 3,
      'published pail leaflets: off the floor, no more than three high; plastic passes oxygen slowly'),
    ('pail-5-gallon-bare', 'bare-plastic', true, false, false, false, true, 3,
      'published pail leaflets: off the floor, no more than three high; plastic passes oxygen slowly'),
    ('pail-6-gallon-lined', 'foil', true, false, false, false, true, 3,
      'published pail leaflets: off the floor, no more than three high; plastic passes oxygen slowly'),
    ('pail-6-gallon-bare', 'bare-plastic', true, false, false, false, true, 3,
      'published pail leaflets: off the floor, no more than three high; plastic passes oxygen slowly'),
    ('pouch-1-gallon', 'foil', true, false, false, true, false, null,
      'a published note: foil pouches are not rodent-proof'),
    ('bottle-pet-2-litre', 'pet', false, false, false, false, false, null, 'common practice, no source'),
    ('jar-quart', 'glass', false, true, true, true, true, null, 'common practice, no source'),
    ('jar-half-gallon', 'glass', false, true, true, true, true, null, 'common practice, no source'),
    ('drum-55-gallon', 'bare-plastic', true, false, false, false, true, 1, 'common practice, no source')
  ) known (kind_code, barrier, dark, breaks, rodents, wants_outer, reuses, high, source)
  where kind.kind_code = known.kind_code and not kind.is_own;

alter table book.container
  add column treatment text,
  add column moisture_tenths integer, -- tenths of a per cent wet basis, as measured when it was packed
  add constraint container_treatment_known check (treatment in ('oxygen-absorber', 'dry-ice', 'vacuum', 'nitrogen-flush',
    'freeze-thaw-freeze', 'food-grade-earth', 'none')),
  add constraint container_moisture_in_range check (moisture_tenths between 0 and 1000);
grant update (treatment, moisture_tenths) on book.container to sheafbook_app;
