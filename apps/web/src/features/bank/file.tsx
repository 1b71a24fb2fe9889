import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useId, useState } from 'react';
import { ask, askOnce } from '../../api/client.ts';
import { Check, Notes, problemsOf } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Ledger, NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { BooksPage } from '../books/books-page.tsx';
import { ColumnsForm } from './columns-form.tsx';
import { FilesTaken } from './files.tsx';
import { bankApi, bankKey, type Columns, type Preview, sentColumns } from './queries.ts';
import { useBankText } from './words.ts';
import './bank.css';

type Chosen = { readonly name: string; readonly text: string };

/** Banks write UTF-8, or what Windows wrote before it. */
async function readText(file: File): Promise<string> {
  const bytes = await file.arrayBuffer();
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

/** A bank's file is read, its columns put right, and its lines taken in. */
export function BankFile() {
  const words = useBankText();
  const { storehouse } = useHouse();
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const previewing = useMutation({
    mutationFn: ({ text, columns }: { text: string; columns: Columns | null }) =>
      ask(
        bankApi.previews.$post({
          param: { storehouse },
          json: { text, columns: columns && sentColumns(columns) },
        }),
      ),
  });
  const choose = async (file: File | undefined) => {
    if (!file) return;
    const next = { name: file.name, text: await readText(file) };
    setChosen(next);
    previewing.reset();
    previewing.mutate({ text: next.text, columns: null });
  };
  const problems = problemsOf(previewing.error);
  return (
    <BooksPage title={words.takeFile}>
      <div className="row place no-print">
        <Link className="who" to="/s/$storehouse/books/bank" params={{ storehouse }}>
          <BackIcon />
          {words.bank}
        </Link>
      </div>
      <h1>{words.fileTitle}</h1>
      <p>{words.fileWords}</p>
      <FileField problem={problems.text} onChoose={choose} />
      {previewing.error && !problems.text ? <ProblemSaid error={previewing.error} /> : null}
      {chosen && previewing.data ? (
        <Read
          key={chosen.name}
          chosen={chosen}
          preview={previewing.data}
          onColumns={(columns) => previewing.mutate({ text: chosen.text, columns })}
        />
      ) : (
        <FilesTaken />
      )}
    </BooksPage>
  );
}

function FileField({ problem, onChoose }: { problem: string | undefined; onChoose: (file?: File) => void }) {
  const words = useBankText();
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{words.file}</label>
      <input
        id={id}
        type="file"
        accept=".csv,.txt,.tsv,text/csv,text/plain"
        aria-invalid={problem ? true : undefined}
        aria-describedby={`${id}-hint ${id}-problem`}
        onChange={(event) => onChoose(event.target.files?.[0])}
      />
      <Notes id={id} problem={problem} />
    </div>
  );
}

function Read({
  chosen,
  preview,
  onColumns,
}: {
  chosen: Chosen;
  preview: Preview;
  onColumns: (columns: Columns) => void;
}) {
  const words = useBankText();
  const { format } = useHouse();
  return (
    <>
      <section className="stack">
        <p className={preview.from === 'unknown' ? 'said watch-said' : 'soft'}>
          {words.reading[preview.from]}
        </p>
        <ColumnsForm preview={preview} onColumns={onColumns} />
      </section>
      {preview.columns ? <Take chosen={chosen} preview={preview} columns={preview.columns} /> : null}
      {preview.lines.length > 0 ? (
        <section className="stack">
          <h2>{words.firstLines}</h2>
          <Ledger
            caption={words.firstLines}
            columns={[{ name: words.day }, { name: words.words }, { name: words.amount, isNumber: true }]}
            rows={preview.lines.slice(0, 10).map((line) => ({
              key: String(line.rowNo),
              cells: [format.day(line.onDay), line.words, format.money(line.minorUnits)],
            }))}
          />
        </section>
      ) : null}
    </>
  );
}

function Take({ chosen, preview, columns }: { chosen: Chosen; preview: Preview; columns: Columns }) {
  const words = useBankText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const [leavesOut, setLeavesOut] = useState(false);
  const { lineCount, knownCount, firstOn, lastOn, closing, problems } = preview;
  const newCount = lineCount - knownCount;
  const taking = useMutation({
    mutationFn: async () => {
      const leaveOutRows = leavesOut ? problems.map(({ rowNo }) => rowNo) : [];
      const json = { ...chosen, columns: sentColumns(columns), leaveOutRows };
      return await askOnce(`bank-file.${storehouse}`, json, (headers) =>
        bankApi.files.$post({ param: { storehouse }, json }, { headers }),
      );
    },
    onSuccess: () => queries.invalidateQueries({ queryKey: bankKey({ storehouse }) }),
  });
  if (taking.data)
    return (
      <NextStep>
        <p role="status">{words.taken(taking.data.newCount, taking.data.knownCount)}</p>
        <div className="actions">
          <Link className="btn go" to="/s/$storehouse/books/bank" params={{ storehouse }}>
            {words.toLines}
          </Link>
        </div>
      </NextStep>
    );
  return (
    <NextStep>
      <p>
        {firstOn && lastOn
          ? words.brings(lineCount, knownCount, format.day(firstOn), format.day(lastOn))
          : words.bringsNothing}{' '}
        {lineCount > 0
          ? words.inOut(format.money(preview.cameInMinorUnits), format.money(preview.wentOutMinorUnits))
          : ''}{' '}
        {closing ? words.closing(format.money(closing.minorUnits), format.day(closing.onDay)) : ''}
      </p>
      {problems.length > 0 ? (
        <Unread problems={problems} leavesOut={leavesOut} onChange={setLeavesOut} />
      ) : null}
      {taking.error ? <ProblemSaid error={taking.error} /> : null}
      <div className="actions">
        <button
          type="button"
          className="btn go"
          disabled={newCount === 0 || (problems.length > 0 && !leavesOut) || taking.isPending}
          onClick={() => taking.mutate()}
        >
          {newCount === 0 ? words.takeNone : words.take(newCount)}
        </button>
      </div>
    </NextStep>
  );
}

function Unread({
  problems,
  leavesOut,
  onChange,
}: {
  problems: Preview['problems'];
  leavesOut: boolean;
  onChange: (leavesOut: boolean) => void;
}) {
  const words = useBankText();
  return (
    <div className="said watch-said stack">
      <p>{words.unread(problems.length)}</p>
      <ul>
        {problems.slice(0, 8).map(({ rowNo, because, cell }) => (
          <li key={rowNo}>
            {words.row(rowNo)}, {words.because[because]}
            {cell === '' ? '' : `: ${cell}`}
          </li>
        ))}
      </ul>
      <Check label={words.leaveOut} isOn={leavesOut} onChange={onChange} />
    </div>
  );
}
