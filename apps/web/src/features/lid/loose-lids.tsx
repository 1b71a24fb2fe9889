import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import type { Whose } from '../place/queries.ts';
import { nameOf } from './name-of.ts';
import type { Lid } from './queries.ts';
import type { Lids } from './use-lids.ts';
import { useLidText } from './words.ts';

/** What did not hold: what to do with it, and that it was closed again. */
export function LooseLids({
  of,
  loose,
  closing,
}: {
  of: Whose;
  loose: readonly Lid[];
  closing: Lids['closing'];
}) {
  const t = useLidText();
  const { format } = useHouse();
  const close = (lids: readonly Lid[]) =>
    closing.mutate({ of, containerIds: lids.map(({ id }) => id), note: '' });
  return (
    <section className="stack">
      <h2>{t.loose}</h2>
      <p>{t.todo}</p>
      <ul className="list">
        {loose.map((lid) => (
          <li key={lid.id}>
            <span>
              <b className="wrong">{nameOf(lid, { t, format, isStore: of === 'common' })}</b>{' '}
              <span className="code">{lid.spelled}</span>
              <span className="soft block">
                {lid.lastSaid === null ? '' : format.instant(lid.lastSaid.at)}
              </span>
            </span>
            <button
              type="button"
              className="btn"
              aria-label={`${t.closeAgain}: ${lid.spelled}`}
              disabled={closing.isPending}
              onClick={() => close([lid])}
            >
              {t.closeAgain}
            </button>
          </li>
        ))}
      </ul>
      {loose.length < 2 ? null : (
        <button type="button" className="btn" disabled={closing.isPending} onClick={() => close(loose)}>
          {t.closeAllAgain(loose.length)}
        </button>
      )}
      <ProblemSaid error={closing.error} />
    </section>
  );
}
