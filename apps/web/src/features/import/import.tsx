import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { type ChangeEvent, useId, useState } from 'react';
import { api, ask, askOnce } from '../../api/client.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { toBase64 } from '../photo/shrink.ts';
import './import.css';
import { importsQuery, type Trial } from './queries.ts';
import { TakeBack } from './take-back.tsx';
import { TrialTable } from './trial-table.tsx';
import { useImportText } from './words.ts';

const inside = api.storehouses[':storehouse'];

type Wish = {
  files: { name: string; base64: string; leftOut: string[] }[];
  openingOn: string;
  decimalSign?: 'point' | 'comma';
  dayOrder?: 'day-first' | 'month-first';
  encoding?: 'utf-8' | 'windows-1252';
};
type Tried = { readonly wish: Wish; readonly trial: Trial };

/** A group comes from its spreadsheets: choose files, see what each row would do, then bring all of it over or nothing. */
export function Import() {
  const t = useImportText();
  const { duties } = useHouse();
  useTitle(t.title);
  const mayImport = duties.includes('coordinator') || duties.includes('treasurer');
  if (!mayImport) return <h1>{t.notForYou}</h1>;
  return (
    <>
      <h1>{t.title}</h1>
      <p>{t.words}</p>
      <Bring />
      <Templates />
      <BroughtBefore />
    </>
  );
}

function Bring() {
  const t = useImportText();
  const client = useQueryClient();
  const { storehouse, format } = useHouse();
  const [files, setFiles] = useState<readonly File[]>([]);
  const {
    draft: { openingOn, decimalSign, dayOrder, encoding },
    change,
    reset,
  } = useDraft('import', { openingOn: format.today(), decimalSign: '', dayOrder: '', encoding: '' });
  const param = { storehouse };
  const trying = useMutation({
    mutationFn: async (leftOut: Readonly<Record<string, readonly string[]>>): Promise<Tried> => {
      const wish: Wish = {
        files: await Promise.all(
          files.map(async (file) => ({
            name: file.name,
            base64: await toBase64(file),
            leftOut: [...(leftOut[file.name] ?? [])],
          })),
        ),
        openingOn,
        ...(decimalSign === 'point' || decimalSign === 'comma' ? { decimalSign } : {}),
        ...(dayOrder === 'day-first' || dayOrder === 'month-first' ? { dayOrder } : {}),
        ...(encoding === 'utf-8' || encoding === 'windows-1252' ? { encoding } : {}),
      };
      return { wish, trial: await ask(inside['import-trials'].$post({ param, json: wish })) };
    },
  });
  const posting = useMutation({
    mutationFn: ({ wish, trial }: Tried) => {
      const json = { ...wish, seen: trial.seen ?? '' };
      // The files are too large to keep beside the key; what was seen stands for all of them.
      return askOnce(`import.${storehouse}`, { seen: trial.seen }, (headers) =>
        inside.imports.$post({ param, json }, { headers }),
      );
    },
    onSuccess: async () => {
      reset();
      trying.reset();
      setFiles([]);
      await client.invalidateQueries();
    },
  });
  const choose = (event: ChangeEvent<HTMLInputElement>) => {
    setFiles([...(event.target.files ?? [])]);
    trying.reset();
    posting.reset();
  };
  const id = useId();
  const tried = trying.data;
  const unknown = (tried?.trial.files ?? []).flatMap(({ name, problems }) =>
    problems.flatMap(({ heading }) => (heading === null ? [] : [[name, heading] as const])),
  );
  const leaveOut = () => {
    const leftOut: Record<string, string[]> = {};
    for (const [name, heading] of unknown) leftOut[name] = [...(leftOut[name] ?? []), heading];
    trying.mutate(leftOut);
  };
  return (
    <>
      <Form
        onSend={() => {
          if (files.length > 0) trying.mutate({});
        }}
      >
        <div className="field">
          <label htmlFor={id}>{t.files}</label>
          <input id={id} type="file" accept=".csv,.txt,text/csv" multiple onChange={choose} />
          <span className="soft">{t.filesHint}</span>
        </div>
        <Field
          label={t.openingOn}
          type="date"
          value={openingOn}
          onChange={(event) => change({ openingOn: event.target.value })}
          problem={problemsOf(trying.error).openingOn}
        />
        <Choice
          label={t.decimalSign}
          value={decimalSign}
          options={t.decimalSigns}
          onChange={(decimalSign) => change({ decimalSign })}
        />
        <Choice
          label={t.dayOrder}
          value={dayOrder}
          options={t.dayOrders}
          onChange={(dayOrder) => change({ dayOrder })}
        />
        <Choice
          label={t.encoding}
          value={encoding}
          options={t.encodings}
          onChange={(encoding) => change({ encoding })}
        />
        <ProblemSaid error={trying.error} />
        <div className="actions">
          <button type="submit" className="btn go" disabled={files.length === 0 || trying.isPending}>
            {trying.isPending ? t.trying : t.tryIt}
          </button>
        </div>
      </Form>
      <div role="status">{posting.isSuccess ? <p className="said">{t.broughtOver}</p> : null}</div>
      {tried ? (
        <>
          {tried.trial.isPossible ? (
            <NextStep title={t.willPost}>
              <ul>
                {tried.trial.files.map((file) => (
                  <li key={file.name}>
                    {t.kinds[file.kind ?? ''] ?? file.name}: {t.counts(file.newRows, file.skippedRows)}
                  </li>
                ))}
              </ul>
              <p>{t.willPostWords(format.day(tried.trial.openingOn))}</p>
              <ProblemSaid error={posting.error} />
              <div className="actions">
                <button
                  type="button"
                  className="btn go"
                  disabled={posting.isPending}
                  onClick={() => posting.mutate(tried)}
                >
                  {posting.isPending ? t.bringing : t.bringOver}
                </button>
              </div>
            </NextStep>
          ) : (
            <p className="said">{t.notYet}</p>
          )}
          {unknown.length > 0 ? (
            <div className="actions">
              <button type="button" className="btn" onClick={leaveOut}>
                {t.leaveOut(unknown.map(([, heading]) => heading).join(', '))}
              </button>
            </div>
          ) : null}
          {tried.trial.files.map((file) => (
            <TrialTable key={file.name} file={file} />
          ))}
        </>
      ) : null}
    </>
  );
}

