import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { wholeTyped } from '../equipment/typed.ts';
import { BoughtForm } from './bought-form.tsx';
import { type Supply, suppliesQuery } from './queries.ts';
import { AddSupply, CountSupply } from './shelf-forms.tsx';
import { Spoiling } from './spoiling.tsx';
import { useSuppliesText } from './words.ts';

/** What the store has for packing, and what it cost. */
export function Shelf() {
  const t = useSuppliesText();
  const { storehouse, format, duties } = useHouse();
  const reading = useQuery(suppliesQuery({ storehouse }));
  useTitle(t.toShelf);
  const keeps = ['packing_lead', 'coordinator', 'treasurer'].some((duty) => duties.includes(duty));
  return (
    <Loaded isPage reading={reading}>
      {({ supplies }) => {
        const worth = supplies.reduce((sum, supply) => sum + supply.worthMinorUnits, 0);
        return (
          <>
            <Link className="who" to="/s/$storehouse/packing" params={{ storehouse }}>
              <BackIcon />
              {t.backToDay}
            </Link>
            <h1>{supplies.length === 0 ? t.shelfEmpty : t.shelfStands(format.money(worth))}</h1>
            <Spoiling supplies={supplies} />
            {supplies.length === 0 ? null : <OnHand supplies={supplies} />}
            {keeps && supplies.length > 0 ? (
              <>
                <BuyOne supplies={supplies} />
                <CountSupply supplies={supplies} />
              </>
            ) : null}
            {keeps ? <AddSupply /> : null}
          </>
        );
      }}
    </Loaded>
  );
}

function OnHand({ supplies }: { supplies: readonly Supply[] }) {
  const t = useSuppliesText();
  const { format } = useHouse();
  return (
    <Ledger
      caption={t.toShelf}
      columns={[
        { name: t.supply },
        { name: t.onHand, isNumber: true },
        { name: t.pack, isNumber: true },
        { name: t.worth, isNumber: true },
      ]}
      rows={supplies.map((supply) => ({
        key: supply.id,
        cells: [
          <span key="name">
            {supply.name}
            <span className="soft block">
              {[t.sorts[supply.kind as keyof typeof t.sorts], nameIn(format.language, supply.containerKind)]
                .filter(Boolean)
                .join(', ')}
            </span>
            {supply.useBys.length === 0 ? null : (
              <span className="soft block">
                {t.goodUntil(
                  supply.useBys
                    .map(({ useBy, pieces }) => t.goodPieces(format.day(useBy), format.count(pieces)))
                    .join(', '),
                )}
              </span>
            )}
          </span>,
          format.count(supply.onHandPieces),
          `${format.count(supply.packPieces)}${supply.packMinorUnits === null ? '' : ` · ${format.money(supply.packMinorUnits)}`}`,
          format.money(supply.worthMinorUnits),
        ],
      }))}
    />
  );
}

/** Some packs of one supply came, outside a packing day's list. */
function BuyOne({ supplies }: { supplies: readonly Supply[] }) {
  const t = useSuppliesText();
  const {
    draft: { chosen, packs },
    change,
    reset,
  } = useDraft('supply-came', { chosen: '', packs: '1' });
  const [isGoing, setIsGoing] = useState(false);
  const supply = supplies.find(({ id }) => id === chosen) ?? supplies[0];
  const count = wholeTyped(packs);
  if (!supply) return null;
  const line =
    isGoing && typeof count === 'number' && count > 0
      ? [
          {
            ...{ supplyId: supply.id, supply, packsToBuy: count },
            costMinorUnits: supply.packMinorUnits === null ? null : supply.packMinorUnits * count,
          },
        ]
      : [];
  return (
    <details>
      <summary>{t.buyOne}</summary>
      <div className="stack">
        <Choice
          label={t.which}
          value={supply.id}
          options={supplies.map(({ id, name }) => ({ value: id, name }))}
          onChange={(chosen) => change({ chosen })}
        />
        <Field
          label={t.packsCame}
          inputMode="numeric"
          value={packs}
          problem={isGoing && line.length === 0 ? t.countProblem : undefined}
          onChange={(event) => change({ packs: event.target.value })}
        />
        {line.length === 0 ? (
          <button type="button" className="btn" onClick={() => setIsGoing(true)}>
            {t.next}
          </button>
        ) : null}
        <BoughtForm
          key={`${supply.id} ${packs}`}
          name={`bought.${supply.id}.${packs}`}
          lines={line}
          onWritten={() => {
            reset();
            setIsGoing(false);
          }}
        />
      </div>
    </details>
  );
}
