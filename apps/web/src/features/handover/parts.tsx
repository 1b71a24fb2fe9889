import { useHouse } from '../../ui/house.ts';
import { Figures } from '../../ui/pieces.tsx';
import { Part } from './part.tsx';
import type { HandoverPage } from './queries.ts';
import { useDutiesNamed, useHandoverText } from './words.ts';

type OfPage = { readonly page: HandoverPage };

export function OpenPart({ page: { buys, sessions, claims } }: OfPage) {
  const words = useHandoverText();
  const { format } = useHouse();
  const named = useDutiesNamed();
  return (
    <>
      <Part
        title={words.buys}
        rows={buys.map(({ id, name, stage, who, dueOn }) => ({
          key: id,
          to: `/buys/${id}/run`,
          text: name,
          note: [words.steps[stage] ?? stage, named(who), dueOn === null ? '' : words.by(format.day(dueOn))]
            .filter(Boolean)
            .join('; '),
        }))}
      />
      <Part
        title={words.sessions}
        rows={sessions.map(({ id, name, startsAt, stage }) => ({
          key: id,
          to: `/packing/${id}`,
          text: name,
          note: `${format.instant(startsAt)}; ${words.sessionStages[stage] ?? stage}`,
        }))}
      />
      <Part
        title={words.claims}
        rows={claims.map(({ id, buyId, buy, supplier, raisedOn, minorUnits }) => ({
          key: id,
          to: `/buys/${buyId}/landing`,
          text: `${supplier}, ${buy}`,
          note: `${words.since(format.day(raisedOn))}; ${format.money(minorUnits)} ${format.currency}`,
        }))}
      />
    </>
  );
}

export function OwedPart({ page: { bills, deposits, balances, fund, lent } }: OfPage) {
  const words = useHandoverText();
  const { format, duties } = useHouse();
  const readsBooks = duties.includes('treasurer');
  const money = (minorUnits: number) => `${format.money(minorUnits)} ${format.currency}`;
  return (
    <>
      <Part
        title={words.bills}
        rows={bills.map(({ supplierId, supplier, number, dueOn, minorUnits }, at) => ({
          key: `${supplierId} ${number} ${at}`,
          to: readsBooks ? '/books/suppliers' : '/buys',
          text: `${supplier} ${number}`.trim(),
          note: [dueOn === null ? '' : words.by(format.day(dueOn)), money(minorUnits)]
            .filter(Boolean)
            .join('; '),
        }))}
      />
      <Part
        title={words.deposits}
        rows={deposits.flatMap(({ buyId, buy, households }) =>
          households.map(({ householdId, name, seat, dueMinorUnits }) => ({
            key: `${buyId} ${householdId}`,
            to: readsBooks ? '/books/deposits' : `/buys/${buyId}/run`,
            text: words.seatName(name, seat),
            note: dueMinorUnits === undefined ? buy : `${buy}; ${money(dueMinorUnits)}`,
          })),
        )}
      />
      {balances === null ? null : (
        <section className="stack">
          <h2>{words.balances}</h2>
          <Figures
            rows={[
              { name: words.owing, value: format.count(balances.owing) },
              { name: words.owed, value: format.money(balances.owedMinorUnits), unit: format.currency },
              { name: words.credit, value: format.money(balances.creditMinorUnits), unit: format.currency },
            ]}
          />
        </section>
      )}
      <section className="stack">
        <h2>{words.fund}</h2>
        <Figures
          rows={[
            {
              name: words.inFund,
              value: format.money(fund.heldMinorUnits + fund.yearMinorUnits),
              unit: format.currency,
            },
            { name: words.promised, value: format.money(fund.promisedMinorUnits), unit: format.currency },
            { name: words.free, value: format.money(fund.freeMinorUnits), unit: format.currency },
          ]}
        />
      </section>
      {lent === null ? null : (
        <Part
          title={words.lent}
          rows={lent.map(({ id, itemId, item, unitNo, household, seat, dueAt, isLate }) => ({
            key: id,
            to: `/equipment/${itemId}/loans/${id}`,
            text: words.unit(item, unitNo),
            note: [words.seatName(household, seat), words.by(format.instant(dueAt)), isLate ? words.late : '']
              .filter(Boolean)
              .join('; '),
          }))}
        />
      )}
    </>
  );
}

