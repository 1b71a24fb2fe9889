import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger, State } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { type Treatment, treatmentsQuery } from './queries.ts';
import { sayWait } from './say-wait.ts';
import { useTreatmentText } from './words.ts';
import './treatment.css';

/** What can be done to food as it is packed, and what should not be. */
export function Treatments() {
  const words = useTreatmentText();
  const { storehouse, format } = useHouse();
  useTitle(words.title);
  const book = useQuery(treatmentsQuery({ storehouse }));
  return (
    <>
      <Link className="who" to="/s/$storehouse/containers" params={{ storehouse }}>
        <BackIcon />
        {words.toKinds}
      </Link>
      <Loaded isPage reading={book}>
        {({ treatments, notToDo }) => (
          <>
            <h1>{words.stands(treatments.length)}</h1>
            <p>{words.opening}</p>
            {treatments.map((treatment) => (
              <OneTreatment key={treatment.code} treatment={treatment} />
            ))}
            <section>
              <h2>{words.notToDo}</h2>
              <Ledger
                caption={words.notToDo}
                columns={[{ name: words.idea }, { name: words.why }, { name: words.source }]}
                rows={notToDo.map(({ code, idea, why, source }) => ({
                  key: code,
                  cells: [idea[format.language], why[format.language], source],
                }))}
              />
            </section>
          </>
        )}
      </Loaded>
    </>
  );
}

function OneTreatment({ treatment }: { treatment: Treatment }) {
  const words = useTreatmentText();
  const { format } = useHouse();
  const { language } = format;
  const { names, steps, cautions, mostGrams, source } = treatment;
  return (
    <section className="stack">
      <h2>{names[language]}</h2>
      {mostGrams === null ? null : <p>{words.most(format.mass(mostGrams))}</p>}
      {cautions.map(({ code, say, deferTo }) => (
        <p key={code} className="said watch-said">
          {say[language]} <span className="soft">{words.deferTo(deferTo[language])}</span>
        </p>
      ))}
      {steps.length === 0 ? (
        <p>{words.noSteps}</p>
      ) : (
        <ol className="steps">
          {steps.map(({ say, waitMinutes }) => (
            <li key={say.en}>
              {say[language]} {waitMinutes === 0 ? null : <b>{words.wait(sayWait(waitMinutes, words))}</b>}
            </li>
          ))}
        </ol>
      )}
      <Fits title={words.containers} fits={treatment.containers} />
      <Fits title={words.foods} fits={treatment.foods} />
      <p className="soft">{source}</p>
    </section>
  );
}

type Fit = Treatment['foods'][number] | Treatment['containers'][number];

/** What it fits in one line; what it does not, each with its reason, behind a door. */
function Fits({ title, fits }: { title: string; fits: readonly Fit[] }) {
  const words = useTreatmentText();
  const { format } = useHouse();
  const nameOf = (fit: Fit) => nameIn(format.language, fit);
  const well = fits.filter(({ verdict }) => verdict !== 'refused');
  const not = fits.filter(({ verdict }) => verdict === 'refused');
  const tested = well.filter((fit) => 'needsMoistureTest' in fit && fit.needsMoistureTest);
  return (
    <div>
      <p>
        <State
          kind={well.length === 0 ? 'wrong' : 'well'}
          word={words.fits(title, well.length, fits.length)}
        />
      </p>
      <details>
        <summary>{words.which(title)}</summary>
        <p>{well.map(nameOf).join(', ')}</p>
        {tested.length === 0 ? null : <p>{words.testFirst(tested.map(nameOf).join(', '))}</p>}
        {not.length === 0 ? null : (
          <ul>
            {not.map((fit) => (
              <li key={fit.id}>
                {`${nameOf(fit)}: ${fit.why.map(({ say }) => say[format.language]).join(' ')}`}
              </li>
            ))}
          </ul>
        )}
      </details>
    </div>
  );
}
