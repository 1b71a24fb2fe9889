import type { Tx } from '@sheafbook/db';
import {
  type Giveable,
  type LadderStep,
  lastGiftDay,
  listLastingRefusals,
  openSteps,
} from '@sheafbook/giving';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { type FoundLast, listFoundForGiving } from '../container/queries.ts';
import { type Kept, loadKept } from '../keeping/use-cases.ts';
import { listForGiving } from '../offer/use-cases.ts';
import { listFacts, listPantries, type PantryWithCard } from '../pantry/queries.ts';
import { factsOf, type GiftFacts, isWithoutOxygen, ruleCardOf, weekdaysOf } from '../pantry/use-cases.ts';
import { loadHouseOwners } from '../storehouse/queries.ts';
import { listMetOnLine } from '../trace/use-cases.ts';
import { type CameBack, listCameBack, listOfferedNow, listOut } from './queries.ts';

/** A container that may be given: what it is, how it keeps, whose it is, and how far down the ladder it has come. */
export type Candidate = {
  readonly kept: Kept;
  readonly facts: GiftFacts;
  /** What the last look at it found; null where nobody looked. */
  readonly look: FoundLast | null;
  /** What may have got into it from what its line ran before it, beyond its own allergens. */
  readonly metOnLine: readonly string[];
  /** Whether somebody said so, or the last look found it. */
  readonly isMouldy: boolean;
  readonly ownerId: string;
  /** The number of the manifest that it is out on. */
  readonly outOn: number | null;
  /** Whether members are being offered it at this moment. */
  readonly isOffered: boolean;
  /** The last day on which any pantry takes it; null where none does. */
  readonly closesOn: string | null;
  /** What a pantry said that did not take it, when it was brought there last. */
  readonly cameBack: CameBack | null;
  /** Whether its offer date has come, or a household handed it over. */
  readonly isDue: boolean;
  readonly steps: readonly LadderStep[];
  /** What a look that finds it sound would open besides; nothing once somebody looked. */
  readonly afterLook: readonly LadderStep[];
};

/** Common stock with something in it and what a household’s offer handed over, what closes first in front. */
export async function loadCandidates(tx: Tx, context: Context): Promise<Candidate[]> {
  const { storehouseId } = context.actor;
  const todayOn = todayOf(context);
  const { commonId } = await loadHouseOwners(tx, storehouseId);
  const forGiving = await listForGiving(tx, storehouseId, context.now());
  const offerOver = new Set(forGiving.map(({ containerId }) => containerId));
  const handed = forGiving.filter(({ householdId }) => householdId !== null);
  const ownerOf = new Map(handed.map(({ containerId, householdId }) => [containerId, householdId]));
  const kept = [
    ...(await loadKept(tx, storehouseId, { householdId: null }, todayOn)),
    ...(await loadKept(tx, storehouseId, { containerIds: [...ownerOf.keys()] }, todayOn)),
  ];
  const offered = await listOfferedNow(tx, storehouseId, context.now());
  const facts = new Map((await listFacts(tx, storehouseId)).map((row) => [row.containerId, row]));
  const out = await listOut(tx, storehouseId);
  const pantries = await listPantries(tx, storehouseId);
  const containerIds = kept.map(({ container }) => container.containerId);
  const looks = await listFoundForGiving(tx, storehouseId, containerIds);
  const met = await listMetOnLine(tx, storehouseId, containerIds);
  const cameBack = await listCameBack(tx, storehouseId, containerIds);
  return kept
    .map((row) => {
      const { containerId } = row.container;
      const said = factsOf(row.container, facts.get(containerId));
      const look = looks.get(containerId) ?? null;
      const isMouldy = said.isMouldy || (look?.findings.includes('mould') ?? false);
      const found = { kept: row, facts: said, look, isMouldy, metOnLine: met.get(containerId) ?? [] };
      const closesOn = closesOnOf(found, pantries);
      const when = { closesOn, isOfferOver: offerOver.has(containerId), todayOn };
      const steps = stepsOf(found, when);
      return {
        ...{ ...found, closesOn, outOn: out.get(containerId) ?? null },
        ownerId: ownerOf.get(containerId) ?? commonId,
        isOffered: offered.has(containerId),
        cameBack: cameBack.get(containerId) ?? null,
        isDue: ownerOf.has(containerId) || (row.keeping !== null && row.keeping.dates.offerOn <= todayOn),
        steps,
        afterLook: stepsAfterLook(found, when).filter((step) => !steps.includes(step)),
      };
    })
    .toSorted((a, b) => (orderOf(a) < orderOf(b) ? -1 : 1));
}

