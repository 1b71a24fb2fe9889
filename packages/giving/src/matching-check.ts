import { assert, sumOf } from '@sheafbook/units';
import type { GiftLot, GiftPiece, Matching, Visit } from './matching-terms.ts';

/**
 * Adds a matching up in whole numbers and refuses one that breaks a bound: more of a lot than there is, more on a trip than
 * it takes, or a lot at a door that does not take it.
 * Units: whole grams, distance. Errors: AssertionError naming what is broken.
 */
export function checkMatching(
  lots: readonly GiftLot[],
  visits: readonly Visit[],
  pieces: readonly GiftPiece[],
): Matching {
  const ofLot = new Map(lots.map((lot) => [lot.lotId, lot]));
  const left = new Map(lots.map(({ lotId, containers }) => [lotId, containers]));
  const room = new Map(visits.map(({ visitId, capacityGrams }) => [visitId, capacityGrams]));
  for (const { lotId, visitId, containers } of pieces) {
    const lot = ofLot.get(lotId);
    assert(lot && containers > 0, 'a piece is of a lot that is there');
    const position = visits.findIndex((visit) => visit.visitId === visitId);
    assert(lot.visits.includes(position), 'a lot goes only where its card takes it');
    left.set(lotId, (left.get(lotId) ?? 0) - containers);
    room.set(visitId, (room.get(visitId) ?? 0) - containers * lot.containerGrams);
  }
  assert(
    [...left.values()].every((containers) => containers >= 0),
    'no more of a lot is given than there is',
  );
  assert(
    [...room.values()].every((grams) => grams >= 0),
    'no trip carries more than the pantry takes',
  );
  const used = visits.filter(({ visitId }) => pieces.some((piece) => piece.visitId === visitId));
  return {
    pieces,
    givenGrams: pieces.reduce(
      (sum, piece) => sum + piece.containers * (ofLot.get(piece.lotId)?.containerGrams ?? 0),
      0,
    ),
    distance: sumOf(used.map((visit) => visit.distance)),
    leftContainers: [...left].flatMap(([lotId, containers]) =>
      containers > 0 ? [{ lotId, containers }] : [],
    ),
  };
}

/**
 * What going to the nearest door first would give: each lot in turn to the nearest trip that still takes some. It is shown
 * beside the matching, for what it would lose.
 * Units: as `Matching`. Errors: as `checkMatching`.
 */
export function nearestDoorFirst(lots: readonly GiftLot[], visits: readonly Visit[]): Matching {
  const room = visits.map(({ capacityGrams }) => capacityGrams);
  const pieces = lots.flatMap((lot) => {
    let containers = lot.containers;
    return lot.visits
      .toSorted((a, b) => (visits[a]?.distance ?? 0) - (visits[b]?.distance ?? 0) || a - b)
      .flatMap((visit) => {
        const here = Math.min(containers, Math.floor((room[visit] ?? 0) / lot.containerGrams));
        containers -= here;
        room[visit] = (room[visit] ?? 0) - here * lot.containerGrams;
        return here > 0
          ? [{ lotId: lot.lotId, visitId: visits[visit]?.visitId ?? '', containers: here }]
          : [];
      });
  });
  return checkMatching(lots, visits, pieces);
}
