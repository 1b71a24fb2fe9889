import { spellCode } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { Check, Choice } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { NextStep } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { containersQuery, type Shelved } from '../shelf/queries.ts';
import { labelsOn, SHEET_NAMES, SHEETS, type SheetName, sheetsFor } from './sheets.ts';
import { useLabelText } from './words.ts';
import './label.css';

const MOST = 500;
const PLACE = 'sheafbook.labels';

/** Which containers get a label, on which sheet of stickers, and which sticker is still there. */
export function Labels() {
  const words = useLabelText();
  const { storehouse } = useHouse();
  useTitle(words.title);
  const containers = useQuery(containersQuery({ storehouse }));
  return (
    <>
      <Link className="who" to="/s/$storehouse/shelf" params={{ storehouse }}>
        <BackIcon />
        {words.toShelf}
      </Link>
      <h1>{words.title}</h1>
      <Loaded reading={containers}>
        {(all) => <LabelForm containers={all.filter(({ grams }) => grams > 0)} />}
      </Loaded>
    </>
  );
}

/** A printer has one kind of sheet in it, so the last one chosen is the next one meant. */
function useSheet() {
  const { format } = useHouse();
  const [sheet, setSheet] = useState<SheetName>(() => {
    const kept = SHEET_NAMES.find((name) => name === localStorage.getItem(PLACE));
    return kept ?? (format.massUnit === 'lb' ? 'letter-30' : 'a4-21');
  });
  const choose = (next: SheetName) => {
    localStorage.setItem(PLACE, next);
    setSheet(next);
  };
  return { sheet, choose };
}

function LabelForm({ containers }: { containers: readonly Shelved[] }) {
  const words = useLabelText();
  const { storehouse, format } = useHouse();
  const { sheet, choose } = useSheet();
  const [start, setStart] = useState(1);
  const [chosen, setChosen] = useState<ReadonlySet<string>>(() => new Set());
  if (containers.length === 0) return <p>{words.empty}</p>;
  const codes = containers.filter(({ code }) => chosen.has(code)).map(({ code }) => code);
  const query = new URLSearchParams({
    ...{ sheet, start: String(start), language: format.language, unit: format.massUnit },
    codes: codes.join(','),
  });
  const isFine = codes.length > 0 && codes.length <= MOST;
  return (
    <>
      <ChooseContainers containers={containers} chosen={chosen} onChange={setChosen} />
      <Choice
        label={words.sheet}
        value={sheet}
        options={SHEET_NAMES.map((name) => ({ value: name, name: words.sheets[name] }))}
        onChange={(name) => {
          choose(SHEET_NAMES.find((known) => known === name) ?? sheet);
          setStart(1);
        }}
      />
      <StartSticker sheet={sheet} start={start} onChange={setStart} />
      <NextStep>
        <p role="status">
          {codes.length > MOST
            ? words.tooMany(MOST)
            : words.comesTo(codes.length, sheetsFor(codes.length, sheet, start))}
        </p>
        {isFine ? (
          <a
            className="btn go"
            href={`/api/storehouses/${storehouse}/labels/paper?${query}`}
            target="_blank"
            rel="noreferrer"
          >
            {words.print}
          </a>
        ) : null}
        <p className="soft">{words.scaleWords}</p>
      </NextStep>
    </>
  );
}

type Choosing = {
  containers: readonly Shelved[];
  chosen: ReadonlySet<string>;
  onChange: (chosen: ReadonlySet<string>) => void;
};

function ChooseContainers({ containers, chosen, onChange }: Choosing) {
  const words = useLabelText();
  const { format } = useHouse();
  const isSpanish = format.language === 'es';
  const toggle = (code: string, isOn: boolean) => {
    const next = new Set(chosen);
    if (isOn) next.add(code);
    else next.delete(code);
    onChange(next);
  };
  return (
    <fieldset className="stack">
      <legend>{words.which}</legend>
      <div className="actions">
        <button
          type="button"
          className="btn"
          onClick={() => onChange(new Set(containers.map(({ code }) => code)))}
        >
          {words.all(containers.length)}
        </button>
        <button type="button" className="btn quiet" onClick={() => onChange(new Set())}>
          {words.none}
        </button>
      </div>
      {containers.map(({ id, code, food, kind, grams }) => (
        <Check
          key={id}
          label={words.one(
            isSpanish ? food.nameEs : food.nameEn,
            isSpanish ? kind.nameEs : kind.nameEn,
            format.mass(grams),
            spellCode(code),
          )}
          isOn={chosen.has(code)}
          onChange={(isOn) => toggle(code, isOn)}
        />
      ))}
    </fieldset>
  );
}

/** The sheet as it lies there: a tap says which sticker is the first that is left. */
function StartSticker({
  sheet,
  start,
  onChange,
}: {
  sheet: SheetName;
  start: number;
  onChange: (start: number) => void;
}) {
  const words = useLabelText();
  return (
    <fieldset className="stack">
      <legend>{words.start(start)}</legend>
      <div className="stickers" style={{ gridTemplateColumns: `repeat(${SHEETS[sheet].columns}, 1fr)` }}>
        {Array.from({ length: labelsOn(sheet) }, (_, at) => at + 1).map((number) => (
          <button
            key={number}
            type="button"
            className={number < start ? 'btn quiet taken' : 'btn quiet'}
            aria-pressed={number === start}
            aria-label={words.sticker(number)}
            onClick={() => onChange(number)}
          >
            {number}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