const KINDS = ['households', 'eaters', 'foods', 'balances', 'stock', 'equipment'] as const;

function Templates() {
  const t = useImportText();
  const { storehouse, format } = useHouse();
  return (
    <details>
      <summary>{t.templates}</summary>
      <p>{t.templatesWords}</p>
      <ul className="list">
        {KINDS.map((kind) => (
          <li key={kind}>
            <a
              className="btn quiet"
              href={`/api/storehouses/${storehouse}/import-templates/${kind}?language=${format.language}`}
              download
            >
              {t.kinds[kind]}
            </a>
          </li>
        ))}
      </ul>
    </details>
  );
}

function BroughtBefore() {
  const t = useImportText();
  const { storehouse, format } = useHouse();
  const reading = useQuery(importsQuery({ storehouse }));
  return (
    <section className="stack">
      <h2>{t.before}</h2>
      <Loaded reading={reading}>
        {({ imports }) =>
          imports.length === 0 ? (
            <p className="soft">{t.noneBefore}</p>
          ) : (
            <ul className="list">
              {imports.map((one) => (
                <li key={one.id}>
                  <b>{t.importNo(one.importNo, one.importedBy, format.instant(one.importedAt))}</b>
                  {one.files.map((file) => (
                    <p key={file.sha256} className="soft">
                      {file.name}: {t.counts(file.newRows, file.skippedRows)}
                    </p>
                  ))}
                  {one.takenBack ? (
                    <p>{t.takenBack(format.instant(one.takenBack.at), one.takenBack.reason)}</p>
                  ) : (
                    <TakeBack importId={one.id} importNo={one.importNo} />
                  )}
                </li>
              ))}
            </ul>
          )
        }
      </Loaded>
      <p>
        <Link to="/s/$storehouse/equipment" params={{ storehouse }}>
          {t.equipment}
        </Link>
      </p>
    </section>
  );
}
