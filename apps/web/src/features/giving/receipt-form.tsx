import { spellCode } from '@sheafbook/units';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { askOnce } from '../../api/client.ts';
import { Check, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { FindByLabel } from '../scan/find-by-label.tsx';
import { inside, type Manifest } from './queries.ts';
import { useGivingText } from './words.ts';

/** The receipt, at the pantry's door: tick what came back, and say who took the rest in. */
export function ReceiptForm({ manifest }: { manifest: Manifest }) {
  const words = useGivingText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { receivedOn, receiverDuty, back },
    change,
    reset,
  } = useDraft(
    `receipt.${manifest.id}`,
    { receivedOn: format.today(), receiverDuty: '', back: {} as Readonly<Record<string, string>> },
    { rows: { back: '' } },
  );
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
    onSuccess: () => {
      reset();
      return queries.invalidateQueries({ queryKey: ['giving'] });
    },
  });
  const problems = problemsOf(writing.error);
  const tick = (containerId: string, isOn: boolean) => {
    const { [containerId]: _gone, ...rest } = back;
    change({ back: isOn ? { ...rest, [containerId]: '' } : rest });
  };
  const [scanned, setScanned] = useState<string | null>(null);
  const found = (code: string) => {
    const line = manifest.lines.find((one) => one.code === code);
    if (line && back[line.containerId] === undefined) tick(line.containerId, true);
    setScanned(line ? words.tickedByLabel(spellCode(code)) : words.notOfTrip(spellCode(code)));
  };
  return (
    <section className="stack">
      <h2>{words.receipt}</h2>
      <FindByLabel onCode={found} />
      <p role="status">{scanned}</p>
      <Form label={words.receipt} onSend={() => writing.mutate()}>
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
                onChange={(event) => change({ back: { ...back, [containerId]: event.target.value } })}
              />
            )}
          </div>
        ))}
        <Field
          label={words.receivedOn}
          type="date"
          value={receivedOn}
          problem={problems.receivedOn}
          onChange={(event) => change({ receivedOn: event.target.value })}
        />
        <Field
          label={words.receiverDuty}
          value={receiverDuty}
          problem={problems.receiverDuty}
          onChange={(event) => change({ receiverDuty: event.target.value })}
        />
        <p className="soft">
          {words.receiptSays(format.mass(manifest.grams - backGrams), format.mass(backGrams))}
        </p>
        {Object.keys(problems).length > 0 ? null : <ProblemSaid error={writing.error} />}
        <button type="submit" className="btn go" disabled={writing.isPending}>
          {words.writeReceipt}
        </button>
      </Form>
    </section>
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
  const {
    draft: { reason },
    change,
    reset,
  } = useDraft(`${what}.${manifest.id}`, { reason: '' });
  const doing = useMutation({
    mutationFn: (json: { version: number; reason: string }) =>
      askOnce(`${what}.${manifest.id}`, json, (header) =>
        inside['gift-manifests'][':manifest'][what].$post(
          { param: { storehouse, manifest: manifest.id }, json },
          { headers: header },
        ),
      ),
    onSuccess: () => {
      reset();
      return queries.invalidateQueries({ queryKey: ['giving'] });
    },
  });
  const problems = problemsOf(doing.error);
  return (
    <details>
      <summary>{title}</summary>
      <Form label={title} onSend={() => doing.mutate({ version: manifest.version, reason })}>
        <Field
          label={words.reason}
          value={reason}
          problem={problems.reason}
          onChange={(event) => change({ reason: event.target.value })}
        />
        {problems.reason ? null : <ProblemSaid error={doing.error} />}
        <button type="submit" className="btn" disabled={doing.isPending}>
          {title}
        </button>
      </Form>
    </details>
  );
}
