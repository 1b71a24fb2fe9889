import type { Tx } from '@sheafbook/db';
import type { ContainerKindRow, ContainerRow, FoodRow, PlaceRow } from '@sheafbook/db/tables';
import {
  isForPeople,
  type KeepingLife,
  type KeptContainer,
  openedDaysOf,
  type ThreeDates,
} from '@sheafbook/keeping';
import type { Kept } from '../keeping/use-cases.ts';
import { loadKept } from '../keeping/use-cases.ts';
import { type KitchenLot, listKitchen, listTakes } from '../kitchen/queries.ts';

/** Something that is to be eaten or given: a container, or a lot in the kitchen. */
export type RotationItem = {
  /** The container's code; of a lot in the kitchen, a name that no container has. */
  readonly code: string;
  readonly lotId: string;
  readonly container: ContainerRow | null;
  readonly kind: ContainerKindRow | null;
  readonly food: FoodRow;
  readonly place: PlaceRow | null;
  readonly grams: number;
  readonly isOpen: boolean;
  readonly isOnHold: boolean;
  /** Found unfit for people: nobody is told to eat it, or to give it to anybody's table. */
  readonly isUnfit: boolean;
  readonly packedOn: string;
  /** Null where nobody has said how the food keeps. */
  readonly life: KeepingLife | null;
  readonly input: KeptContainer | null;
  readonly dates: ThreeDates | null;
};

/** A household's containers that hold something, and what lies open in its kitchen. */
export async function loadHomeStock(
  tx: Tx,
  storehouseId: string,
  { householdId, todayOn }: { householdId: string; todayOn: string },
): Promise<RotationItem[]> {
  const kept = await loadKept(tx, storehouseId, { householdId }, todayOn);
  const lots = await listKitchen(tx, { storehouseId, householdId });
  if (lots.length === 0) return kept.map(toItem);
  const takes = await listTakes(tx, { storehouseId, householdId });
  // They come latest first; of a lot the latest is to stand.
  const sourceIdOf = new Map(takes.toReversed().map(({ lotId, containerId }) => [lotId, containerId]));
  const containerIds = [...new Set(sourceIdOf.values())];
  const sources = await loadKept(tx, storehouseId, { containerIds }, todayOn);
  const inKitchen = lots.flatMap((lot) => {
    const source = sources.find(({ container }) => container.containerId === sourceIdOf.get(lot.lotId));
    return source ? [toKitchenItem(lot, source)] : [];
  });
  return [...inKitchen, ...kept.map(toItem)];
}

export async function loadStoreStock(tx: Tx, storehouseId: string, todayOn: string): Promise<RotationItem[]> {
  return (await loadKept(tx, storehouseId, { householdId: null }, todayOn)).map(toItem);
}

/** What the last look at it left for nobody's table. */
export const isUnfit = ({ look }: Kept): boolean => look !== null && !isForPeople(look.outcome);

function toItem(kept: Kept): RotationItem {
  const { container, kind, food, place, grams, isHeld, keeping } = kept;
  return {
    ...{ code: container.containerCode, lotId: container.lotId, container, kind, food, place, grams },
    ...{
      isOpen: container.openedOn !== null,
      isOnHold: isHeld,
      isUnfit: isUnfit(kept),
      packedOn: container.packedOn,
    },
    ...{ life: keeping?.life ?? null, input: keeping?.input ?? null, dates: keeping?.dates ?? null },
  };
}

/** What lies open in the kitchen keeps as the container would that it came out of last. */
function toKitchenItem({ lotId, food, grams, holdId }: KitchenLot, source: Kept): RotationItem {
  const { container, keeping } = source;
  return {
    ...{ code: `kitchen ${lotId}`, lotId, container: null, kind: null, food, place: null, grams },
    ...{ isOpen: true, isOnHold: holdId !== null, isUnfit: isUnfit(source), packedOn: container.packedOn },
    ...{ life: keeping?.life ?? null, input: null, dates: keeping?.dates ?? null },
  };
}

/** How long the food keeps once it is open; null where nobody has said how it keeps. */
export const openedDaysIn = ({ input }: RotationItem): number | null =>
  input === null ? null : openedDaysOf(input.keepingClass);