/** Who may act for which household; the coordinator sees it, who may end it. */
export function HelpersPart({ page: { helpers } }: OfPage) {
  const words = useHandoverText();
  const { format } = useHouse();
  if (helpers === null) return null;
  return (
    <Part
      title={words.helpers}
      rows={helpers.map(({ id, householdId, household, helper, untilOn }) => ({
        key: id,
        to: `/people/${householdId}`,
        text: words.actsFor(helper, household),
        note: words.by(format.day(untilOn)),
      }))}
    />
  );
}

export function StockPart({ page: { holds, unreached, atRisk } }: OfPage) {
  const words = useHandoverText();
  const { format } = useHouse();
  return (
    <>
      <Part
        title={words.held}
        rows={holds.map(({ id, about, aboutEs, reason, heldAt }) => ({
          key: id,
          to: `/holds/${id}`,
          text: format.language === 'es' ? aboutEs : about,
          note: `${reason}; ${words.since(format.instant(heldAt))}`,
        }))}
      />
      {unreached === null ? null : (
        <Part
          title={words.unreached}
          rows={unreached.map(({ noticeId, about, aboutEs, households, telephoneAt }) => ({
            key: noticeId,
            to: `/notices/${noticeId}/reach`,
            text: format.language === 'es' ? aboutEs : about,
            note: `${words.telephone(households.join(', '))}; ${words.since(format.instant(telephoneAt))}`,
          }))}
        />
      )}
      <section className="stack">
        <h2>{words.atRisk}</h2>
        <p>{words.atRiskSays(format.mass(atRisk.grams))}</p>
        {atRisk.byMonth.length === 0 ? null : (
          <Figures
            rows={atRisk.byMonth.map(({ month, atRiskGrams }) => ({
              name: format.monthOf(month),
              value: format.mass(atRiskGrams),
            }))}
          />
        )}
      </section>
    </>
  );
}

export function GivingPart({ page: { offers, manifests, unaskedPantries } }: OfPage) {
  const words = useHandoverText();
  const { format } = useHouse();
  return (
    <Part
      title={words.giving}
      rows={[
        ...offers.map(({ id, foodEn, foodEs, closesAt }) => ({
          key: id,
          to: `/offers/${id}`,
          text: words.offered(format.language === 'es' ? foodEs : foodEn),
          note: words.by(format.instant(closesAt)),
        })),
        ...manifests.map(({ id, number, pantry, onDay }) => ({
          key: id,
          to: `/giving/manifests/${id}`,
          text: words.out(number, pantry),
          note: format.day(onDay),
        })),
        ...unaskedPantries.map(({ id, name, confirmedOn }) => ({
          key: id,
          to: `/giving/pantries/${id}`,
          text: words.unasked(name),
          note: words.askedOn(format.day(confirmedOn)),
        })),
      ]}
    />
  );
}

/** The rules of a supplier are the terms of its last quote. */
export function SuppliersPart({ page: { suppliers } }: OfPage) {
  const words = useHandoverText();
  const { format } = useHouse();
  const money = (minorUnits: number) => `${format.money(minorUnits)} ${format.currency}`;
  const said = (terms: HandoverPage['suppliers'][number]['terms']): string[] =>
    terms === null
      ? [words.noTerms]
      : [
          words.quote(terms.reference, format.day(terms.validUntil)),
          words.lead(terms.leadDays),
          ...(terms.minimumGoodsMinorUnits > 0
            ? [words.leastMoney(money(terms.minimumGoodsMinorUnits))]
            : []),
          ...(terms.minimumGrams > 0 ? [words.leastMass(format.mass(terms.minimumGrams))] : []),
          ...(terms.freightFreeFromMinorUnits === null
            ? []
            : [words.freeFreight(money(terms.freightFreeFromMinorUnits))]),
        ];
  return (
    <section className="stack">
      <h2>{words.suppliers}</h2>
      {suppliers.length === 0 ? <p className="soft">{words.nothing}</p> : null}
      <ul className="list">
        {suppliers.map(({ id, name, contact, terms }) => (
          <li key={id}>
            <p>
              <b>{name}</b>
              <span className="soft block">{[contact, ...said(terms)].filter(Boolean).join('; ')}</span>
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}
