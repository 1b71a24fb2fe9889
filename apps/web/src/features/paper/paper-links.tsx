import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useTaste } from '../../text/taste.ts';
import { Check, Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { usePaperText } from './words.ts';

/** A paper and its address inside the storehouse, such as `buys/…/papers/order?order=3`. */
type PaperLink = {
  readonly kind: string;
  readonly path: string;
  /** What tells it from another of its kind: an order's number, a food. */
  readonly of?: string | undefined;
};

type Wish = {
  readonly size: 'a4' | 'letter';
  readonly language: 'en' | 'es';
  readonly unit: 'lb' | 'kg';
  readonly large: boolean;
};
const PLACE = 'sheafbook.paper';

/** How this person wants paper: kept from one time to the next, since a printer has one size of sheet. */
function usePaperWish() {
  const { language } = useTaste();
  const { format } = useHouse();
  const [changed, setChanged] = useState(
    () => JSON.parse(localStorage.getItem(PLACE) ?? '{}') as Partial<Wish>,
  );
  const change = (next: Partial<Wish>) => {
    const all = { ...changed, ...next };
    localStorage.setItem(PLACE, JSON.stringify(all));
    setChanged(all);
  };
  // Where pounds are weighed, sheets are Letter: a guess that one tap puts right for good.
  const size = format.massUnit === 'lb' ? 'letter' : 'a4';
  return { wish: { size, language, unit: format.massUnit, large: false, ...changed } satisfies Wish, change };
}

/** The papers that a page has, each a link to its PDF, with the choice of sheet, language, unit and print. */
export function PaperLinks({ papers }: { papers: readonly PaperLink[] }) {
  const words = usePaperText();
  const { storehouse } = useHouse();
  const { wish, change } = usePaperWish();
  if (papers.length === 0) return null;
  const query = new URLSearchParams({ ...wish, large: String(wish.large) });
  const addressOf = ({ path }: PaperLink) =>
    `/api/storehouses/${storehouse}/${path}${path.includes('?') ? '&' : '?'}${query}`;
  const options = (names: Readonly<Record<string, string>>) =>
    Object.entries(names).map(([value, name]) => ({ value, name }));
  return (
    <details className="no-print">
      <summary>{words.paper}</summary>
      <div className="stack">
        <p className="soft">{words.papersWords}</p>
        <Choice
          label={words.size}
          value={wish.size}
          options={options(words.sizes)}
          onChange={(size) => change({ size: size === 'letter' ? 'letter' : 'a4' })}
        />
        <Choice
          label={words.language}
          value={wish.language}
          options={options(words.languages)}
          onChange={(language) => change({ language: language === 'es' ? 'es' : 'en' })}
        />
        <Choice
          label={words.unitFirst}
          value={wish.unit}
          options={options(words.units)}
          onChange={(unit) => change({ unit: unit === 'kg' ? 'kg' : 'lb' })}
        />
        <Check label={words.large} isOn={wish.large} onChange={(large) => change({ large })} />
        <div className="actions">
          {papers.map((paper) => (
            <a key={paper.path} className="btn" href={addressOf(paper)} target="_blank" rel="noreferrer">
              {[words.kinds[paper.kind] ?? paper.kind, paper.of].filter(Boolean).join(' ')}
            </a>
          ))}
        </div>
        <FollowCode />
      </div>
    </details>
  );
}

/** For a paper in the hand and no camera: its code, typed. */
function FollowCode() {
  const words = usePaperText();
  const { storehouse } = useHouse();
  const navigate = useNavigate();
  const [text, setText] = useState('');
  const code = text.replaceAll(/[\s-]/g, '').toUpperCase();
  return (
    <form
      className="pair"
      onSubmit={(event) => {
        event.preventDefault();
        if (code !== '') navigate({ to: '/s/$storehouse/papers/$code', params: { storehouse, code } });
      }}
    >
      <Field
        label={words.codeOfPaper}
        autoComplete="off"
        autoCapitalize="characters"
        value={text}
        onChange={(event) => setText(event.target.value)}
      />
      <button type="submit" className="btn">
        {words.follow}
      </button>
    </form>
  );
}

/** The papers of a buy that stand at its stage, by what this person may read. */
export function BuyPapers({ buy }: { buy: { readonly id: string; readonly stage: string } }) {
  const { household, duties } = useHouse();
  const of = (kind: string, query = '') => ({ kind, path: `buys/${buy.id}/papers/${kind}${query}` });
  const isOrdered = ['ordered', 'landed', 'shared-out', 'closed'].includes(buy.stage);
  const seesPledges = ['coordinator', 'treasurer', 'packing_lead', 'reviewer'].some((duty) =>
    duties.includes(duty),
  );
  const papers = [
    of('buy-sheet'),
    ...(household === null ? [] : [of('pledge-slip')]),
    ...(buy.stage === 'gathering'
      ? [{ ...of('pledge-slip', '?blank=true'), kind: 'pledge-slip-blank' }]
      : []),
    ...(seesPledges ? [of('quote-comparison')] : []),
    ...(isOrdered ? [of('landing-sheet')] : []),
  ];
  return <PaperLinks papers={papers} />;
}
