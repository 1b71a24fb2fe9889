import { addDays, daysBetween, wallTimeInZone } from '@sheafbook/units';
import { type ReminderKind, ruleOf } from './kinds.ts';

/** Something that a person should know of now, as the book stands at this moment. */
export type Fact = {
  readonly kind: ReminderKind;
  /** Which one of its kind: the id of a buy, a hold, a notice. */
  readonly thing: string;
  readonly dueOn: string | null;
  /** Since when it stands, of what has no day by which. */
  readonly sinceOn?: string | null;
  readonly dueAt: Date | null;
  /** When a window that begins at `dueAt` ends: until then nothing is over. */
  readonly endsAt?: Date | null;
};

/** When and about what one person wants to hear. Hours are on the clock of `timeZone`; `toHour` is no longer in them. */
export type Hours = {
  readonly timeZone: string;
  readonly fromHour: number;
  readonly toHour: number;
  /** One letter a day at this hour, instead of one for each thing. */
  readonly digestHour: number | null;
};
export type Wishes = Hours & {
  readonly isOn: boolean;
  readonly stopped: ReadonlySet<string>;
};

export type Telling<OneFact extends Fact> = {
  readonly fact: OneFact;
  /** How near it is: "open", "3-days", "day", "overdue". */
  readonly stage: string;
  /** The same as long as thing, due moment and stage are; what was told under it is not told again. */
  readonly key: string;
};

export type Due<OneFact extends Fact> = {
  readonly single: readonly Telling<OneFact>[];
  readonly digest: { readonly key: string; readonly tellings: readonly Telling<OneFact>[] } | null;
};

/**
 * What is to be told to one person now: each thing once a stage. Nothing is planned ahead, so what is moved is told by
 * its new day and what is gone is not told at all. Days are counted in the storehouse's zone, hours in the person's.
 */
export function tellingsDue<OneFact extends Fact>(
  facts: readonly OneFact[],
  at: { now: Date; storehouseZone: string; wishes: Wishes; told: ReadonlySet<string> },
): Due<OneFact> {
  const { now, wishes, told } = at;
  const tellings = facts
    .flatMap((fact) => tellingOf(fact, at))
    .filter(({ key, fact }) => !told.has(key) && isWanted(fact.kind, wishes));
  const isUrgent = ({ fact }: Telling<OneFact>) => ruleOf(fact.kind).isSafety === true;
  const urgent = tellings.filter(isUrgent);
  const others = tellings.filter((telling) => !isUrgent(telling));
  if (wishes.digestHour === null) {
    const single = isInHours(now, wishes) ? [...urgent, ...others] : urgent;
    return { single, digest: null };
  }
  const day = digestDay(now, wishes);
  const key = `digest|${day}`;
  const isTime = day !== null && !told.has(key) && others.length > 0;
  return { single: urgent, digest: isTime ? { key, tellings: others } : null };
}

const isWanted = (kind: ReminderKind, { isOn, stopped }: Wishes): boolean =>
  ruleOf(kind).isSafety === true || (isOn && !stopped.has(kind));

function tellingOf<OneFact extends Fact>(
  fact: OneFact,
  { now, storehouseZone }: { now: Date; storehouseZone: string },
): Telling<OneFact>[] {
  const stage = stageOf(fact, { now, todayOn: dayAndHour(now, storehouseZone).day });
  if (stage === null) return [];
  const moment = fact.dueAt?.toISOString() ?? fact.dueOn ?? '-';
  return [{ fact, stage, key: `${fact.kind}|${fact.thing}|${moment}|${stage}` }];
}

/** The nearest stage that has come; one that nobody was told of in time is not told after the fact. */
export function stageOf(fact: Fact, { now, todayOn }: { now: Date; todayOn: string }): string | null {
  const { kind, dueOn, dueAt, endsAt, sinceOn = null } = fact;
  const { before = [], onTheDay, overdue, open } = ruleOf(kind);
  if (dueOn === null) {
    if (open === 'monthly') return `open ${todayOn.slice(0, 7)}`;
    if (open === 'weekly') return `open ${Math.floor(daysBetween(sinceOn ?? todayOn, todayOn) / 7)}`;
    return open ?? null;
  }
  const days = daysBetween(todayOn, dueOn);
  const lastAt = endsAt ?? dueAt;
  if (lastAt ? lastAt <= now : days < 0) return overdue ? 'overdue' : null;
  if (days <= 0) return onTheDay ? 'day' : null;
  const nearest = before.filter((many) => days <= many).toSorted((a, b) => a - b)[0];
  return nearest === undefined ? null : `${nearest}-days`;
}

/** Whether a person's hours are open; hours may span midnight, as those of somebody who works at night. */
export function isInHours(now: Date, hours: Hours): boolean {
  return isHourIn(dayAndHour(now, hours.timeZone).hour, hours);
}

const isHourIn = (hour: number, { fromHour, toHour }: Pick<Hours, 'fromHour' | 'toHour'>): boolean =>
  fromHour < toHour ? hour >= fromHour && hour < toHour : hour >= fromHour || hour < toHour;

/**
 * The day whose digest is to be sent now, or none. It is sent in the hours at or after its own; where summer time skips
 * that hour the next one is as good, and where an hour comes twice its day is still one day.
 */
function digestDay(now: Date, hours: Hours): string | null {
  const { timeZone, digestHour, toHour } = hours;
  if (digestHour === null || !isInHours(now, hours)) return null;
  const { day, hour } = dayAndHour(now, timeZone);
  const sinceDigest = (hour - digestHour + 24) % 24;
  const untilEnd = (toHour - digestHour + 24) % 24 || 24;
  if (sinceDigest >= untilEnd) return null;
  return hour >= digestHour ? day : addDays(day, -1);
}

/** A digest's hour must lie in the hours, or it would never come. */
export function isDigestInHours({ digestHour, ...hours }: Omit<Hours, 'timeZone'>): boolean {
  return digestHour === null || isHourIn(digestHour, hours);
}

function dayAndHour(now: Date, timeZone: string): { day: string; hour: number } {
  const [day = '', time = ''] = wallTimeInZone(now.getTime(), timeZone).split('T');
  return { day, hour: Number(time.slice(0, 2)) };
}
