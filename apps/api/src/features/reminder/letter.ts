import { daysBetween } from '@sheafbook/units';
import type { Fact, Telling } from './due.ts';
import { ruleOf } from './kinds.ts';
import type { ReminderWords } from './words/en.ts';
import { wordsOf } from './words/index.ts';

/** A fact with what a letter says of it. */
export type ReminderFact = Fact & {
  /** The thing by its name, and what a notice says, in the reader's language. */
  readonly about: string;
  readonly says: string;
  /** Its page inside the storehouse, such as `/buys/…`. */
  readonly page: string;
};

export type LetterFrame = {
  readonly language: string;
  readonly storehouseName: string;
  /** Due times are those of the storehouse; its zone is named to whoever lives in another. */
  readonly storehouseZone: string;
  readonly readerZone: string;
  /** Where the pages of the storehouse are. */
  readonly home: string;
  /** A new address that stops a kind, or `all`; it is asked for none that can't be stopped. */
  readonly stopUrlOf: (kind: string) => string;
};

export type LetterText = {
  readonly kind: string;
  readonly subject: string;
  readonly text: string;
  readonly html: string;
  readonly stopUrl: string | null;
};

type Item = {
  readonly subject: string;
  readonly says: string;
  readonly link: string;
  readonly kind: ReminderFact['kind'];
};

/** One thing in a letter of its own. */
export function letterOf(telling: Telling<ReminderFact>, frame: LetterFrame): LetterText {
  const words = wordsOf(frame.language);
  const item = itemOf(telling, frame, words);
  const stopUrl = isStoppable(item.kind) ? frame.stopUrlOf(item.kind) : null;
  return {
    kind: item.kind,
    subject: words.single(item.subject, frame.storehouseName),
    stopUrl,
    ...bodiesOf([item], words, stopUrl === null ? null : { name: words.stop, url: stopUrl }),
  };
}

/** Everything of a day in one letter; what stops it, stops all letters but those about safety. */
export function digestOf(tellings: readonly Telling<ReminderFact>[], frame: LetterFrame): LetterText {
  const words = wordsOf(frame.language);
  const items = tellings.map((telling) => itemOf(telling, frame, words));
  const stopUrl = frame.stopUrlOf('all');
  return {
    kind: 'digest',
    subject: words.digest(items.length, frame.storehouseName),
    stopUrl,
    ...bodiesOf(items, words, { name: words.stopAll, url: stopUrl }),
  };
}

function itemOf({ fact, stage }: Telling<ReminderFact>, frame: LetterFrame, words: ReminderWords): Item {
  const { kind, about, says, page } = fact;
  const due = dueText(fact, frame);
  const told = words.kinds[kind]({ about, due, says: withDays(says, frame) });
  const isTold = kind === 'notice' || kind === 'safety'; // a notice's day stands in no sentence of ours
  const extra = [isTold && due !== '' ? words.by(due) : '', stage === 'overdue' ? words.overdue : ''];
  return {
    kind,
    subject: told.subject,
    says: [told.says, ...extra].filter((part) => part !== '').join(' '),
    link: `${frame.home}${page}`,
  };
}

function dueText({ dueOn, dueAt }: Fact, frame: LetterFrame): string {
  const { storehouseZone, readerZone } = frame;
  if (dueAt !== null) {
    const clock = { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' } as const;
    const format = new Intl.DateTimeFormat(localeOf(frame), { timeZone: storehouseZone, ...DAY, ...clock });
    const text = format.format(dueAt);
    return storehouseZone === readerZone ? text : `${text} (${storehouseZone})`;
  }
  return dueOn === null ? '' : dayText(dueOn, frame);
}

const DAY = { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' } as const;

/** Day before month in both languages. */
const localeOf = ({ language }: LetterFrame): string => (language === 'es' ? 'es' : 'en-GB');

const dayText = (on: string, frame: LetterFrame): string =>
  new Intl.DateTimeFormat(localeOf(frame), { timeZone: 'UTC', ...DAY }).format(new Date(`${on}T00:00:00Z`));

/** What the book said with its days as people write them. */
const withDays = (says: string, frame: LetterFrame): string =>
  says.replaceAll(/\b\d{4}-\d{2}-\d{2}\b/g, (on) => dayText(on, frame));

type Stop = { readonly name: string; readonly url: string } | null;

function bodiesOf(items: readonly Item[], words: ReminderWords, stop: Stop) {
  const last = stop === null ? words.cannotStop : `${stop.name}: ${stop.url}`;
  const text = [...items.map(({ says, link }) => `${says}\n${words.go}: ${link}`), last].join('\n\n');
  const html = [
    ...items.map(
      ({ says, link }) => `<p>${escapeHtml(says)}<br><a href="${escapeHtml(link)}">${words.go}</a></p>`,
    ),
    stop === null
      ? `<p>${escapeHtml(words.cannotStop)}</p>`
      : `<p><a href="${escapeHtml(stop.url)}">${escapeHtml(stop.name)}</a></p>`,
  ].join('\n');
  return { text, html };
}

export const escapeHtml = (text: string): string =>
  text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);

/** Notices older than this are not written about any more: whoever was away finds them inside. */
const NOTICE_DAYS = 14;

export const isFresh = (writtenOn: string, todayOn: string): boolean =>
  daysBetween(writtenOn, todayOn) <= NOTICE_DAYS;

const isStoppable = (kind: ReminderFact['kind']): boolean => !ruleOf(kind).isSafety;
