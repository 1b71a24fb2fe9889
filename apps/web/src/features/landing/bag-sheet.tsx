import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Figures } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { ByPen } from '../paper/by-pen.tsx';
import { Photos } from '../photo/photos.tsx';
import { ChangeBag } from './bag-change.tsx';
import { BagState } from './bag-list.tsx';
import { BagHold } from './hold.tsx';
import { type Bag, nameOfLine, type Sheet, spoken } from './landing-body.ts';
import { holdsQuery } from './queries.ts';
import { scaleText } from './scale.ts';
import { type Landing, useLanding } from './use-landing.ts';
import { WaitingList } from './waiting-list.tsx';
import { WeighAgain } from './weigh-again.tsx';
import { useLandingText } from './words.ts';

const LANDERS = ['coordinator', 'packing_lead'];

/** One bag: what it weighs, how it looks, whether it is on hold, and what may still be done with it. */
export function BagSheet() {
  const t = useLandingText();
  const { buy, bag: bagId } = useParams({ from: '/s/$storehouse/buys/$buy/landing/bags/$bag' });
  const { storehouse } = useHouse();
  const landing = useLanding(buy);
  const holds = useQuery(holdsQuery(landing.param));
  return (
    <div className="lorry narrow">
      <Link className="who" to="/s/$storehouse/buys/$buy/landing" params={{ storehouse, buy }}>
        <BackIcon />
        {t.toLanding}
      </Link>
      <Loaded isPage reading={joined(landing.reading, holds)}>
        {([[sheet, [, bags]], { holds: open }]) => {
          const bag = bags.find(({ id }) => id === bagId);
          if (!bag) return <h1>{t.noSuchBag}</h1>;
          return (
            <OneBag landing={landing} sheet={sheet} bag={bag}>
              <BagHold bag={bag} hold={open.find((hold) => hold.bagId === bagId) ?? null} />
            </OneBag>
          );
        }}
      </Loaded>
    </div>
  );
}

type SheetProps = { landing: Landing; sheet: Sheet; bag: Bag; children: React.ReactNode };

function OneBag({ landing, sheet, bag, children }: SheetProps) {
  const t = useLandingText();
  const { format, duties } = useHouse();
  const line = sheet.lines.find(({ bagOfferId }) => bagOfferId === bag.bagOfferId);
  const title = t.bagNamed(line ? nameOfLine(line, format.language) : '', bag.bagNo);
  const unit = format.massUnit;
  const mass = (grams: number | null) => (grams === null ? '' : scaleText(grams, unit, format.language));
  const mayLand = LANDERS.some((duty) => duties.includes(duty)) && sheet.stage !== 'closed';
  useTitle(title);
  return (
    <>
      <div className="row">
        <h1>
          {title}, {spoken(bag.bagCode)}
        </h1>
        <BagState bag={bag} />
      </div>
      <WaitingList landing={landing} lines={sheet.lines} />
      <Figures
        rows={[
          { name: t.inTheBook, value: mass(bag.netGrams), unit },
          { name: t.declared, value: mass(bag.declaredGrams), unit },
          ...(bag.grossGrams === null
            ? []
            : [
                { name: t.gross, value: mass(bag.grossGrams), unit },
                { name: t.tareShort, value: mass(bag.tareGrams), unit },
              ]),
          { name: t.leftInIt, value: mass(bag.leftGrams), unit },
        ]}
      />
      <div className="stack tight">
        {bag.supplierMark === '' ? null : <p>{t.markIs(bag.supplierMark)}</p>}
        {bag.note === '' ? null : <p>{bag.note}</p>}
        <ByPen buy={landing.param.buy} subject={bag.id} />
      </div>
      <Photos buy={landing.param.buy} shows="bag" thingId={bag.id} />
      {mayLand ? (
        <>
          {bag.decision === 'refused' ? null : <WeighAgain landing={landing} bag={bag} />}
          {children}
          <ChangeBag landing={landing} bag={bag} />
        </>
      ) : null}
    </>
  );
}
