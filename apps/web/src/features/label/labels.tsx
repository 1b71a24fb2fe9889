import { spellCode } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { Check } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { useTitle } from '../../ui/use-title.ts';
import { containersQuery, type Shelved } from '../shelf/queries.ts';
import { PrintSheet } from './print-sheet.tsx';
import { useLabelText } from './words.ts';

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

function LabelForm({ containers }: { containers: readonly Shelved[] }) {
  const words = useLabelText();
  const [chosen, setChosen] = useState<ReadonlySet<string>>(() => new Set());
  if (containers.length === 0) return <p>{words.empty}</p>;
  const codes = containers.filter(({ code }) => chosen.has(code)).map(({ code }) => code);
  return (
    <>
      <ChooseContainers containers={containers} chosen={chosen} onChange={setChosen} />
      <PrintSheet count={codes.length} path="labels/paper" codes={codes} />
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
            nameIn(format.language, food),
            nameIn(format.language, kind),
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
