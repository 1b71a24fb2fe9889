import type { ContainerRow, PlaceRow } from '@sheafbook/db/tables';
import type { ToldMove } from './queries.ts';

export const presentPlaceOf = (place: PlaceRow | null) =>
  place && { id: place.placeId, name: place.name, kind: place.kind, isStores: place.householdId === null };

export const presentMoved = (moved: {
  containers: readonly ContainerRow[];
  place: PlaceRow | null;
  movedOn: string;
}) => ({
  movedOn: moved.movedOn,
  place: presentPlaceOf(moved.place),
  containers: moved.containers.map(({ containerId, containerCode }) => ({
    id: containerId,
    code: containerCode,
  })),
});

export const presentMoves = (moves: readonly ToldMove[]) => ({
  moves: moves.map(({ move, place, movedBy }) => ({
    id: move.containerMoveId,
    movedOn: move.movedOn,
    place: presentPlaceOf(place),
    toldTenths: move.toldTenths,
    movedBy,
    movedAt: move.movedAt.toISOString(),
  })),
});
