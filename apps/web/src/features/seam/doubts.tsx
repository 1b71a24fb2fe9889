import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { type OwnDoubt, ownDoubtsQuery } from './queries.ts';
import { useSeamText } from './words.ts';
import './seam.css';

type Advice = 'wait' | 're-can' | 'eat-now' | 'discard' | 'moved';
const ORDER: readonly Advice[] = ['wait', 're-can', 'eat-now', 'discard', 'moved'];

const adviceOf = ({ disposition, newCode }: OwnDoubt): Advice => {
  if (newCode !== null) return 'moved';
  return disposition === 're-can' || disposition === 'eat-now' || disposition === 'discard'
    ? disposition
    : 'wait';
};

/** A household's own containers that a seal put in doubt: which, and what to do with each. */
export function Doubts() {
  const t = useSeamText();
  const { storehouse } = useHouse();
  useTitle(t.ownDoubts);
  const reading = useQuery(ownDoubtsQuery({ storehouse }));
  return (
    <Loaded isPage reading={reading}>
      {({ doubts }) => {
        const open = doubts.filter((one) => adviceOf(one) !== 'moved');
        return (
          <>
            <h1>{t.ownDoubtsTitle(open.length)}</h1>
            {open.length > 0 ? <p className="said watch-said">{t.foodCaution}</p> : null}
            {ORDER.map((advice) => (
              <Group key={advice} advice={advice} doubts={doubts.filter((one) => adviceOf(one) === advice)} />
            ))}
            <div className="actions">
              <Link className="btn" to="/s/$storehouse/shelf" params={{ storehouse }}>
                {t.toShelf}
              </Link>
            </div>
          </>
        );
      }}
    </Loaded>
  );
}

function Group({ advice, doubts }: { advice: Advice; doubts: readonly OwnDoubt[] }) {
  const t = useSeamText();
  const { format } = useHouse();
  if (doubts.length === 0) return null;
  const mark = { wait: 'suspect', 're-can': 'bad', 'eat-now': 'opened', discard: 'bad', moved: 'cleared' }[
    advice
  ];
  return (
    <section className="stack">
      <h2>{t.advice[advice]}</h2>
      <p>{t.adviceSays[advice]}</p>
      <div className="strip" aria-hidden="true">
        {doubts.map(({ containerId, serial }) => (
          <span key={containerId} className={`serial ${mark}`}>
            {serial}
          </span>
        ))}
      </div>
      <Ledger
        caption={t.advice[advice]}
        columns={[{ name: t.ownCode }, { name: t.ownFood }, { name: t.whyDoubted }]}
        rows={doubts.map(({ containerId, spelled, newCode, food, grams, note, session, serial }) => ({
          key: containerId,
          cells: [
            newCode === null ? spelled : t.movedTo(spelled, newCode),
            `${nameIn(format.language, food)}${grams > 0 ? `, ${format.mass(grams)}` : ''}`,
            note === '' ? t.numberAt(serial, session.name) : note,
          ],
        }))}
      />
    </section>
  );
}
