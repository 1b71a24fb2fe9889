import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { Check } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { BoughtForm } from './bought-form.tsx';
import { type ShoppingBody, type ShoppingLine, shoppingQuery } from './queries.ts';
import { Spoiling } from './spoiling.tsx';
import { useSuppliesText } from './words.ts';
import './supplies.css';

/** What a packing day needs, for whoever stands in the shop: ticked off on the phone, also without a signal. */
export function Shopping() {
  const { session } = useParams({ from: '/s/$storehouse/packing/$session/shopping' });
  const { storehouse } = useHouse();
  const reading = useQuery(shoppingQuery({ storehouse, session }));
  return (
    <Loaded isPage reading={reading}>
      {(body) => <ShoppingPage key={session} body={body} />}
    </Loaded>
  );
}

type Ticks = { readonly ticked: readonly string[] };

function ShoppingPage({ body }: { body: ShoppingBody }) {
  const t = useSuppliesText();
  const { storehouse, format, personId } = useHouse();
  const { draft, change } = useDraft<Ticks>(`shopping.${storehouse}.${body.sessionId}.${personId}`, {
    ticked: [],
  });
  const [isWriting, setIsWriting] = useState(false);
  useTitle(t.shopping);
  const toBuy = body.lines.filter(({ packsToBuy }) => packsToBuy > 0);
  const ticked = toBuy.filter(({ supplyId }) => draft.ticked.includes(supplyId));
  const lacks = body.unkept.some(({ kind }) => kind !== 'container'); // a household brings its own containers
  const cost = body.costMinorUnits === null ? null : format.money(body.costMinorUnits);
  const tick = (supplyId: string, isOn: boolean) =>
    change({ ticked: isOn ? [...draft.ticked, supplyId] : draft.ticked.filter((id) => id !== supplyId) });
  return (
    <>
      <Link
        className="who"
        to="/s/$storehouse/packing/$session"
        params={{ storehouse, session: body.sessionId }}
      >
        <BackIcon />
        {t.backToDay}
      </Link>
      <h1>
        {toBuy.length > 0
          ? t.toBuy(toBuy.length, cost)
          : lacks
            ? t.keepsNone(body.containers)
            : t.nothingToBuy(body.containers)}
      </h1>
      <Spoiling supplies={body.lines.map(({ supply }) => supply)} />
      {toBuy.length === 0 ? null : (
        <section className="stack">
          <ul className="ticks">
            {toBuy.map((line) => (
              <li key={line.supplyId} className={draft.ticked.includes(line.supplyId) ? 'done' : undefined}>
                <Check
                  label={<TickLabel line={line} />}
                  isOn={draft.ticked.includes(line.supplyId)}
                  onChange={(isOn) => tick(line.supplyId, isOn)}
                />
              </li>
            ))}
          </ul>
          <p className="soft">{t.ticksKept}</p>
          {ticked.length > 0 && !isWriting ? (
            <button type="button" className="btn" onClick={() => setIsWriting(true)}>
              {t.writeDown(ticked.length)}
            </button>
          ) : null}
        </section>
      )}
      <BoughtForm
        name={`bought.${body.sessionId}`}
        key={ticked.map(({ supplyId }) => supplyId).join(' ')}
        lines={isWriting ? ticked : []}
        onWritten={() => {
          setIsWriting(false);
          const written = new Set(ticked.map(({ supplyId }) => supplyId));
          change({ ticked: draft.ticked.filter((id) => !written.has(id)) });
        }}
      />
      <Unkept body={body} />
      <Needs body={body} />
      {body.containers === 0 ? null : <ToBring ticked={draft.ticked} onTick={tick} />}
      <OpenPacks body={body} />
    </>
  );
}

