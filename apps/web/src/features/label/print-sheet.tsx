import { useState } from 'react';
import { Choice } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { NextStep } from '../../ui/pieces.tsx';
import { labelsOn, SHEET_NAMES, SHEETS, type SheetName, sheetsFor } from './sheets.ts';
import { useLabelText } from './words.ts';
import './label.css';

const MOST = 500;
const PLACE = 'sheafbook.labels';

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

type PrintProps = {
  /** How many labels that comes to. */
  count: number;
  /** Where the sheet is drawn, inside the storehouse. */
  path: string;
  /** Which of them, where it is not all. */
  codes?: readonly string[];
};

/** On which sheet of stickers labels are printed, and which sticker is still there. */
export function PrintSheet({ count, path, codes }: PrintProps) {
  const words = useLabelText();
  const { storehouse, format } = useHouse();
  const { sheet, choose } = useSheet();
  const [start, setStart] = useState(1);
  const query = new URLSearchParams({
    ...{ sheet, start: String(start), language: format.language, unit: format.massUnit },
    ...(codes === undefined ? {} : { codes: codes.join(',') }),
  });
  return (
    <>
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
          {count > MOST ? words.tooMany(MOST) : words.comesTo(count, sheetsFor(count, sheet, start))}
        </p>
        {count > 0 && count <= MOST ? (
          <a
            className="btn go"
            href={`/api/storehouses/${storehouse}/${path}?${query}`}
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
