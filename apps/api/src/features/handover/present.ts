import { dayInZone } from '@sheafbook/units';
import { seesAmounts } from './policy.ts';
import type { Handover } from './use-cases.ts';

/** The page of a hand-over, and its paper: the same figures. */
export function presentHandover(all: Handover) {
  const { actor } = all;
  const withAmounts = seesAmounts(actor);
  const { risk } = all;
  return {
    storehouse: all.storehouse,
    asOn: all.todayOn,
    currency: actor.currency,
    seesAmounts: withAmounts,
    how: all.how,
    buys: all.buys.map(presentBuy),
    sessions: all.sessions.map(({ packingSessionId, name, place, startsAt, stage }) => ({
      ...{ id: packingSessionId, name, place, stage, startsAt: startsAt.toISOString() },
    })),
    claims: all.claims.map((claim) => ({
      ...{ id: claim.claimId, buyId: claim.buyId, buy: claim.buy, supplier: claim.supplier },
      ...{ kind: claim.kind, because: claim.because, raisedOn: claim.raisedOn, minorUnits: claim.minorUnits },
    })),
    bills: all.bills.map(({ supplierId, supplier, number, dueOn, minorUnits }) => ({
      ...{ supplierId, supplier, number, dueOn, minorUnits },
    })),
    deposits: all.deposits.map(({ buy, rows }) => ({
      ...{ buyId: buy.buyId, buy: buy.name },
      households: rows.map(({ householdId, name, seat, askedMinorUnits, heldMinorUnits }) => ({
        ...{ householdId, name, seat },
        ...(withAmounts ? { dueMinorUnits: Math.max(0, (askedMinorUnits ?? 0) - heldMinorUnits) } : {}),
      })),
    })),
    fund: all.fund,
    balances: all.balances,
    lent: all.lent?.map((row) => presentLent(row, all.nowAt)) ?? null,
    holds: all.holds,
    unreached:
      all.unreached?.map(({ notice, telephoneAt, households }) => ({
        ...{ noticeId: notice.noticeId, about: notice.about, aboutEs: notice.aboutEs || notice.about },
        ...{ telephoneAt: telephoneAt.toISOString(), households: households.map(({ name }) => name) },
      })) ?? null,
    atRisk: {
      grams: risk.grams,
      byMonth: risk.byMonth.map(({ month, atRiskGrams }) => ({ month, atRiskGrams })),
    },
    offers: all.offers.map(({ offerId, closesAt, foodEn, foodEs }) => ({
      ...{ id: offerId, foodEn, foodEs, closesAt: closesAt.toISOString() },
    })),
    manifests: all.manifests.map(({ manifest, pantry }) => ({
      ...{ id: manifest.giftManifestId, number: manifest.manifestNo, pantry: pantry.name },
      ...{ onDay: manifest.onDay, driver: manifest.driver },
    })),
    unaskedPantries: all.unaskedPantries.map(({ pantry, current }) => ({
      ...{ id: pantry.pantryId, name: pantry.name, confirmedOn: current.card.confirmedOn },
    })),
    suppliers: all.suppliers.map(presentSupplier),
    duties: all.duties.map(({ duty, holders }) => ({
      duty,
      holders: holders.map(({ personId, name, grantedAt, canSignIn, endsOn }) => ({
        ...{ personId, name, canSignIn, endsOn },
        sinceOn: dayInZone(grantedAt.getTime(), actor.timeZone),
      })),
    })),
    helpers:
      all.helpers?.map(({ grant, helperName, householdName }) => ({
        ...{ id: grant.helperGrantId, householdId: grant.householdId },
        ...{ household: householdName, helper: helperName },
        untilOn: dayInZone(grant.expiresAt.getTime(), actor.timeZone),
      })) ?? null,
    toSign: all.toSign,
  };
}
export type HandoverPage = ReturnType<typeof presentHandover>;

const presentBuy = ({ buy, due, who, consents }: Handover['buys'][number]) => ({
  ...{ id: buy.buyId, name: buy.name, stage: buy.stage, who, consents },
  dueOn: due.dueOn,
  dueAt: due.dueAt?.toISOString() ?? null,
});

const presentLent = (
  { loan, item, unit, seat, householdName }: NonNullable<Handover['lent']>[number],
  now: Date,
) => ({
  ...{ id: loan.loanId, itemId: item.equipmentItemId, item: item.name, unitNo: unit.unitNo },
  ...{ household: householdName, seat, dueAt: loan.dueAt.toISOString(), isLate: loan.dueAt < now },
});

/** The rules of a supplier are the terms of its last quote; what it never quoted is not known. */
const presentSupplier = ({ supplier, quote }: Handover['suppliers'][number]) => ({
  ...{ id: supplier.supplierId, name: supplier.name, contact: supplier.contact },
  terms: quote && {
    reference: quote.reference,
    validUntil: quote.validUntil,
    leadDays: quote.leadDays,
    minimumGoodsMinorUnits: quote.minimumGoodsMinorUnits,
    minimumGrams: quote.minimumGrams,
    freightFreeFromMinorUnits: quote.freightFreeFromMinorUnits,
  },
});