/** What no count of containers asks for and every line wants to hand (common practice, no source). */
function ToBring({ ticked, onTick }: Ticks & { onTick: (id: string, isOn: boolean) => void }) {
  const t = useSuppliesText();
  return (
    <section className="stack">
      <h2>{t.toBring}</h2>
      <ul className="ticks">
        {Object.entries(t.broughtAlong).map(([id, name]) => (
          <li key={id} className={ticked.includes(id) ? 'done' : undefined}>
            <Check label={name} isOn={ticked.includes(id)} onChange={(isOn) => onTick(id, isOn)} />
          </li>
        ))}
      </ul>
      <p className="soft">{t.toBringSays}</p>
    </section>
  );
}

function TickLabel({ line }: { line: ShoppingLine }) {
  const t = useSuppliesText();
  const { format } = useHouse();
  const { supply, packsToBuy, neededPieces, costMinorUnits } = line;
  return (
    <>
      <strong>{supply.name}</strong>
      <span className="block">
        {t.packs(packsToBuy, format.count(supply.packPieces), supply.kind === 'dry-ice')}
        {costMinorUnits === null ? '' : `, ${format.money(costMinorUnits)}`}
      </span>
      <span className="soft block">
        {t.neededOnHand(format.count(neededPieces), format.count(supply.onHandPieces))}
      </span>
    </>
  );
}

function Needs({ body }: { body: ShoppingBody }) {
  const t = useSuppliesText();
  const { format } = useHouse();
  if (body.lines.length === 0) return null;
  return (
    <section className="stack">
      <h2>{t.needs}</h2>
      <Ledger
        caption={t.needs}
        columns={[
          { name: t.supply },
          { name: t.used, isNumber: true },
          { name: t.withSpare, isNumber: true },
          { name: t.onHand, isNumber: true },
        ]}
        rows={body.lines.map((line) => ({
          key: line.supplyId,
          cells: [
            line.supply.name,
            format.count(line.usedPieces),
            format.count(line.neededPieces),
            format.count(line.supply.onHandPieces),
          ],
        }))}
      />
      <p className="soft">{t.spareSays}</p>
    </section>
  );
}

/** What the store keeps none of: containers that households bring, and gaps to close before the day. */
function Unkept({ body }: { body: ShoppingBody }) {
  const t = useSuppliesText();
  const { format } = useHouse();
  if (body.unkept.length === 0) return null;
  const wordOf = ({ kind, containerKind, sizeMillilitres, pieces }: ShoppingBody['unkept'][number]) => {
    const count = format.count(pieces);
    if (kind === 'container') return t.broughtByHouseholds(count, nameIn(format.language, containerKind));
    return kind === 'absorber' ? t.noAbsorbers(count, format.count(sizeMillilitres ?? 0)) : t.noDryIce(count);
  };
  return (
    <section className="stack">
      <h2>{t.notKept}</h2>
      <ul>
        {body.unkept.map((use) => (
          <li key={`${use.kind} ${use.kindId} ${use.sizeMillilitres}`}>{wordOf(use)}</li>
        ))}
      </ul>
    </section>
  );
}

/** So that no absorber waits in the open too long. */
function OpenPacks({ body }: { body: ShoppingBody }) {
  const t = useSuppliesText();
  const { format } = useHouse();
  const packs = body.lines.flatMap(({ supply, pack }) => (pack ? [{ supply, pack }] : []));
  if (packs.length === 0) return null;
  const minutes = (seconds: number) => format.count(Math.round(seconds / 60));
  return (
    <section className="stack">
      <h2>{t.openPacks}</h2>
      {packs.map(({ supply, pack }) => (
        <p key={supply.id}>
          {t.packLasts(supply.name, format.count(supply.packPieces), minutes(pack.packSeconds))}{' '}
          {pack.jars > 1
            ? t.intoJars(pack.jars, minutes(pack.windowSeconds), format.count(pack.servedInWindow))
            : t.oneJar(minutes(pack.windowSeconds))}
        </p>
      ))}
      <p className="soft">{t.absorberCaution}</p>
    </section>
  );
}