/** One of them; a household's own is not there until it hands it over. */
export async function loadCandidate(tx: Tx, context: Context, containerId: string): Promise<Candidate> {
  const found = (await loadCandidates(tx, context)).find(
    ({ kept }) => kept.container.containerId === containerId,
  );
  if (!found) throw new Problem('thing-not-found', { thing: 'container' });
  return found;
}

const LATEST = '9999-12-31';
const orderOf = ({ kept: { keeping, container }, closesOn }: Candidate) =>
  `${closesOn ?? LATEST} ${keeping?.dates.eatFirstOn ?? LATEST} ${container.containerCode}`;

type Found = Pick<Candidate, 'kept' | 'facts' | 'look' | 'isMouldy' | 'metOnLine'>;

/** The last day on which any pantry takes it by its card as it stands; null where none does. */
function closesOnOf(found: Found, pantries: readonly PantryWithCard[]): string | null {
  const gift = giveableOf(found);
  if (gift === null) return null;
  const days = pantries.flatMap(({ current: { card, openings } }) => {
    const rules = ruleCardOf(card);
    if (listLastingRefusals(rules, gift).length > 0) return [];
    return lastGiftDay(rules, gift, weekdaysOf(openings)) ?? [];
  });
  return days.toSorted().at(-1) ?? null;
}

type When = { closesOn: string | null; isOfferOver: boolean; todayOn: string };

const stepsOf = (found: Found, when: When): LadderStep[] => stepsIf(found, found.look?.outcome ?? null, when);

const stepsAfterLook = (found: Found, when: When): LadderStep[] =>
  found.look === null ? stepsIf(found, 'table', when) : [];

function stepsIf(
  { kept: { isHeld, keeping }, facts, isMouldy }: Found,
  inspected: Parameters<typeof openSteps>[0]['inspected'],
  { closesOn, isOfferOver, todayOn }: When,
): LadderStep[] {
  return openSteps({
    ...{ inspected, isOnHold: isHeld, isTreatedSeed: facts.isTreatedSeed },
    ...{ isMouldy, isOfferOver },
    isPastEatFirst: keeping === null || keeping.dates.eatFirstOn < todayOn,
    isGiftClosed: closesOn === null || closesOn < todayOn,
  });
}

/**
 * A candidate as a rule card reads it, with the allergens that its line may have left in it beside its own: whoever must
 * not have them is not asked to tell the two apart. Null where nobody knows how long it keeps.
 */
export function giveableOf({ kept, facts, metOnLine }: Found): Giveable | null {
  const { container, food, kind, grams, isHeld, keeping } = kept;
  if (keeping === null) return null;
  return {
    code: container.containerCode,
    foodCode: food.foodCode,
    keepingClass: food.keepingClass,
    kindCode: kind.kindCode,
    grams,
    sealedBy: facts.sealedBy,
    isReducedOxygen: isWithoutOxygen(container),
    eatFirstOn: keeping.dates.eatFirstOn,
    allergens: [...new Set([...food.allergens, ...metOnLine])],
    labelFacts: facts.labelFacts,
    isOnHold: isHeld,
    isTreatedSeed: facts.isTreatedSeed,
    isOpened: container.openedOn !== null,
  };
}
