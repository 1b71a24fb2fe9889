import { useHouse } from '../../ui/house.ts';
import { LooseLink } from '../buy/loose-link.tsx';
import { useHandoverText } from './words.ts';

export type PartRow = {
  readonly key: string;
  readonly to: string;
  readonly text: string;
  readonly note: string;
};

/** A heading and its things, each a link to its page; or that there is nothing. */
export function Part({ title, rows }: { title: string; rows: readonly PartRow[] }) {
  const words = useHandoverText();
  const { storehouse } = useHouse();
  return (
    <section>
      <h2>{title}</h2>
      {rows.length === 0 ? <p className="soft">{words.nothing}</p> : null}
      <ul className="list">
        {rows.map(({ key, to, text, note }) => (
          <li key={key}>
            <LooseLink to={`/s/${storehouse}${to}`}>
              <span>
                <b>{text}</b>
                {note === '' ? null : <span className="soft block">{note}</span>}
              </span>
            </LooseLink>
          </li>
        ))}
      </ul>
    </section>
  );
}
