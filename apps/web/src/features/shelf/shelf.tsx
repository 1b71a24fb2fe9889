import { isCode, readCode, spellCode } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { useText } from '../../text/taste.ts';
import { Check, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { NextStep } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import { useEatFirstText } from '../rotation/eat-first-words.ts';
import { ScanMark } from '../scan/scan-mark.tsx';
import { ownDoubtsQuery } from '../seam/queries.ts';
import { ShelfPicture } from './picture.tsx';
import { containersQuery, kindsQuery, type OwnBag, ownBagsQuery, type Shelved } from './queries.ts';
import { useShelfText } from './words.ts';
import './shelf.css';

const PAPERS = [
  { kind: 'shelf-list', path: 'shelf/papers/list' },
  { kind: 'eat-first-list', path: 'shelf/papers/eat-first' },
];

/** What stands at home, as a picture and as a list, and what still waits to be packed. */
export function Shelf() {
  const t = useText();
  const words = useShelfText();
  const { household } = useHouse();
  useTitle(words.title);
  return household === null ? <h1>{t.noHousehold}</h1> : <OwnShelf />;
}

/** A failed seal of one's own comes before all else on the shelf. */
function InDoubt() {
  const words = useShelfText();
  const { storehouse } = useHouse();
  const doubts = useQuery(ownDoubtsQuery({ storehouse })).data?.doubts ?? [];
  const open = doubts.filter(({ newCode }) => newCode === null).length;
  if (doubts.length === 0) return null;
  return (
    <div className="said watch-said">
      <Link to="/s/$storehouse/shelf/doubts" params={{ storehouse }}>
        {words.inDoubt(open)}
      </Link>
    </div>
  );
}

function OwnShelf() {
  const words = useShelfText();
  const { storehouse, format } = useHouse();
  const containers = useQuery(containersQuery({ storehouse }));
  const kinds = useQuery(kindsQuery({ storehouse }));
  const bags = useQuery(ownBagsQuery({ storehouse }));
  return (
    <Loaded isPage reading={joined(containers, joined(kinds, bags))}>
      {([all, [{ containerKinds }, { bags: own }]]) => {
        const full = all.filter(({ grams }) => grams > 0);
        const grams = full.reduce((sum, container) => sum + container.grams, 0);
        return (
          <>
            <h1>{full.length === 0 ? words.empty : words.stands(format.mass(grams), full.length)}</h1>
            {full.length === 0 ? <p>{words.emptyWords}</p> : null}
            <InDoubt />
            <InBags bags={own} />
            <div className="actions">
              <Link className="btn" to="/s/$storehouse/shelf/record" params={{ storehouse }}>
                {words.record}
              </Link>
              {full.length === 0 ? null : (
                <Link className="btn" to="/s/$storehouse/rotation" params={{ storehouse }}>
                  {words.eatNext}
                </Link>
              )}
            </div>
            {full.length === 0 ? null : <ShelfPicture containers={full} kinds={containerKinds} />}
            <MoreToDo isEmpty={full.length === 0} />
            {full.length === 0 ? null : <PaperLinks papers={PAPERS} />}
            {all.length === 0 ? null : <ContainerList containers={all} />}
          </>
        );
      }}
    </Loaded>
  );
}

/** What is done on some days only stands behind the shelf itself, so that a phone shows the food first. */
function MoreToDo({ isEmpty }: { isEmpty: boolean }) {
  const words = useShelfText();
  const { storehouse } = useHouse();
  return (
    <div className="actions">
      <Link className="btn" to="/s/$storehouse/intakes" params={{ storehouse }}>
        {words.takeIn}
      </Link>
      {isEmpty ? null : (
        <Link className="btn" to="/s/$storehouse/shelf/labels" params={{ storehouse }}>
          {words.toLabels}
        </Link>
      )}
      <Link className="btn" to="/s/$storehouse/shelf/ways" params={{ storehouse }}>
        {words.waysToKeep}
      </Link>
      <Link className="btn" to="/s/$storehouse/inspections" params={{ storehouse }}>
        {words.inspections}
      </Link>
      <Link className="btn" to="/s/$storehouse/offers" params={{ storehouse }}>
        {words.offers}
      </Link>
      <Link className="btn" to="/s/$storehouse/places" params={{ storehouse }}>
        {words.places}
      </Link>
    </div>
  );
}

function InBags({ bags }: { bags: readonly OwnBag[] }) {
  const words = useShelfText();
  const { storehouse, format } = useHouse();
  if (bags.length === 0) return null;
  const grams = bags.reduce((sum, bag) => sum + bag.grams, 0);
  return (
    <NextStep>
      <p>{words.inBags(format.mass(grams), bags.length)}</p>
      <Link className="btn go" to="/s/$storehouse/shelf/pack" params={{ storehouse }}>
        {words.packIt}
      </Link>
    </NextStep>
  );
}

/** Whoever types a code that fits its check means that one container. */
function isWanted(container: Shelved, wanted: string): boolean {
  const code = readCode(wanted);
  if (code !== undefined) return container.code === code;
  const { food, kind } = container;
  return `${food.nameEn} ${food.nameEs} ${kind.nameEn} ${kind.nameEs} ${container.code}`
    .toLowerCase()
    .includes(wanted.trim().toLowerCase());
}

/** Seven signs of the alphabet, some of them digits, are meant as a code. */
const looksLikeCode = (text: string) =>
  /^[A-Za-z0-9]{7}$/.test(text.replaceAll(/[\s-]/g, '')) && /\d/.test(text);

function ContainerList({ containers }: { containers: readonly Shelved[] }) {
  const words = useShelfText();
  const { keeps, unfit } = useEatFirstText();
  const { storehouse, format } = useHouse();
  const [wanted, setWanted] = useState('');
  const [showsEmpty, setShowsEmpty] = useState(false);
  const navigate = useNavigate();
  const shown = containers.filter(
    (container) => (showsEmpty || container.grams > 0) && isWanted(container, wanted),
  );
  const isMisread = looksLikeCode(wanted) && readCode(wanted) === undefined;
  const open = (scanned: string) => {
    const own = containers.find(({ code }) => code === scanned);
    if (own)
      void navigate({ to: '/s/$storehouse/shelf/$container', params: { storehouse, container: own.id } });
    else setWanted(spellCode(scanned));
  };
  return (
    <section className="stack">
      <h2>{words.allContainers}</h2>
      <ScanMark onCode={open} />
      <Field
        label={words.find}
        hint={words.findHint}
        type="search"
        value={wanted}
        onChange={(event) => setWanted(event.target.value)}
        problem={isMisread ? words.codeWrong : undefined}
      />
      {containers.some(({ grams }) => grams === 0) ? (
        <Check label={words.showEmpty} isOn={showsEmpty} onChange={setShowsEmpty} />
      ) : null}
      {shown.length === 0 && !isMisread ? <p role="status">{words.nothingFound}</p> : null}
      <ul className="list">
        {shown.map(({ id, code, food, kind, grams, keeping, place }) => (
          <li key={id}>
            <Link to="/s/$storehouse/shelf/$container" params={{ storehouse, container: id }}>
              <span>
                <b>{nameIn(format.language, food)}</b>
                <br />
                <span className="soft">
                  {nameIn(format.language, kind)}, {isCode(code) ? spellCode(code) : code}
                </span>
                {grams === 0 || keeping === null ? null : (
                  <span className="soft block">
                    {[
                      place?.name ?? words.nowhere,
                      keeping.isUnfit ? unfit : keeps(keeping.likelyDays, keeping.pastDays),
                    ].join(' · ')}
                  </span>
                )}
              </span>
              <span>{grams === 0 ? words.isEmpty : format.mass(grams)}</span>
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
