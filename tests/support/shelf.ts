import type { Answer, Caller, TestApp } from './app.ts';
import { bodyOf } from './buy.ts';
import type { TestHousehold } from './household.ts';
import type { TestSharedBuy } from './shared-buy.ts';
import type { TestStorehouse } from './storehouse.ts';

/** The part of a numbered bag that a split gave one household. */
export type TestPiece = { bagId: string; bagCode: string; bagNo: number; grams: number };

export type PourWish = {
  kind?: string;
  count?: number;
  gramsEach?: number;
  treatment?: string;
  moistureTenths?: number;
};

/** The id of each container kind of the storehouse by its code. */
export async function kindIdsOf(storehouse: TestStorehouse): Promise<Record<string, string>> {
  const { containerKinds } = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/container-kinds`));
  return Object.fromEntries(
    containerKinds.map((kind: { id: string; kindCode: string }) => [kind.kindCode, kind.id]),
  );
}

/** What a household owns in bags by the split of one food, the largest piece first. */
export async function piecesOf(
  storehouse: TestStorehouse,
  splitId: string,
  { householdId, caller }: TestHousehold,
): Promise<TestPiece[]> {
  const { shares } = bodyOf(await caller.get(`${storehouse.path}/splits/${splitId}`));
  const own = shares.find((share: { ownerId: string }) => share.ownerId === householdId);
  return own.pieces.toSorted((a: TestPiece, b: TestPiece) => b.grams - a.grams || a.bagNo - b.bagNo);
}

/** The largest piece of wheat that a household of the grain buy has. */
export async function wheatOf(
  storehouse: TestStorehouse,
  buy: Pick<TestSharedBuy, 'splitIds'>,
  household: TestHousehold,
) {
  const [largest] = await piecesOf(storehouse, buy.splitIds.wheat, household);
  if (!largest) throw new Error('the household was given no wheat');
  return largest;
}

/** Pouring in a storehouse: one No. 10 can with 1,000 g unless a test says otherwise. */
export async function shelvesOf(app: TestApp, storehouse: TestStorehouse) {
  const kinds = await kindIdsOf(storehouse);
  const pourBody = (
    bag: TestPiece,
    { kind = 'can-no-10', count = 1, gramsEach = 1000, ...treating }: PourWish = {},
  ) => ({
    bagId: bag.bagId,
    containerKindId: kinds[kind],
    count,
    gramsEach,
    ...treating,
  });
  const pour = (caller: Caller, bag: TestPiece, wish: PourWish = {}): Promise<Answer> =>
    caller.post(`${storehouse.path}/containers`, pourBody(bag, wish));
  const aCan = async (caller: Caller, bag: TestPiece, gramsEach = 1000): Promise<TestCan> => {
    const { containers, entryId } = bodyOf(await pour(caller, bag, { gramsEach }), 201);
    return { ...containers[0], entryId };
  };
  return { kinds, pourBody, pour, aCan, gramsIn: (...account: Account) => gramsIn(app, ...account) };
}

export type TestCan = { id: string; code: string; grams: number; entryId: string };
export type Shelves = Awaited<ReturnType<typeof shelvesOf>>;
type Account = [vesselId: string, ownerId: string];

async function gramsIn({ admin }: TestApp, ...[vesselId, ownerId]: Account): Promise<number> {
  const [row] = await admin<{ grams: number }[]>`
    select coalesce(sum(inflow - outflow), 0)::int as grams from book.account
    where vessel_id = ${vesselId} and owner_id = ${ownerId}`;
  return row?.grams ?? 0;
}
