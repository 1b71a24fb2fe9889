import type { IntegerRow, Solver } from '@sheafbook/solve';
import { assert, assertWhole } from '@sheafbook/units';
import { checkMatching } from './matching-check.ts';
import type { GiftLot, GiftPiece, Matching, Visit } from './matching-terms.ts';

/**
 * Which containers go to which pantry so that most food is saved; then with the least way to go, then in the fewest pieces,
 * then the earliest lot to the earliest visit, most first. Whole containers only. Each stage is proved best by the solver,
 * and the answer is checked in whole numbers.
 * Units: as `GiftLot` and `Visit`. Errors: AssertionError when a figure is not whole and ≥ 0, an id comes twice, or a lot
 * names a visit that is not there.
 */
export function matchGifts(solver: Solver, lots: readonly GiftLot[], visits: readonly Visit[]): Matching {
  checkInput(lots, visits);
  const model = new Model(lots, visits);
  const most = model.settle(
    solver,
    model.grams.map((grams) => -grams),
  );
  assert(most, 'giving nothing is always possible');
  model.settle(solver, model.distances);
  let values = model.settle(solver, model.pieces);
  for (const position of model.arcs.keys()) {
    values = model.settle(
      solver,
      model.arcs.map((_, arc) => (arc === position ? -1 : 0)),
    );
  }
  assert(values, 'each stage keeps what the one before reached');
  return checkMatching(lots, visits, model.read(values));
}

function checkInput(lots: readonly GiftLot[], visits: readonly Visit[]): void {
  assert(new Set(lots.map(({ lotId }) => lotId)).size === lots.length, 'each lot comes once');
  assert(new Set(visits.map(({ visitId }) => visitId)).size === visits.length, 'each visit comes once');
  for (const { capacityGrams, distance } of visits) {
    assertWhole(capacityGrams, 'capacityGrams');
    assertWhole(distance, 'distance');
  }
  for (const lot of lots) {
    assertWhole(lot.containers, 'containers');
    assertWhole(lot.containerGrams, 'containerGrams');
    assert(lot.containerGrams > 0, 'a container holds something');
    for (const visit of lot.visits)
      assert(visits[visit] !== undefined, 'a lot goes to a visit that is there');
  }
}

type Arc = { readonly lot: number; readonly visit: number; readonly most: number };

/** Containers of each arc, whether a visit is made, whether an arc is used; with every stage that was settled as a row. */
class Model {
  readonly arcs: readonly Arc[];
  readonly grams: readonly number[];
  readonly distances: readonly number[];
  readonly pieces: readonly number[];
  readonly #rows: IntegerRow[];
  readonly #lots: readonly GiftLot[];
  readonly #visits: readonly Visit[];

  constructor(lots: readonly GiftLot[], visits: readonly Visit[]) {
    this.#lots = lots;
    this.#visits = visits;
    this.arcs = lots.flatMap((lot, position) => {
      return [...new Set(lot.visits)]
        .toSorted((a, b) => a - b)
        .flatMap((visit) => arcOf(lot, { position, visit }, visits));
    });
    const arcCount = this.arcs.length;
    const none = this.arcs.map(() => 0);
    this.grams = this.arcs.map(({ lot }) => lots[lot]?.containerGrams ?? 0);
    this.distances = [...none, ...visits.map(({ distance }) => distance)];
    this.pieces = [...none, ...visits.map(() => 0), ...this.arcs.map(() => 1)];
    this.#rows = [
      ...lots.map((lot, position) => ({
        terms: this.#arcsWhere((arc) => arc.lot === position, 1),
        least: null,
        most: lot.containers,
      })),
      ...visits.map((visit, position) => ({
        terms: [
          ...this.#arcsWhere((arc) => arc.visit === position, null),
          { variable: arcCount + position, coefficient: -visit.capacityGrams },
        ],
        least: null,
        most: 0,
      })),
      ...this.arcs.map((arc, position) => ({
        terms: [
          { variable: position, coefficient: 1 },
          { variable: arcCount + visits.length + position, coefficient: -arc.most },
        ],
        least: null,
        most: 0,
      })),
    ];
  }

  /** Solves one stage and holds its best as a row of the next. */
  settle(solver: Solver, costs: readonly number[]): readonly number[] | null {
    const switches = this.#visits.length + this.arcs.length;
    const variables = [
      ...this.arcs.map(({ most }) => ({ least: 0, most })),
      ...Array.from({ length: switches }, () => ({ least: 0, most: 1 })),
    ];
    const whole = variables.map((_, position) => costs[position] ?? 0);
    const answer = solver.minimise({ variables, rows: this.#rows, costs: whole });
    if (answer.status !== 'optimal') return null;
    const terms = whole.flatMap((coefficient, variable) =>
      coefficient === 0 ? [] : [{ variable, coefficient }],
    );
    this.#rows.push({ terms, least: null, most: answer.objective });
    return answer.values;
  }

  read(values: readonly number[]): GiftPiece[] {
    return this.arcs.flatMap(({ lot, visit }, position) => {
      const containers = values[position] ?? 0;
      const { lotId } = this.#lots[lot] as GiftLot;
      const { visitId } = this.#visits[visit] as Visit;
      return containers > 0 ? [{ lotId, visitId, containers }] : [];
    });
  }

  #arcsWhere(isWanted: (arc: Arc) => boolean, coefficient: number | null) {
    return this.arcs.flatMap((arc, variable) => {
      return isWanted(arc) ? [{ variable, coefficient: coefficient ?? this.grams[variable] ?? 0 }] : [];
    });
  }
}

function arcOf(
  lot: GiftLot,
  { position, visit }: { readonly position: number; readonly visit: number },
  visits: readonly Visit[],
): Arc[] {
  const fits = Math.floor((visits[visit]?.capacityGrams ?? 0) / lot.containerGrams);
  const most = Math.min(lot.containers, fits);
  return most > 0 ? [{ lot: position, visit, most }] : [];
}
