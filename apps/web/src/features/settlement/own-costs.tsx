import { useQuery } from '@tanstack/react-query';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { type Named, nameIn } from '../../ui/name-in.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { type OwnCostsBody, ownCostsQuery } from './queries.ts';
import { useSettlementText } from './words.ts';

/** What the day costs one's own household and why, and what to bring to it. */
export function OwnCosts({ session }: { session: string }) {
  const { storehouse } = useHouse();
  const reading = useQuery(ownCostsQuery({ storehouse, session }));
  return (
    <Loaded reading={reading}>
      {(body) => (
        <>
          {body.costs.length === 0 ? null : <Costs body={body} />}
          {body.isEstimate && body.bring.length > 0 ? <Bring body={body} /> : null}
        </>
      )}
    </Loaded>
  );
}

export const useCostName = () => {
  const t = useSettlementText();
  return ({ kind, what }: { kind: string; what: string }) =>
    t.kinds[kind as keyof typeof t.kinds]?.(what) ?? what;
};

function Costs({ body }: { body: OwnCostsBody }) {
  const t = useSettlementText();
  const { format } = useHouse();
  const nameOf = useCostName();
  const { totalMinorUnits, isEstimate } = body;
  const sum = totalMinorUnits === null ? null : format.money(totalMinorUnits);
  const title = sum === null ? t.ownUnknown : isEstimate ? t.ownAbout(sum) : t.ownCost(sum);
  return (
    <section className="stack">
      <h2>{title}</h2>
      <Ledger
        caption={t.costs}
        columns={[{ name: t.cost }, { name: t.sum, isNumber: true }]}
        rows={[
          ...body.costs.map((cost, at) => ({
            key: `${at} ${cost.kind}`,
            cells: [
              <span key="what">
                {nameOf(cost)}
                <span className="soft block">
                  {cost.allMinorUnits === null || cost.allContainers === null
                    ? t.forContainers(cost.containers)
                    : t.partOf(
                        cost.containers,
                        format.count(cost.allContainers),
                        format.money(cost.allMinorUnits),
                      )}
                </span>
              </span>,
              cost.minorUnits === null ? t.unknownPrice : format.money(cost.minorUnits),
            ],
          })),
          ...(sum === null ? [] : [{ key: 'sum', isSum: true, cells: [t.all, sum] }]),
        ]}
      />
      <p className="soft">{isEstimate ? t.aboutSays : `${t.onStatement} ${t.tie}`}</p>
    </section>
  );
}

function Bring({ body }: { body: OwnCostsBody }) {
  const t = useSettlementText();
  const { format } = useHouse();
  const nameOf = (of: Named) => nameIn(format.language, of);
  return (
    <section className="stack">
      <h2>{t.bring}</h2>
      <ul>
        {body.bring.map(({ food, grams, containers }, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two wishes may be of one food
          <li key={at}>
            {t.bringFood(nameOf(food), format.mass(grams))}
            {containers ? (
              <span className="block">{t.bringContainers(containers.count, nameOf(containers))}</span>
            ) : null}
          </li>
        ))}
        <li>{t.bringSelf}</li>
      </ul>
    </section>
  );
}
