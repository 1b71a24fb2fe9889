import { countFromGrams, parseMass, parseMoney } from '@sheafbook/units';
import type { Formats } from '../../text/format.ts';
import type { BuyPage, Quote } from './buy-body.ts';

export type BreakDraft = { readonly fromBags: string; readonly price: string };
export type OfferDraft = {
  readonly buyLineId: string;
  readonly bagSize: string;
  readonly breakKind: string;
  readonly mostBags: string;
  readonly breaks: readonly BreakDraft[];
  /** The bag that it stands for already, when its terms are confirmed. */
  readonly bagOfferId?: string;
};
export type StepDraft = { readonly from: string; readonly price: string };

/** A quote as it is typed; every figure stays the text that was written until it is sent. */
export type QuoteDraft = {
  readonly supplierId: string;
  readonly supplierName: string;
  readonly supplierContact: string;
  readonly reference: string;
  readonly validUntil: string;
  readonly leadDays: string;
  readonly cropYear: string;
  readonly moistureNote: string;
  readonly foreignPriceNote: string;
  readonly minimumGoods: string;
  readonly minimumMass: string;
  readonly steps: readonly StepDraft[];
  readonly freeFrom: string;
  readonly offers: readonly OfferDraft[];
};

/** What a supplier that is not in the list yet is chosen by. */
export const NEW_SUPPLIER = 'new';

export const emptyBreak = (fromBags: string): BreakDraft => ({ fromBags, price: '' });
export const emptyOffer = (buyLineId: string): OfferDraft => ({
  buyLineId,
  bagSize: '',
  breakKind: 'all-units',
  mostBags: '',
  breaks: [emptyBreak('1')],
});

export function emptyQuote(buy: BuyPage): QuoteDraft {
  return {
    ...{ supplierId: '', supplierName: '', supplierContact: '', reference: '', validUntil: '' },
    ...{ leadDays: '', cropYear: '', moistureNote: '', foreignPriceNote: '' },
    ...{ minimumGoods: '', minimumMass: '', freeFrom: '' },
    steps: [{ from: '0', price: '' }],
    offers: [emptyOffer(buy.lines[0]?.id ?? '')],
  };
}

export function draftOfQuote(quote: Quote, unit: 'lb' | 'kg', format: Formats): QuoteDraft {
  const money = (minorUnits: number) => format.money(minorUnits);
  const mass = (grams: number) => {
    const units = countFromGrams(grams, unit);
    return units === null ? `${grams} g` : `${units} ${unit}`;
  };
  const some = (value: number, say: (value: number) => string) => (value === 0 ? '' : say(value));
  return {
    supplierId: quote.supplier.id,
    supplierName: '',
    supplierContact: '',
    reference: quote.reference,
    validUntil: quote.validUntil,
    leadDays: some(quote.leadDays, String),
    cropYear: quote.cropYear === null ? '' : String(quote.cropYear),
    moistureNote: quote.moistureNote,
    foreignPriceNote: quote.foreignPriceNote,
    minimumGoods: some(quote.minimumGoodsMinorUnits, money),
    minimumMass: some(quote.minimumGrams, mass),
    steps: quote.freightSteps.map(({ fromGrams, minorUnits }) => ({
      from: fromGrams === 0 ? '0' : mass(fromGrams),
      price: money(minorUnits),
    })),
    freeFrom: quote.freightFreeFromMinorUnits === null ? '' : money(quote.freightFreeFromMinorUnits),
    offers: quote.offers.map((offer) => ({
      buyLineId: offer.buyLineId,
      bagSize: String(offer.bagSize),
      breakKind: offer.breakKind,
      mostBags: offer.mostBags === null ? '' : String(offer.mostBags),
      breaks: offer.breaks.map(({ fromBags, bagPriceMinorUnits }) => ({
        fromBags: String(fromBags),
        price: money(bagPriceMinorUnits),
      })),
      bagOfferId: offer.id,
    })),
  };
}

/** Which field can't be read as what it should be; the words are found by the kind. */
export type Unread = Readonly<Record<string, 'money' | 'mass' | 'count' | 'whole' | 'day' | 'supplier'>>;

