import { presentHandover } from '../../handover/present.ts';
import { readHandover } from '../../handover/use-cases.ts';
import { type Block, facts, heading, type Row, section, table, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import { type Desk, foodOf, type MadePaper, saidOn, subject } from './making.ts';
import { namesOf } from './quarantine-tag.ts';

type Page = ReturnType<typeof presentHandover>;

/** The pack that a duty is handed over with: from it a stranger can run the next buy (job map 16, delighter 13). */
export async function makeHandover({ context, formats }: Desk): Promise<MadePaper> {
  const page = presentHandover(await readHandover(context));
  const { handover: words, currencyOnce } = formats.words;
  const content = {
    about: [words.asOn(formats.day(page.asOn))],
    blocks: [
      text(words.never),
      text(page.seesAmounts ? words.withAmounts : words.withoutAmounts),
      ...dutyBlocks(page, formats),
      ...openBlocks(page, formats),
      ...owedBlocks(page, formats),
      ...stockBlocks(page, formats),
      ...givingBlocks(page, formats),
      ...supplierBlocks(page, formats),
      ...signBlocks(page, formats),
      ...listOf(formats, words.how, {
        names: [words.step, words.who],
        rows: page.how.map(({ stage, who }) => [words.steps[stage] ?? stage, dutiesOf(who, formats)]),
      }),
      heading(words.byHand),
      facts(words.blanks.map((name) => ({ name, value: '' }))),
      text(currencyOnce(formats.currency)),
      { kind: 'signatures', boxes: [words.signGives, words.signTakes] } as const,
    ],
  };
  return { subject: subject('handover', {}), contentWith: () => content };
}

type Listed = {
  readonly names: readonly [string, ...string[]];
  readonly rows: readonly (readonly string[])[];
};

const listOf = ({ words: { handover } }: Formats, title: string, listed: Listed): Block[] =>
  section(title, listed.rows, { block: tableOf(listed), nothing: handover.nothing });

const tableOf = ({ names, rows }: Listed): Block =>
  table(
    names.map((name, at) => ({ name, isKey: at === 0 })),
    rows.map((cells): Row => ({ cells })),
  );

const dutiesOf = (duties: readonly string[], { words: { handover } }: Formats): string =>
  duties.map((duty) => handover.dutyNames[duty] ?? duty).join(', ');

function dutyBlocks({ duties, helpers }: Page, formats: Formats): Block[] {
  const { handover: words } = formats.words;
  const held = listOf(formats, words.duties, {
    names: [words.duty, words.person, words.since, words.endsOn],
    rows: duties.flatMap(({ duty, holders }) =>
      holders.length === 0
        ? [[dutiesOf([duty], formats), words.nobody, '', '']]
        : holders.map(({ name, sinceOn, canSignIn, endsOn }) => [
            dutiesOf([duty], formats),
            canSignIn ? name : words.withoutLogin(name),
            formats.day(sinceOn),
            endsOn === null ? '' : formats.day(endsOn),
          ]),
    ),
  });
  if (helpers === null) return held;
  const rows = helpers.map(({ household, helper, untilOn }) => [household, helper, formats.day(untilOn)]);
  const acting = { names: [words.household, words.helper, words.until] as const, rows };
  return [...held, ...listOf(formats, words.helpers, acting)];
}

function openBlocks({ buys, sessions, claims }: Page, formats: Formats): Block[] {
  const { handover: words } = formats.words;
  return [
    ...listOf(formats, words.buys, {
      names: [words.buy, words.next, words.who, words.by],
      rows: buys.map(({ name, stage, who, dueOn }) => [
        name,
        words.steps[stage] ?? stage,
        dutiesOf(who, formats),
        dueOn === null ? '' : formats.day(dueOn),
      ]),
    }),
    ...listOf(formats, words.sessions, {
      names: [words.session, words.when, words.where, words.stands],
      rows: sessions.map(({ name, startsAt, place, stage }) => [
        name,
        formats.instant(new Date(startsAt)),
        place,
        words.sessionStages[stage] ?? stage,
      ]),
    }),
    ...listOf(formats, words.claims, {
      names: [words.supplier, words.buy, words.since, words.amount],
      rows: claims.map(({ supplier, buy, raisedOn, minorUnits }) => [
        supplier,
        buy,
        formats.day(raisedOn),
        formats.money(minorUnits),
      ]),
    }),
  ];
}

function owedBlocks({ bills, deposits, balances, fund, lent }: Page, formats: Formats): Block[] {
  const { handover: words } = formats.words;
  return [
    ...listOf(formats, words.bills, {
      names: [words.supplier, words.bill, words.by, words.amount],
      rows: bills.map(({ supplier, number, dueOn, minorUnits }) => [
        supplier,
        number,
        dueOn === null ? '' : formats.day(dueOn),
        formats.money(minorUnits),
      ]),
    }),
    ...listOf(formats, words.deposits, {
      names: [words.buy, words.household, words.due],
      rows: deposits.flatMap(({ buy, households }) =>
        households.map((household) => [
          buy,
          formats.words.seatName(household.name, household.seat),
          household.dueMinorUnits === undefined ? words.yes : formats.money(household.dueMinorUnits),
        ]),
      ),
    }),
    ...(balances === null
      ? []
      : [
          heading(words.balances),
          facts([
            { name: words.owing, value: formats.count(balances.owing) },
            { name: words.owed, value: formats.money(balances.owedMinorUnits) },
            { name: words.credit, value: formats.money(balances.creditMinorUnits) },
          ]),
        ]),
    heading(words.fund),
    facts([
      { name: words.inFund, value: formats.money(fund.heldMinorUnits + fund.yearMinorUnits) },
      { name: words.promised, value: formats.money(fund.promisedMinorUnits) },
      { name: words.free, value: formats.money(fund.freeMinorUnits) },
    ]),
    ...(lent === null
      ? []
      : listOf(formats, words.lent, {
          names: [words.thing, words.household, words.backBy],
          rows: lent.map(({ item, unitNo, household, seat, dueAt, isLate }) => [
            words.unit(item, unitNo),
            formats.words.seatName(household, seat),
            [formats.instant(new Date(dueAt)), isLate && words.late].filter(Boolean).join(', '),
          ]),
        })),
  ];
}

function stockBlocks({ holds, unreached, atRisk }: Page, formats: Formats): Block[] {
  const { handover: words } = formats.words;
  return [
    ...listOf(formats, words.held, {
      names: [words.what, words.since, words.why],
      rows: holds.map((hold) => [
        namesOf(hold, formats).join(', '),
        formats.instant(new Date(hold.heldAt)),
        saidOn(hold.reason, formats),
      ]),
    }),
    ...(unreached === null
      ? []
      : listOf(formats, words.unreached, {
          names: [words.what, words.telephone, words.since],
          rows: unreached.map(({ about, aboutEs, households, telephoneAt }) => [
            formats.language === 'es' ? aboutEs : about,
            households.join(', '),
            formats.instant(new Date(telephoneAt)),
          ]),
        })),
    heading(words.atRisk),
    text(words.atRiskSays(formats.both(atRisk.grams))),
    ...(atRisk.byMonth.length === 0
      ? []
      : [
          tableOf({
            names: [words.month, words.mass],
            rows: atRisk.byMonth.map(({ month, atRiskGrams }) => [
              formats.month(month),
              formats.both(atRiskGrams),
            ]),
          }),
        ]),
  ];
}

function givingBlocks({ offers, manifests, unaskedPantries }: Page, formats: Formats): Block[] {
  const { handover: words } = formats.words;
  return listOf(formats, words.giving, {
    names: [words.what, words.by],
    rows: [
      ...offers.map((offer) => [
        words.offered(foodOf(offer, formats)),
        formats.instant(new Date(offer.closesAt)),
      ]),
      ...manifests.map(({ number, pantry, onDay }) => [words.out(number, pantry), formats.day(onDay)]),
      ...unaskedPantries.map(({ name, confirmedOn }) => [
        words.unasked(name),
        words.askedOn(formats.day(confirmedOn)),
      ]),
    ],
  });
}

function supplierBlocks({ suppliers }: Page, formats: Formats): Block[] {
  const { handover: words } = formats.words;
  return listOf(formats, words.suppliers, {
    names: [words.supplier, words.contact, words.terms],
    rows: suppliers.map(({ name, contact, terms }) => [
      name,
      contact || formats.words.none,
      terms === null ? words.noTerms : termsOf(terms, formats).join('\n'),
    ]),
  });
}

function termsOf(terms: NonNullable<Page['suppliers'][number]['terms']>, formats: Formats): string[] {
  const { handover: words } = formats.words;
  return [
    words.quote(terms.reference, formats.day(terms.validUntil)),
    words.lead(terms.leadDays),
    ...(terms.minimumGoodsMinorUnits > 0
      ? [words.leastMoney(formats.money(terms.minimumGoodsMinorUnits))]
      : []),
    ...(terms.minimumGrams > 0 ? [words.leastMass(formats.both(terms.minimumGrams))] : []),
    ...(terms.freightFreeFromMinorUnits === null
      ? []
      : [words.freeFreight(formats.money(terms.freightFreeFromMinorUnits))]),
  ];
}

function signBlocks({ toSign, buys }: Page, formats: Formats): Block[] {
  const { handover: words } = formats.words;
  const { yearEndOn, closes } = toSign;
  return listOf(formats, words.toSign, {
    names: [words.what, words.who],
    rows: [
      ...(yearEndOn === null
        ? []
        : [[words.yearOpen(formats.day(yearEndOn)), dutiesOf(['treasurer'], formats)]]),
      ...closes.map(({ closedThrough, missing }) => [
        words.close(formats.day(closedThrough)),
        dutiesOf(missing, formats),
      ]),
      ...buys
        .filter(({ stage }) => stage === 'fixed')
        .map(({ name, who }) => [words.order(name), dutiesOf(who, formats)]),
    ],
  });
}
