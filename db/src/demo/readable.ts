import { formatMass, formatMoney } from '@sheafbook/units';
import type { Summary } from './summary.ts';

/** The summary for people: two tables that can be added up by hand, and what the audit says. */
export function readable(summary: Summary): string {
  const { storehouse, currency, packing, rotation, giving, ledger, audit } = summary;
  const failing = audit.filter((finding) => !finding.holds);
  return [
    `${storehouse}, autumn 2026, in ${currency}`,
    '',
    ...buyLines(summary),
    '',
    ...householdLines(summary),
    '',
    `Packing: ${packing.sessions} day, ${packing.containers} containers, ${packing.seamChecks} seams checked, ${packing.overlaps} times that overlap.`,
    `Rotation: ${rotation.queued} containers wait to be eaten, ${rotation.poundsAtRiskThisYear} lb of them more than is eaten in time this year.`,
    `Giving: ${giving.offered} containers offered, ${giving.matched} on manifests, ${mass(giving.givenGrams)} given, about ${giving.meals} meals.`,
    `The book: ${ledger.entries} entries, ${ledger.movements} movements, ` +
      `${ledger.unitsOutOfBalance} units out of balance, ${ledger.accountsDrifted} accounts drifted.`,
    failing.length === 0
      ? `The audit: all ${audit.length} invariants hold.`
      : `The audit: ${failing.length} of ${audit.length} invariants FAIL.`,
    ...failing.map(({ invariant, figure }) => `  ${invariant} (${figure})`),
  ].join('\n');
}

const mass = (grams: number) => formatMass(grams, { unit: 'lb', locale: 'en' });

function buyLines({ currency, buy }: Summary): string[] {
  const money = (minorUnits: number) => formatMoney(minorUnits, currency, 'en');
  return [
    `Autumn grain is ${buy.stage}: ${money(buy.billedMinorUnits)} billed after credits, ` +
      `${money(buy.chargedMinorUnits)} charged, clearing ${money(buy.clearingMinorUnits)}.`,
    `${mass(buy.deliveredGrams)} delivered = ${mass(buy.sharedGrams)} shared + ${mass(buy.lostGrams)} lost; ` +
      `${mass(buy.pouredGrams)} poured into containers.`,
  ];
}

function householdLines({ currency, buy, households }: Summary): string[] {
  const money = (minorUnits: number) => formatMoney(minorUnits, currency, 'en').padStart(9);
  const head = 'Household       got, lb   charged      owes   adults   days   runs out first';
  const rows = households.map((row) => {
    const charge = buy.charges.find(({ household }) => household === row.household);
    return [
      row.household.padEnd(13),
      mass(charge?.grams ?? 0)
        .replace(' lb', '')
        .padStart(10),
      money(charge?.minorUnits ?? 0),
      money(row.balanceMinorUnits),
      row.adultEquivalents.toFixed(2).padStart(8),
      String(row.daysCovered ?? '–').padStart(6),
      `  ${row.runsOutFirst ?? '–'}`,
    ].join(' ');
  });
  const common = buy.charges
    .filter(({ household }) => !households.some((row) => row.household === household))
    .map(({ household, grams, minorUnits }) =>
      [household.padEnd(13), mass(grams).replace(' lb', '').padStart(10), money(minorUnits)].join(' '),
    );
  const grams = buy.charges.reduce((sum, charge) => sum + charge.grams, 0);
  const all = ['All'.padEnd(13), mass(grams).replace(' lb', '').padStart(10), money(buy.chargedMinorUnits)];
  return [head, ...rows, ...common, all.join(' ')];
}
