import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { askOnce } from '../../api/client.ts';
import { Check, Field, problemsOf } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { inside, type Manifest } from './queries.ts';
import { useGivingText } from './words.ts';

/** The receipt, at the pantry's door: tick what came back, and say who took the rest in. */
export function ReceiptForm({ manifest }: { manifest: Manifest }) {
  const words = useGivingText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const [receivedOn, setReceivedOn] = useState(format.today());
  const [receiverDuty, setReceiverDuty] = useState('');
  const [back, setBack] = useState<Readonly<Record<string, string>>>({});
  const refused = manifest.lines.filter(({ containerId }) => back[containerId] !== undefined);
  const backGrams = refused.reduce((sum, { grams }) => sum + grams, 0);
  const writing = useMutation({
    mutationFn: () => {
      const json = {
        ...{ version: manifest.version, receivedOn, receiverDuty },
        refused: refused.map(({ containerId }) => ({ containerId, reason: back[containerId] ?? '' })),
      };
      return askOnce(`receipt.${manifest.id}`, json, (header) =>
        inside['gift-manifests'][':manifest'].receipt.$post(
          { param: { storehouse, manifest: manifest.id }, json },
          { headers: header },
        ),
      );
    },
    onSuccess: () => queries.invalidateQueries({ queryKey: ['giving'] }),
  });
  const problems = problemsOf(writing.error);
  const tick = (containerId: string, isOn: boolean) => {
    const { [containerId]: _gone, ...rest } = back;
    setBack(isOn ? { ...rest, [containerId]: '' } : rest);
  };
  return (
    <form
      className="stack"
      noValidate
      aria-label={words.receipt}
      onSubmit={(event) => {
        event.preventDefault();
        writing.mutate();
      }}
    >
      <h2>{words.receipt}</h2>
      {manifest.lines.map(({ containerId, code }) => (
        <div key={containerId}>
          <Check
            label={words.cameBack(code)}
            isOn={back[containerId] !== undefined}
            onChange={(isOn) => tick(containerId, isOn)}
          />
          {back[containerId] === undefined ? null : (
            <Field
              label={words.cameBackWhy(code)}
              value={back[containerId] ?? ''}
              problem={
                problems[`refused.${refused.findIndex((row) => row.containerId === containerId)}.reason`]
              }
              onChange={(event) => setBack({ ...back, [containerId]: event.target.value })}
            />
          )}
        </div>
      ))}
      <Field
        label={words.receivedOn}
        type="date"
        value={receivedOn}
        problem={problems.receivedOn}
        onChange={(event) => setReceivedOn(event.target.value)}
      />
      <Field
        label={words.receiverDuty}
        value={receiverDuty}
        problem={problems.receiverDuty}
        onChange={(event) => setReceiverDuty(event.target.value)}
      />
      <p className="soft">
        {words.receiptSays(format.mass(manifest.grams - backGrams), format.mass(backGrams))}
      </p>
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={writing.error} />}
      <button type="submit" className="btn go" disabled={writing.isPending}>
        {words.writeReceipt}
      </button>
    </form>
  );
}

/** Takes a receipt back or calls a trip off, with the reason. */
export function ReasonForm({
  manifest,
  title,
  what,
}: {
  manifest: Manifest;
  title: string;
  what: 'calling-off' | 'receipt-undoing';
}) {
  const words = useGivingText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const [reason, setReason] = useState('');
  const doing = useMutation({
    mutationFn: (json: { version: number; reason: string }) =>
      askOnce(`${what}.${manifest.id}`, json, (header) =>
        inside['gift-manifests'][':manifest'][what].$post(
          { param: { storehouse, manifest: manifest.id }, json },
          { headers: header },
        ),
      ),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['giving'] }),
  });
  const problems = problemsOf(doing.error);
  return (
    <details>
      <summary>{title}</summary>
      <form
        className="stack"
        noValidate
        aria-label={title}
        onSubmit={(event) => {
          event.preventDefault();
          doing.mutate({ version: manifest.version, reason });
        }}
      >
        <Field
          label={words.reason}
          value={reason}
          problem={problems.reason}
          onChange={(event) => setReason(event.target.value)}
        />
        {problems.reason ? null : <ProblemSaid error={doing.error} />}
        <button type="submit" className="btn" disabled={doing.isPending}>
          {title}
        </button>
      </form>
    </details>
  );
}
