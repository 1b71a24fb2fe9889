import { Link, useNavigate } from '@tanstack/react-router';
import { ask } from '../../api/client.ts';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { useDraft } from '../../ui/use-draft.ts';
import type { Way } from '../trace/queries.ts';
import { type HoldWish, inside } from './queries.ts';
import { SentenceForm } from './sentence-form.tsx';
import { useHoldText } from './words.ts';

/** What a hold of a traced thing is on; a manifest and a kitchen have none of their own. */
function scopeOf({ of, lots, things }: Way): HoldWish['of'] | null {
  const { kind, id } = of;
  const [lot] = lots;
  if (kind === 'lot') return { scope: kind, lotId: id };
  if (kind === 'delivery') return { scope: kind, deliveryId: id };
  if (kind === 'session') return { scope: kind, sessionId: id };
  if (kind === 'place') return { scope: kind, placeId: id };
  if (kind === 'container') return { scope: 'containers', containerIds: [id] };
  if (kind === 'mark' && lot?.supplier) return { scope: kind, supplierId: lot.supplier.id, mark: of.label };
  if (kind !== 'manifest') return null;
  const containerIds = things.flatMap(({ isStart, vessel }) => (isStart && vessel ? [vessel.id] : []));
  return containerIds.length === 0 ? null : { scope: 'containers', containerIds };
}

/** Stops what was traced, from its way; the holds that stand on it already are named. */
export function BeginHold({ way }: { way: Way }) {
  const words = useHoldText();
  const { storehouse } = useHouse();
  const navigate = useNavigate();
  const of = scopeOf(way);
  const bagId = way.of.kind === 'bag' ? way.of.id : null;
  const { draft, change, forget } = useDraft(`hold.window.${way.of.id}`, { line: '', from: '', to: '' });
  const begin = async (reason: string) => {
    const param = { storehouse };
    const hold =
      bagId === null
        ? await ask(
            inside.holds.$post({
              param,
              json: { of: { ...of, ...windowOf(draft) } as HoldWish['of'], reason },
            }),
          )
        : await ask(inside.bags[':bag'].holds.$post({ param: { ...param, bag: bagId }, json: { reason } }));
    forget();
    await navigate({ to: '/s/$storehouse/holds/$hold', params: { storehouse, hold: hold.id } });
  };
  return (
    <section className="stack">
      <h2>{words.title}</h2>
      {way.holds.length === 0 ? (
        <p>{words.none}</p>
      ) : (
        <ul className="list">
          {way.holds.map(({ id, scope, sentence }) => (
            <li key={id}>
              <Link to="/s/$storehouse/holds/$hold" params={{ storehouse, hold: id }}>
                <span>
                  <b>{words.scopes[scope]}</b> {sentence}
                </span>
              </Link>
            </li>
          ))}
        </ul>
      )}
      {way.mayRecall && (of !== null || bagId !== null) ? (
        <details>
          <summary>{words.begin}</summary>
          <SentenceForm
            name={`hold.${way.of.id}`}
            label={words.reasonOfHold}
            says={words.beginSays}
            button={words.begin}
            send={begin}
          >
            {way.of.kind === 'session' ? <SerialWindow draft={draft} change={change} /> : null}
          </SentenceForm>
        </details>
      ) : null}
      <p>
        <Link to="/s/$storehouse/holds" params={{ storehouse }}>
          {words.title}
        </Link>
      </p>
    </section>
  );
}

type Window = { readonly line: string; readonly from: string; readonly to: string };

/** Nothing where nothing was typed; the server says what is missing of what was. */
function windowOf({ line, from, to }: Window) {
  const numbers = { line, fromSerial: from, toSerial: to };
  return Object.fromEntries(
    Object.entries(numbers).flatMap(([name, typed]) => (typed.trim() === '' ? [] : [[name, Number(typed)]])),
  );
}

/** Of a packing day a part may be enough: what one line closed, from one number to another. */
function SerialWindow({ draft, change }: { draft: Window; change: (next: Partial<Window>) => void }) {
  const words = useHoldText();
  const field = (name: keyof Window) => ({
    ...{ type: 'number', min: 1, inputMode: 'numeric' as const, value: draft[name] },
    onChange: (event: { target: { value: string } }) => change({ [name]: event.target.value }),
  });
  return (
    <>
      <Field label={words.windowLine} hint={words.windowHint} {...field('line')} />
      <div className="pair">
        <Field label={words.windowFrom} {...field('from')} />
        <Field label={words.windowTo} {...field('to')} />
      </div>
    </>
  );
}
