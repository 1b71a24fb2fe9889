import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { EatNext } from './eat-next.tsx';
import { FoundUnfit } from './found-unfit.tsx';
import { InKitchen } from './in-kitchen.tsx';
import { kitchenQuery, type Rotation, rotationQuery, type WhatIf } from './queries.ts';
import { RiskHills } from './risk-hills.tsx';
import { useRotationText } from './words.ts';
import './rotation.css';

/** What to eat next, and what would not be eaten in time if nothing changes. */
export function RotationPage() {
  const t = useText();
  const words = useRotationText();
  const { household } = useHouse();
  useTitle(words.title);
  return household === null ? <h1>{t.noHousehold}</h1> : <OwnRotation />;
}

function OwnRotation() {
  const words = useRotationText();
  const { storehouse, format } = useHouse();
  const [whatIf, setWhatIf] = useState<WhatIf>('none');
  const [isWhole, setIsWhole] = useState(false);
  const rotation = useQuery(rotationQuery({ storehouse }, { whatIf, queue: isWhole ? 'whole' : 'first' }));
  const kitchen = useQuery(kitchenQuery({ storehouse }));
  return (
    <>
      <Link className="who" to="/s/$storehouse/shelf" params={{ storehouse }}>
        <BackIcon />
        {words.shelf}
      </Link>
      <Loaded isPage reading={joined(rotation, kitchen)}>
        {([read, { lots, takes }]) => (
          <>
            <h1>
              {read.queued === 0
                ? words.nothing
                : read.risk.grams === 0
                  ? words.inTime
                  : words.atRisk(format.mass(read.risk.grams))}
            </h1>
            <div className="cols">
              <div className="stack">
                <EatNext
                  {...{ queued: read.queued, queue: read.queue, leaveShut: read.leaveShut, isWhole }}
                  onWhole={() => setIsWhole(true)}
                />
                <FoundUnfit unfit={read.unfit} of="home" />
                <InKitchen lots={lots} takes={takes} />
              </div>
              <div className="stack">
                <RiskHills rotation={read} whatIf={whatIf} onWhatIf={setWhatIf} />
                <Paces foods={read.foods} />
              </div>
            </div>
            <p className="soft">{words.howReckoned}</p>
          </>
        )}
      </Loaded>
    </>
  );
}

/** What a month eats of each food, and what it should. */
function Paces({ foods }: { foods: Rotation['foods'] }) {
  const words = useRotationText();
  const { format } = useHouse();
  if (foods.length === 0) return null;
  return (
    <section>
      <h2>{words.paceTitle}</h2>
      <p>{words.paceWords}</p>
      <Ledger
        caption={words.paceTitle}
        columns={[
          { name: words.food },
          { name: words.eatenAMonth, isNumber: true },
          { name: words.steadyAMonth, isNumber: true },
        ]}
        rows={foods.map(({ food, eatenAMonthGrams, steadyAMonthGrams, pastGrams }) => ({
          key: food?.code ?? '',
          cells: [
            <>
              {nameIn(format.language, food)}
              {pastGrams > 0 ? <span className="soft"> {words.past(format.mass(pastGrams))}</span> : null}
            </>,
            format.mass(eatenAMonthGrams),
            format.mass(steadyAMonthGrams),
          ],
        }))}
      />
    </section>
  );
}
