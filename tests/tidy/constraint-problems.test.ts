import { expect, test } from 'vitest';
import { CONSTRAINT_PROBLEMS } from '../../apps/api/src/platform/constraint-problems.ts';
import { INTERNAL_CONSTRAINTS } from '../../apps/api/src/platform/internal-constraints.ts';
import { listFiles } from './source-files.ts';

/** Names that no person can reach: keys and references, which only a fault of the code can break. */
const STRUCTURAL =
  /_(pkey|fk|fkey|not_null|is_a_vessel|is_an_owner|is_a_unit|of_buy|id_and_kind|id_and_unit|of_household)$/;

function constraintNames(schema: string): string[] {
  const constraints = [...schema.matchAll(/\bconstraint (\w+) /g)].map((match) => match[1] ?? '');
  const uniques = [...schema.matchAll(/create unique index (\w+) /gi)].map((match) => match[1] ?? '');
  const raised = [...schema.matchAll(/constraint = '(\w+)'/g)].map((match) => match[1] ?? '');
  return [...new Set([...constraints, ...uniques, ...raised])]
    .filter((name) => !STRUCTURAL.test(name))
    .toSorted();
}

const [golden] = listFiles((path) => path === 'db/schema.sql');
const names = constraintNames(golden?.text ?? '');

test('each named constraint leads to a problem code, or is listed as internal', () => {
  expect(names.length).toBeGreaterThan(60);
  const homeless = names.filter((name) => !(name in CONSTRAINT_PROBLEMS) && !INTERNAL_CONSTRAINTS.has(name));
  expect(homeless).toEqual([]);
});

test('no constraint is spoken of that is not there', () => {
  const gone = [...Object.keys(CONSTRAINT_PROBLEMS), ...INTERNAL_CONSTRAINTS].filter(
    (name) => !names.includes(name),
  );
  expect(gone).toEqual([]);
});

test('a new constraint without a word is noticed', () => {
  expect(constraintNames('  constraint pledge_made_up CHECK (true)')).toEqual(['pledge_made_up']);
});
