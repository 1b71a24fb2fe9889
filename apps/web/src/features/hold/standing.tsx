import { useQuery } from '@tanstack/react-query';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { PaperLinks } from '../paper/paper-links.tsx';
import { DestroyForm } from './own-part.tsx';
import { type Hold, type Standing, standingQuery } from './queries.ts';
import { SlipForm, useSlipWords } from './slip-form.tsx';
import { useHoldText } from './words.ts';

/** Each household that was told, whether it has acknowledged it and what it said; the pantries; and the store's own part. */
export function StandingOf({ hold }: { hold: Hold }) {
  const words = useHoldText();
  const { storehouse } = useHouse();
  const reading = useQuery(standingQuery({ storehouse, hold: hold.id }));
  return (
    <section className="stack">
      <h2>{words.whoTitle}</h2>
      <Loaded reading={reading}>
        {(standing) => (
          <>
            <Households standing={standing} />
            <Pantries standing={standing} />
            {hold.ended === 'released' ? null : (
              <>
                <OnPaper hold={hold} standing={standing} />
                <SlipForm hold={hold} standing={standing} />
              </>
            )}
          </>
        )}
      </Loaded>
      {hold.endedAt === null ? (
        <DestroyForm hold={hold} of="common" says={words.destroyStoreSays} button={words.destroyStore} />
      ) : null}
    </section>
  );
}

function Households({ standing: { households } }: { standing: Standing }) {
  const words = useHoldText();
  const { format } = useHouse();
  const told = households.filter(({ isTold }) => isTold);
  const done = told.filter(({ acknowledgedAt }) => acknowledgedAt !== null);
  const slipWords = useSlipWords();
  const saidBy = (row: Standing['households'][number]) => {
    const said = row.answer === null && row.slip ? '' : saidOnScreen(row);
    return [said, row.slip ? slipWords(row.slip) : ''].filter((part) => part !== '').join('. ');
  };
  const saidOnScreen = ({ answer }: Standing['households'][number]) =>
    answer === null
      ? words.nothingSaid
      : words.answered({
          ...{ some: answer.hasSome, note: answer.note },
          eaten: answer.eatenOn === null ? null : format.day(answer.eatenOn),
          given: answer.givenOn === null ? null : format.day(answer.givenOn),
        });
  return (
    <>
      <p>{words.reached(done.length, told.length)}</p>
      <Ledger
        caption={words.whoTitle}
        columns={[
          { name: words.household },
          { name: words.still, isNumber: true },
          { name: words.acknowledged },
          { name: words.answer },
        ]}
        rows={households.map((row) => ({
          key: row.householdId,
          cells: [
            row.name,
            format.mass(row.grams),
            row.acknowledgedAt !== null
              ? format.instant(row.acknowledgedAt)
              : row.isTold
                ? words.notYet
                : words.notTold,
            saidBy(row),
          ],
        }))}
      />
    </>
  );
}

function Pantries({ standing: { pantries } }: { standing: Standing }) {
  const words = useHoldText();
  const { format } = useHouse();
  const slipWords = useSlipWords();
  if (pantries.length === 0) return null;
  return (
    <>
      <h3>{words.pantries}</h3>
      <ul className="list">
        {pantries.map(({ manifestNo, pantry, onDay, grams, contactDuty, contact, slip }) => (
          <li key={manifestNo}>
            <b>{words.pantry(pantry, manifestNo, format.day(onDay), format.mass(grams))}</b>
            <span className="block">{words.contact(contactDuty, contact)}</span>
            {slip ? <span className="block">{slipWords(slip)}</span> : null}
          </li>
        ))}
      </ul>
    </>
  );
}

/** A notice to be carried to each household that no screen has reached, and to each pantry. */
function OnPaper({ hold, standing: { households, pantries } }: { hold: Hold; standing: Standing }) {
  const words = useHoldText();
  const of = (whom: 'household' | 'pantry', id: string, name: string) => ({
    kind: 'recall-notice',
    path: `holds/${hold.id}/papers/recall-notice?${whom}=${id}`,
    of: name,
  });
  const papers = [
    ...households
      .filter(({ acknowledgedAt }) => acknowledgedAt === null)
      .map(({ householdId, name }) => of('household', householdId, name)),
    ...[...new Map(pantries.map(({ pantryId, pantry }) => [pantryId, pantry]))].map(([id, name]) =>
      of('pantry', id, name),
    ),
  ];
  if (papers.length === 0) return null;
  return (
    <>
      <h3>{words.onPaper}</h3>
      <p>{words.onPaperSays}</p>
      <PaperLinks papers={papers} />
    </>
  );
}
