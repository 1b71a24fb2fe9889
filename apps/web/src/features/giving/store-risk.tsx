import { spellCode } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { FoundUnfit } from '../rotation/found-unfit.tsx';
import { type Rotation, storeRotationQuery, type WhatIf } from '../rotation/queries.ts';
import { RiskHills } from '../rotation/risk-hills.tsx';
import { gives, seesStoreRisk } from './queries.ts';
import { useGivingText } from './words.ts';
import '../rotation/rotation.css';

/** What of common stock passes its day if nobody takes it, month by month, with a what-if; and what to give first. */
export function StoreRisk() {
  const words = useGivingText();
  const house = useHouse();
  const { storehouse } = house;
  useTitle(words.riskTitle);
  return (
    <>
      <Link className="who" to="/s/$storehouse/giving" params={{ storehouse }}>
        <BackIcon />
        {words.title}
      </Link>
      {seesStoreRisk(house) ? <Risk /> : <h1>{words.riskNotYours}</h1>}
    </>
  );
}

function Risk() {
  const words = useGivingText();
  const house = useHouse();
  const { storehouse, format } = house;
  const [whatIf, setWhatIf] = useState<WhatIf>('none');
  return (
    <Loaded isPage reading={useQuery(storeRotationQuery({ storehouse }, whatIf))}>
      {(rotation) => (
        <>
          <h1>
            {rotation.risk.grams === 0 ? words.riskNone : words.riskSays(format.mass(rotation.risk.grams))}
          </h1>
          <RiskHills rotation={rotation} whatIf={whatIf} onWhatIf={setWhatIf} isStore />
          <First queue={rotation.queue.filter(({ atRiskGrams }) => atRiskGrams > 0)} />
          <FoundUnfit unfit={rotation.unfit} of={gives(house) ? 'store' : 'store-unopened'} />
        </>
      )}
    </Loaded>
  );
}

function First({ queue }: { queue: Rotation['queue'] }) {
  const words = useGivingText();
  const { format } = useHouse();
  if (queue.length === 0) return null;
  return (
    <section>
      <h2>{words.riskFirst}</h2>
      <Ledger
        caption={words.riskFirst}
        columns={[{ name: words.container }, { name: words.mass, isNumber: true }, { name: words.eatFirst }]}
        rows={queue.map((row) => ({
          key: row.container?.id ?? row.lotId,
          cells: [
            <span key="what">
              {row.container ? spellCode(row.container.code) : null}
              <span className="soft block">{nameIn(format.language, row.food)}</span>
            </span>,
            format.mass(row.atRiskGrams),
            row.eatFirstOn === null ? '' : format.day(row.eatFirstOn),
          ],
        }))}
      />
    </section>
  );
}