/** Reads typed figures, and keeps the name of each field that can't be read. An empty field is what `otherwise` says. */
function openReader(unit: 'lb' | 'kg', currency: string) {
  const unread: Record<string, 'money' | 'mass' | 'count' | 'whole' | 'day' | 'supplier'> = {};
  const money = (text: string, field: string, otherwise: number | null): number | null => {
    if (text.trim() === '') return otherwise;
    const amount = parseMoney(text, currency);
    if ('minorUnits' in amount) return amount.minorUnits;
    unread[field] = 'money';
    return otherwise;
  };
  const whole = (text: string, field: string, at: { least: 0 | 1; otherwise: number | null }) => {
    if (text.trim() === '') return at.otherwise;
    if (/^\d{1,6}$/.test(text.trim()) && Number(text) >= at.least) return Number(text);
    unread[field] = at.least === 1 ? 'count' : 'whole';
    return at.otherwise;
  };
  return {
    unread,
    money,
    whole,
    mustMoney(text: string, field: string): number {
      if (text.trim() === '') unread[field] = 'money';
      return money(text, field, 0) ?? 0;
    },
    mustCount(text: string, field: string): number {
      if (text.trim() === '') unread[field] = 'count';
      return whole(text, field, { least: 1, otherwise: 1 }) ?? 1;
    },
    mass(text: string, field: string): number {
      if (text.trim() === '') return 0;
      const read = parseMass(text, { defaultUnit: unit });
      if (!('problem' in read)) return read.grams;
      if (read.problem !== 'zero') unread[field] = 'mass';
      return 0;
    },
  };
}

/**
 * Reads what was typed: the terms as they are sent, and every field that can't be read, named as the server names it.
 */
export function readQuote(draft: QuoteDraft, unit: 'lb' | 'kg', currency: string) {
  const { unread, money, whole, mustMoney, mustCount, mass } = openReader(unit, currency);
  if (draft.validUntil === '') unread.validUntil = 'day';
  const isNamed =
    draft.supplierId === NEW_SUPPLIER ? draft.supplierName.trim() !== '' : draft.supplierId !== '';
  if (!isNamed) unread.supplierId = 'supplier';
  const freight = {
    freightSteps: draft.steps.map(({ from, price }, at) => ({
      fromGrams: mass(from, `freightSteps.${at}.fromGrams`),
      minorUnits: mustMoney(price, `freightSteps.${at}.minorUnits`),
    })),
    freightFreeFromMinorUnits: money(draft.freeFrom, 'freightFreeFromMinorUnits', null),
  };
  const offers = draft.offers.map((offer, at) => ({
    buyLineId: offer.buyLineId,
    bagSize: mustCount(offer.bagSize, `offers.${at}.bagSize`),
    breakKind: offer.breakKind === 'incremental' ? ('incremental' as const) : ('all-units' as const),
    mostBags: whole(offer.mostBags, `offers.${at}.mostBags`, { least: 1, otherwise: null }),
    breaks: offer.breaks.map(({ fromBags, price }, step) => ({
      fromBags: mustCount(fromBags, `offers.${at}.breaks.${step}.fromBags`),
      bagPriceMinorUnits: mustMoney(price, `offers.${at}.breaks.${step}.bagPriceMinorUnits`),
    })),
  }));
  const { reference, validUntil, moistureNote, foreignPriceNote } = draft;
  const terms = {
    ...{ reference, validUntil, moistureNote, foreignPriceNote, ...freight, offers },
    minimumGoodsMinorUnits: money(draft.minimumGoods, 'minimumGoodsMinorUnits', 0) ?? 0,
    minimumGrams: mass(draft.minimumMass, 'minimumGrams'),
    leadDays: whole(draft.leadDays, 'leadDays', { least: 0, otherwise: 0 }) ?? 0,
    cropYear: whole(draft.cropYear, 'cropYear', { least: 1, otherwise: null }),
  };
  const confirmed = {
    ...{ validUntil, ...freight },
    offers: draft.offers.flatMap(({ bagOfferId }, at) =>
      bagOfferId === undefined ? [] : [{ bagOfferId, breaks: offers[at]?.breaks ?? [] }],
    ),
  };
  return { terms, confirmed, unread: unread as Unread };
}
