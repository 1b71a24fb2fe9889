import { isOutside, type TraceLine, type TracePoint, traceFlows, vesselKey } from '@sheafbook/ledger';
import { sumOf } from '@sheafbook/units';
import type { Found } from './queries-find.ts';
import type { Way } from './use-cases-way.ts';

export const presentWayOf = ({ found, way }: { found: readonly Found[]; way: Way | null }) => ({
  found: found.map(presentFound),
  way: way && presentWay(way),
});

const presentFound = ({ kind, id, label, about }: Found) => ({ kind, id, label, about });

function presentWay(way: Way) {
  const { lines, ...sums } = balanceOf(way);
  return {
    of: presentFound(way.of),
    depth: way.depth,
    mayRecall: way.mayRecall,
    lots: way.lots.map((lot) => ({
      id: lot.lotId,
      food: { id: lot.foodId, nameEn: lot.foodEn, nameEs: lot.foodEs, allergens: lot.allergens },
      mark: lot.mark,
      harvestYear: lot.harvestYear,
      supplier: lot.supplierId === null ? null : { id: lot.supplierId, name: lot.supplier ?? '' },
      buy: lot.buyId === null ? null : { id: lot.buyId, name: lot.buy ?? '' },
      orderNos: lot.orderNos,
      deliveries: lot.deliveries.map(({ id, arrivedOn, bags }) => ({ id, arrivedOn, bags })),
    })),
    balance: {
      ...sums,
      knownPermille: way.balance.knownPermille,
      addsUp: sums.inGrams === sums.outGrams + sums.leftGrams && way.balance.leftGrams === way.bookedGrams,
      lines,
    },
    before: listBefore(way),
    ...picture(way),
    holds: way.holds.map(({ id, scope, reason }) => ({ id, scope, sentence: reason })),
    ...carried(way),
  };
}

/** Names of households stand beside their shares; of a neighbour's container they would tell whose it is. */
const showsNames = ({ of, depth }: Way): boolean =>
  depth === 'recall' || (depth === 'shares' && ['lot', 'mark', 'delivery', 'bag'].includes(of.kind));

/** Without a recall a household's grams end at its door for whoever isn't of it. */
const isHome = (way: Way, { ownerId, vesselKind }: Pick<TracePoint, 'ownerId' | 'vesselKind'>): boolean =>
  way.depth === 'shares' &&
  ownerId !== way.ownId &&
  kindOf(way, ownerId) === 'household' &&
  !['bag', 'supplier', 'unexplained', 'moisture', 'transformed'].includes(vesselKind);

const kindOf = (way: Way, ownerId: string): string => way.owners.get(ownerId)?.kind ?? 'unassigned';

function ownerOf(way: Way, ownerId: string) {
  const isShown = ownerId === way.ownId || showsNames(way);
  return {
    owner: kindOf(way, ownerId),
    isOwn: ownerId === way.ownId,
    ownerName: isShown ? (way.owners.get(ownerId)?.name ?? null) : null,
  };
}

/** What a line came from or went to: a vessel's kind, the share of a split, or whoever it changed hands with. */
function placeOf(way: Way, line: TraceLine): string {
  if (line.way !== 'in' && isHome(way, line)) return 'home';
  if (!line.isHandedOver) return line.vesselKind;
  const other = kindOf(way, line.otherOwnerId);
  return { unassigned: 'share', common: 'common' }[other] ?? 'member';
}

/** Lines as they are shown, those that look alike added up; sums are of what is shown. */
function balanceOf(way: Way) {
  const sums = new Map<string, ReturnType<typeof lineOf>>();
  for (const line of way.balance.lines) {
    const shown = lineOf(way, line);
    const key = JSON.stringify({ ...shown, grams: 0 });
    sums.set(key, { ...shown, grams: (sums.get(key)?.grams ?? 0) + line.grams });
  }
  const lines = [...sums.values()];
  const gramsOf = (which: TraceLine['way']) =>
    sumOf(lines.filter((line) => line.way === which).map(({ grams }) => grams));
  return { lines, inGrams: gramsOf('in'), outGrams: gramsOf('out'), leftGrams: gramsOf('left') };
}

function lineOf(way: Way, line: TraceLine) {
  const place = placeOf(way, line);
  return {
    way: place === 'home' ? ('out' as const) : line.way,
    ...{ place, ...ownerOf(way, line.ownerId) },
    pantry: line.end,
    grams: line.grams,
  };
}

