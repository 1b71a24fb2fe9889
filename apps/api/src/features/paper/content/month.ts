import { compareText, daysBetween } from '@sheafbook/units';
import { type Month, readMonth } from '../../reminder/use-cases.ts';
import { type Block, section, table, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import { type Desk, type MadePaper, subject } from './making.ts';

type Item = Month['items'][number];

/** What is planned further ahead stands on the next sheet. */
const DAYS_AHEAD = 35;

/** A month on one page (job map 16, delighter 18): for a household without e-mail, or for the kitchen door. */
export async function makeMonth({ context, formats }: Desk, householdId: string): Promise<MadePaper> {
  const month = await readMonth(context, householdId);
  const { household, todayOn, notices } = month;
  const { words } = formats;
  const items = month.items
    .filter(({ dueOn }) => dueOn === null || daysBetween(todayOn, dueOn) <= DAYS_AHEAD)
    .toSorted((a, b) => compareText(whenOf(a), whenOf(b)));
  const content = {
    about: [words.seatName(household.name, household.seat), words.month.from(formats.day(todayOn))],
    blocks: [
      ...balanceBlocks(month, formats),
      ...section(words.month.due, items, {
        nothing: words.month.nothingDue,
        block: table(
          [{ name: words.month.when, isKey: true }, { name: words.month.what }],
          items.map((item) => ({ cells: [whenWords(item, formats), whatWords(item, formats)] })),
        ),
      }),
      ...section(words.month.notices, notices, {
        nothing: words.month.noNotices,
        block: table(
          [{ name: words.month.about, isKey: true }, { name: words.month.says }],
          notices.map((notice) => ({
            cells: [
              (formats.language === 'es' && notice.aboutEs) || notice.about,
              [
                notice.isSafety ? words.month.safety : '',
                withDays(formats.language === 'es' ? notice.saysEs : notice.says, formats),
                notice.dueOn === null ? '' : words.month.by(formats.day(notice.dueOn)),
              ]
                .filter((part) => part !== '')
                .join(' '),
            ],
          })),
        ),
      }),
      text(words.month.told),
    ],
  };
  return { subject: subject('month', { householdId }), contentWith: () => content };
}

/** What the book said with its days as the rest of the paper writes them. */
const withDays = (says: string, formats: Formats): string =>
  says.replaceAll(/\b\d{4}-\d{2}-\d{2}\b/g, (on) => formats.day(on));

const whenOf = ({ dueOn, dueAt }: Item): string => dueAt?.toISOString() ?? dueOn ?? 'later';

function whenWords({ dueOn, dueAt }: Item, formats: Formats): string {
  if (dueAt) return formats.instant(dueAt);
  return dueOn === null ? formats.words.month.noDay : formats.day(dueOn);
}

function whatWords({ kind, buy, minorUnits, ...item }: Item, formats: Formats): string {
  const said = formats.words.month.kinds[kind];
  // A thing or a day has the name that the group gave it; a food has one in each language, which its words leave out.
  const of = buy?.name ?? (kind === 'offer-open' || !('about' in item) ? undefined : item.about);
  const what = of === undefined ? said : `${of}: ${said}`;
  return minorUnits === null ? what : `${what} (${formats.money(minorUnits)} ${formats.currency})`;
}

/** A sheet that a coordinator prints says nothing of money. */
function balanceBlocks({ balanceMinorUnits }: Month, formats: Formats): Block[] {
  const { month } = formats.words;
  if (balanceMinorUnits === null) return [text(month.withoutMoney)];
  const strong = formats.money(Math.abs(balanceMinorUnits));
  const before = balanceMinorUnits < 0 ? month.inCredit : month.youOwe;
  return [{ kind: 'lead', before, strong, after: formats.currency }];
}
