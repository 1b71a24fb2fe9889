import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useId, useState } from 'react';
import { ask, askOnce } from '../../api/client.ts';
import { Choice, Notes, problemsOf } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { type DegreeUnit, degreeUnitOf, sayDegrees } from './degrees.ts';
import { inside, type LogPreview, type PlaceRecord } from './queries.ts';
import { usePlaceText } from './words.ts';

type DayOrder = 'ymd' | 'mdy' | 'dmy';
type Read = { unit: DegreeUnit; dayOrder: DayOrder; badAfterLine: number };

/** A logger's file is tried first: what it brings and which lines can't be. Then it is taken in. */
export function LogForm({ place }: { place: PlaceRecord }) {
  const words = usePlaceText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const id = useId();
  const param = { storehouse, place: place.id };
  const [file, setFile] = useState<File | null>(null);
  const [unit, setUnit] = useState<DegreeUnit>(degreeUnitOf(format));
  const [dayOrder, setDayOrder] = useState<DayOrder>(format.massUnit === 'lb' ? 'mdy' : 'dmy');
  const trying = useMutation({
    mutationFn: ({ file: body, badAfterLine, ...read }: Read & { file: File }) => {
      const query = { ...read, badAfterLine: String(badAfterLine) };
      return ask(inside.places[':place']['log-previews'].$post({ param, query }, { init: { body } }));
    },
  });
  const taking = useMutation({
    // The file is read from the disk as it goes out: neither its text nor a copy of it is kept here.
    mutationFn: (body: File) => {
      const query = { unit, dayOrder, fileName: body.name };
      const same = { ...query, bytes: body.size, savedAt: body.lastModified };
      return askOnce(`place-log.${place.id}`, same, (headers) =>
        inside.places[':place'].logs.$post({ param, query }, { headers, init: { body } }),
      );
    },
    onSuccess: async () => {
      setFile(null);
      trying.reset();
      await queries.invalidateQueries({ queryKey: ['places'] });
    },
  });
  const tryIt = (chosen: File | null, change: Partial<Read> = {}) => {
    if (chosen) trying.mutate({ file: chosen, unit, dayOrder, badAfterLine: 0, ...change });
  };
  const problems = { ...problemsOf(trying.error), ...problemsOf(taking.error) };
  return (
    <details>
      <summary>{words.logger}</summary>
      <div className="stack">
        <p>{words.loggerWords}</p>
        <div className="field">
          <label htmlFor={id}>{words.file}</label>
          <input
            id={id}
            type="file"
            accept=".csv,.txt,.tsv,text/csv,text/plain"
            aria-invalid={problems.file ? true : undefined}
            aria-describedby={`${id}-hint ${id}-problem`}
            onChange={(event) => {
              const chosen = event.target.files?.[0];
              if (!chosen) return;
              setFile(chosen);
              taking.reset();
              tryIt(chosen);
            }}
          />
          <Notes id={id} problem={problems.file && format.sentence(problems.file)} />
        </div>
        <div className="pair">
          <Choice
            label={words.unit}
            value={unit}
            options={[
              { value: 'C', name: '°C' },
              { value: 'F', name: '°F' },
            ]}
            problem={problems.unit}
            onChange={(value) => {
              setUnit(value as DegreeUnit);
              tryIt(file, { unit: value as DegreeUnit });
            }}
          />
          <Choice
            label={words.dayOrder}
            value={dayOrder}
            options={(['ymd', 'mdy', 'dmy'] as const).map((value) => ({
              value,
              name: words.dayOrders[value],
            }))}
            onChange={(value) => {
              setDayOrder(value as DayOrder);
              tryIt(file, { dayOrder: value as DayOrder });
            }}
          />
        </div>
        {Object.keys(problems).length > 0 ? null : <ProblemSaid error={trying.error ?? taking.error} />}
        {taking.isSuccess ? <p role="status">{words.taken}</p> : null}
        {file && trying.data ? (
          <>
            <Preview preview={trying.data} onNext={(badAfterLine) => tryIt(file, { badAfterLine })} />
            {trying.data.readings > 0 ? (
              <div>
                <button
                  type="button"
                  className="btn go"
                  disabled={taking.isPending || trying.data.takenDays.length > 0}
                  onClick={() => taking.mutate(file)}
                >
                  {words.takeIn}
                </button>
              </div>
            ) : null}
          </>
        ) : null}
      </div>
    </details>
  );
}

function Preview({ preview, onNext }: { preview: LogPreview; onNext: (afterLine: number) => void }) {
  const words = usePlaceText();
  const { format } = useHouse();
  const { coldestTenths, warmestTenths, firstOn, lastOn, takenDays, badLines, badCount, next } = preview;
  return (
    <>
      {firstOn === null || lastOn === null || coldestTenths === null || warmestTenths === null ? null : (
        <p>
          {words.brings(
            format.count(preview.readings),
            { from: format.day(firstOn), to: format.day(lastOn) },
            { coldest: sayDegrees(coldestTenths, format), warmest: sayDegrees(warmestTenths, format) },
          )}
        </p>
      )}
      {takenDays.length > 0 ? <p className="said watch-said">{words.inRecord(takenDays.length)}</p> : null}
      {badCount === 0 ? null : (
        <>
          <p className="said watch-said">{words.bad(badCount)}</p>
          <Ledger
            caption={words.badLines}
            columns={[{ name: words.line, isNumber: true }, { name: words.why }, { name: words.text }]}
            rows={badLines.map(({ line, fault, text }) => ({
              key: String(line),
              cells: [format.count(line), words.faults[fault] ?? fault, text],
            }))}
          />
          {next !== null && badCount > badLines.length ? (
            <div>
              <button type="button" className="btn" onClick={() => onNext(next)}>
                {words.moreBad}
              </button>
            </div>
          ) : null}
        </>
      )}
    </>
  );
}