function factsOf(way: Way, vesselId: string) {
  const facts = way.vessels.get(vesselId);
  if (!facts) return undefined;
  const { kindEn, kindEs, sessionId, session } = facts;
  return {
    id: vesselId,
    code: facts.code,
    bagNo: facts.bagNo,
    kindOf: kindEn === null ? null : { nameEn: kindEn, nameEs: kindEs ?? kindEn },
    packedOn: facts.packedOn,
    session:
      sessionId === null
        ? null
        : { id: sessionId, name: session ?? '', line: facts.line, serial: facts.serial },
    isHeld: facts.isHeld,
  };
}

/** What had gone into it: bags are everybody's to know, a container by its code only where its owner is seen. */
const listBefore = (way: Way) =>
  way.trace.before.flatMap(({ vesselId, vesselKind: kind }) => {
    const facts = factsOf(way, vesselId);
    const householdId = way.vessels.get(vesselId)?.householdId ?? null;
    return facts && isOpen(way, householdId) ? [{ kind, ...facts }] : [];
  });

const isOpen = ({ depth, ownId }: Way, householdId: string | null): boolean =>
  depth === 'recall' || householdId === null || householdId === ownId;

/** One text for each thing that the picture draws: a vessel, or an end outside by owner and pantry. */
function keyOf(way: Way, point: TracePoint, end: string): string {
  const { vesselKind, ownerId, lotId } = point;
  if (isHome(way, point)) return showsNames(way) ? `home ${ownerId}` : 'home';
  if (!isOutside(vesselKind)) return vesselKey(point);
  if (vesselKind === 'supplier') return `supplier ${lotId}`;
  const isNameless = !showsNames(way) && ownerId !== way.ownId && kindOf(way, ownerId) === 'household';
  return `${vesselKind} ${isNameless ? '' : ownerId} ${end}`;
}

/** What the picture of the way is drawn from: things with the grams that are left in them, and what flowed between. */
function picture(way: Way) {
  const nodes = new Map<string, ReturnType<typeof nodeOf>>();
  const flows = new Map<string, { from: string; to: string; grams: number }>();
  for (const flow of traceFlows(way.trace.movements)) {
    const { source, destination, end, grams } = flow;
    const isShown = way.isSeen(source) && way.isSeen(destination) && !isHome(way, source);
    if (!isShown) continue;
    const [from, to] = [keyOf(way, source, ''), keyOf(way, destination, end)];
    if (!nodes.has(from)) nodes.set(from, nodeOf(way, from, source, ''));
    if (!nodes.has(to)) nodes.set(to, nodeOf(way, to, destination, end));
    const key = JSON.stringify([from, to]);
    flows.set(key, { from, to, grams: (flows.get(key)?.grams ?? 0) + grams });
  }
  for (const { point } of way.held) {
    const key = keyOf(way, point, '');
    if (!isHome(way, point) && !nodes.has(key)) nodes.set(key, nodeOf(way, key, point, ''));
  }
  return { things: [...nodes.values()], flows: [...flows.values()] };
}

function nodeOf(way: Way, key: string, point: TracePoint, pantry: string) {
  const isAtHome = isHome(way, point);
  const isVessel = !isAtHome && !isOutside(point.vesselKind); // and its key is then the vessel’s
  const isBag = point.vesselKind === 'bag';
  return {
    ...{ key, pantry, lotId: point.lotId },
    kind: isAtHome ? ('home' as const) : point.vesselKind,
    ...(isBag ? { owner: 'bag', isOwn: false, ownerName: null } : ownerOf(way, point.ownerId)),
    vessel: isVessel ? (factsOf(way, point.vesselId) ?? null) : null,
    isStart: isVessel && way.startKeys.has(key),
    left: way.held
      .filter((held) => isVessel && held.key === key)
      .map((held) => ({ ...ownerOf(way, held.point.ownerId), grams: held.grams })),
  };
}

/** Containers that may have got a rest of it on the line. A neighbour's are counted and not named, except in a recall. */
function carried(way: Way) {
  const shown = way.carried.filter(({ pour }) => isOpen(way, pour.householdId));
  return {
    carryOvers: shown.map(({ pour, after, newAllergens }) => ({
      id: pour.containerId,
      code: pour.code,
      food: { nameEn: pour.foodEn, nameEs: pour.foodEs },
      ...{ line: pour.line, serial: pour.serial, isThere: pour.isThere, newAllergens },
      afterCode: isOpen(way, after.householdId) ? after.code : null,
    })),
    carryOversOfOthers: way.depth === 'own' ? null : way.carried.length - shown.length,
  };
}
