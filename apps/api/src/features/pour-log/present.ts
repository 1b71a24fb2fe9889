import type { AbsorberPackRow, PackingQueueRow } from '@sheafbook/db/tables';
import { carriedBy, judgeOpenPack, judgePours, type PourAlarm } from '@sheafbook/packing';
import { sumOf } from '@sheafbook/units';
import type { PostedEntry } from '../../platform/post-entry.ts';
import type { BagBalance } from './balance.ts';
import type { Bringable, LoggedPour } from './queries.ts';
import type { LogReading } from './use-cases.ts';

const foodOf = ({ foodId, foodCode, nameEn, nameEs }: LoggedPour['food']) => ({
  ...{ id: foodId, code: foodCode, nameEn, nameEs },
});

export const presentBag = (balance: BagBalance) => {
  const { row, ...figures } = balance;
  return {
    bagId: row.bag.bagId,
    bagCode: row.bag.bagCode,
    bagNo: row.bag.bagNo,
    householdId: row.brought.householdId,
    household: row.household.name,
    food: foodOf(row.food),
    moistureTenthsPercent: row.bag.moistureTenthsPercent,
    ...figures,
    because: row.brought.differenceBecause,
    wasTenths: row.brought.wasTenths,
    isTenths: row.brought.isTenths,
  };
};

export const presentBringable = ({ bag, food, household, grams }: Bringable) => ({
  bagId: bag.bagId,
  bagNo: bag.bagNo,
  householdId: household.householdId,
  household: household.name,
  food: foodOf(food),
  grams,
});

/** A server whose clock was set back counts no pack as opened in the future. */
const secondsOpen = ({ openedAt }: AbsorberPackRow, now: Date) =>
  Math.max(0, (now.getTime() - openedAt.getTime()) / 1000);

export const presentPack = (pack: AbsorberPackRow, now: Date) => ({
  id: pack.absorberPackId,
  sizeMillilitres: pack.sizeMillilitres,
  packets: pack.packets,
  openedAt: pack.openedAt.toISOString(),
  shutAt: pack.shutAt?.toISOString() ?? null,
  packetsLeft: pack.packetsLeft,
  state: pack.shutAt === null ? judgeOpenPack(secondsOpen(pack, now)) : 'shut',
});

/** By whom it was said is nobody's matter. */
export const presentQueue = ({ line, station, waiting, saidAt }: PackingQueueRow) => ({
  ...{ line, station, waiting, saidAt: saidAt.toISOString() },
});

type Judged = { readonly excessGrams: number; readonly alarms: readonly PourAlarm[] };

const runKey = ({ pour, food }: LoggedPour) =>
  JSON.stringify([pour.line, pour.householdId, food.foodId, pour.targetGrams]);

/** Each pour with what its run has given away so far; a run is one household's containers of one food at one target. */
function judgeAll(pours: readonly LoggedPour[], { wishes }: LogReading): Map<LoggedPour, Judged> {
  const standing = pours.filter(({ pour }) => pour.undoneEntryId === null);
  const keys = [...new Set(standing.map(runKey))];
  return new Map(
    keys.flatMap((key) => {
      const run = standing.filter((row) => runKey(row) === key);
      const [first] = run;
      if (!first) return [];
      const { householdId, targetGrams } = first.pour;
      const wished = wishes.filter(
        ({ wish, food }) =>
          wish.householdId === householdId &&
          food.foodId === first.food.foodId &&
          wish.gramsEach === targetGrams,
      );
      const planned = Math.max(sumOf(wished.map(({ wish }) => wish.containers)), run.length);
      const judged = judgePours(
        run.map(({ pour }) => pour.grams),
        { targetGrams, plannedUnits: planned },
      );
      return run.map((pour, at) => [pour, judged[at] as Judged] as const);
    }),
  );
}

function presentPour(row: LoggedPour, judged: Judged | undefined) {
  const { pour, container, kind, food, household } = row;
  return {
    line: pour.line,
    serial: pour.serial,
    containerId: pour.containerId,
    code: container.containerCode,
    kind: { id: kind.containerKindId, code: kind.kindCode, nameEn: kind.nameEn, nameEs: kind.nameEs },
    food: foodOf(food),
    carries: carriedBy(food),
    householdId: pour.householdId,
    household: household.name,
    bagId: pour.bagId,
    targetGrams: pour.targetGrams,
    grams: pour.grams,
    weighedHow: pour.weighedHow,
    grossGrams: pour.grossGrams,
    tareGrams: pour.tareGrams,
    treatment: pour.treatment,
    absorberMillilitres: pour.absorberMillilitres,
    pouredAt: pour.pouredAt.toISOString(),
    recordedAt: pour.recordedAt.toISOString(),
    entryId: pour.entryId,
    isUndone: pour.undoneEntryId !== null,
    excessGrams: judged?.excessGrams ?? 0,
    alarms: judged?.alarms ?? [],
  };
}

export function presentLog(reading: LogReading) {
  const { session, labelsSayOn, pours, losses, packs, queues, balance, unchecked, now } = reading;
  const judged = judgeAll(pours, reading);
  const total = (
    name:
      | 'broughtGrams'
      | 'inContainersGrams'
      | 'leftInBagsGrams'
      | 'spilledGrams'
      | 'sampledGrams'
      | 'moistureGrams',
  ) => sumOf(balance.map((bag) => bag[name]));
  return {
    sessionId: session.packingSessionId,
    stage: session.stage,
    /** The day that stands on labels made ahead; a can is of the day on which it is poured. */
    labelsSayOn,
    signedAt: session.signedAt?.toISOString() ?? null,
    bags: balance.map(presentBag),
    mass: {
      broughtGrams: total('broughtGrams'),
      inContainersGrams: total('inContainersGrams'),
      leftInBagsGrams: total('leftInBagsGrams'),
      spilledGrams: total('spilledGrams'),
      sampledGrams: total('sampledGrams'),
      moistureGrams: total('moistureGrams'),
      unaccountedGrams: sumOf(balance.map((bag) => bag.unaccountedGrams)),
      isWeighed: balance.every(({ isWeighed }) => isWeighed),
    },
    pours: pours.map((row) => presentPour(row, judged.get(row))),
    losses: losses.map(({ entryId, bagId, householdId, kind, grams, lostAt, recordedAt }) => ({
      ...{ entryId, bagId, householdId, to: kind, grams },
      ...{ lostAt: lostAt.toISOString(), recordedAt: recordedAt.toISOString() },
    })),
    packs: packs.map((pack) => presentPack(pack, now)),
    /** How many wait in front of each station, as whoever stood there said. */
    queues: queues.map(presentQueue),
    unchecked: unchecked.map(({ line, machines, fromSerial, toSerial }) => ({
      ...{ line, machines, fromSerial, toSerial },
    })),
  };
}

export const pourCsvRows = (reading: LogReading) =>
  presentLog(reading).pours.map(({ kind, food, carries, alarms, ...row }) => ({
    ...row,
    carries: carries.join(' '),
    kind: kind.code,
    food: food.code,
    alarms: alarms.join(' '),
  }));

export const presentPoured = (result: {
  entry: PostedEntry;
  containers: readonly { id: string; code: string; serial: number; grams: number }[];
  warnings: readonly string[];
}) => ({ ...result.entry, containers: result.containers, warnings: result.warnings });
