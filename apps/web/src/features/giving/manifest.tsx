import { spellCode } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger, State } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import { gives, kindNamed, type Manifest, manifestQuery, named } from './queries.ts';
import { ReasonForm, ReceiptForm } from './receipt-form.tsx';
import { useGivingText } from './words.ts';

/** A manifest: what goes or went to a pantry, and the receipt when it is back. */
export function ManifestPage() {
  const words = useGivingText();
  const param = useParams({ from: '/s/$storehouse/giving/manifests/$manifest' });
  return (
    <>
      <Link className="who" to="/s/$storehouse/giving" params={param}>
        <BackIcon />
        {words.title}
      </Link>
      <Loaded isPage reading={useQuery(manifestQuery(param))}>
        {(manifest) => <Sheet manifest={manifest} />}
      </Loaded>
    </>
  );
}

function Sheet({ manifest }: { manifest: Manifest }) {
  const words = useGivingText();
  const house = useHouse();
  const { format } = house;
  useTitle(words.manifest(manifest.number));
  return (
    <>
      <div className="row">
        <h1>{words.manifest(manifest.number)}</h1>
        <State
          kind={manifest.stage === 'received' ? 'well' : 'watch'}
          word={words.stages[manifest.stage] ?? manifest.stage}
        />
      </div>
      <p>{words.goesTo(manifest.pantry, format.day(manifest.onDay), manifest.driver)}</p>
      <p className="soft">
        {manifest.address}
        <br />
        {words.signedBy(manifest.signedOutBy, format.instant(manifest.signedOutAt))}
      </p>
      {manifest.receivedOn === null ? null : (
        <p>{words.received(format.day(manifest.receivedOn), manifest.receiverDuty ?? '')}</p>
      )}
      {manifest.calledOffBecause === null ? null : <p>{manifest.calledOffBecause}</p>}
      <Lines manifest={manifest} />
      <Link
        to="/s/$storehouse/giving/matchings/$matching"
        params={{ storehouse: house.storehouse, matching: manifest.matchingId }}
      >
        {words.whyThese}
      </Link>
      <p>{words.safe}</p>
      <p className="soft">{words.law}</p>
      <PaperLinks papers={[{ kind: 'gift-manifest', path: `gift-manifests/${manifest.id}/paper` }]} />
      {gives(house) && manifest.stage === 'out' ? (
        <>
          <ReceiptForm key={manifest.version} manifest={manifest} />
          <ReasonForm manifest={manifest} title={words.callOff} what="calling-off" />
        </>
      ) : null}
      {gives(house) && manifest.stage === 'received' ? (
        <ReasonForm manifest={manifest} title={words.undo} what="receipt-undoing" />
      ) : null}
    </>
  );
}

function Lines({ manifest }: { manifest: Manifest }) {
  const words = useGivingText();
  const { format } = useHouse();
  const hasAnswer = manifest.stage === 'received';
  const answerOf = (line: Manifest['lines'][number]) =>
    line.isAccepted === false ? words.refused(line.refusedBecause ?? '') : words.accepted;
  return (
    <Ledger
      caption={words.manifest(manifest.number)}
      columns={[
        { name: words.container },
        { name: words.mass, isNumber: true },
        ...(hasAnswer ? [{ name: words.answer }] : []),
      ]}
      rows={[
        ...manifest.lines.map((line) => ({
          key: line.containerId,
          cells: [
            <span key="what">
              {spellCode(line.code)}
              <span className="soft block">
                {named(line, format.language)}, {kindNamed(line, format.language)}
              </span>
              <span className="soft block">{words.eatFirstBy(format.day(line.eatFirstOn))}</span>
            </span>,
            format.mass(line.grams),
            ...(hasAnswer ? [answerOf(line)] : []),
          ],
        })),
        {
          key: 'sum',
          isSum: true,
          cells: [words.total, format.mass(manifest.grams), ...(hasAnswer ? [''] : [])],
        },
      ]}
    />
  );
}
