import { formatDecimal, fraction } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { type Kind, kindsQuery } from '../shelf/queries.ts';
import { AddKind, ChangeKind } from './kind-forms.tsx';
import { useKindText } from './words.ts';

const MICROLITRES_IN_A_LITRE = 1_000_000;

/** As the server decides it; a page only leaves out what would be refused. */
const mayEdit = (duties: readonly string[]): boolean =>
  ['coordinator', 'packing_lead', 'treasurer'].some((duty) => duties.includes(duty));

/** What food is packed in: what each kind truly holds, weighs empty and costs. */
export function ContainerKinds() {
  const words = useKindText();
  const { storehouse, duties } = useHouse();
  useTitle(words.title);
  const kinds = useQuery(kindsQuery({ storehouse }));
  return (
    <>
      <Link className="who" to="/s/$storehouse/foods" params={{ storehouse }}>
        <BackIcon />
        {words.toFoods}
      </Link>
      <Loaded isPage reading={kinds}>
        {({ containerKinds: all }) => (
          <>
            <h1>
              {words.stands(all.length, all.filter(({ priceMinorUnits }) => priceMinorUnits === null).length)}
            </h1>
            <p>{words.holdsWords}</p>
            <div className="actions">
              <Link className="btn" to="/s/$storehouse/treatments" params={{ storehouse }}>
                {words.toTreatments}
              </Link>
            </div>
            <KindTable kinds={all} />
            {mayEdit(duties) ? (
              <>
                <ChangeKind kinds={all} />
                <AddKind />
              </>
            ) : null}
          </>
        )}
      </Loaded>
    </>
  );
}

const FLAGS = ['isDark', 'isRodentProof', 'isBreakable', 'needsOuter', 'isReusable'] as const;

/** The wall first, then what else it does or wants. */
function sayTraits(kind: Kind, words: ReturnType<typeof useKindText>): string {
  const parts = [
    kind.barrier === null ? words.wallUnknown : words.barriers[kind.barrier],
    ...FLAGS.filter((flag) => kind[flag]).map((flag) => words.flags[flag]),
    ...(kind.mostStacked === null ? [] : [words.stacks(kind.mostStacked)]),
  ];
  return `${parts.join('; ')}.`;
}

function KindTable({ kinds }: { kinds: readonly Kind[] }) {
  const words = useKindText();
  const { format } = useHouse();
  return (
    <Searched items={kinds} wordsOf={({ nameEn, nameEs }) => `${nameEn} ${nameEs}`}>
      {(shown) => (
        <Ledger
          caption={words.title}
          columns={[
            { name: words.kind },
            { name: words.holds, isNumber: true },
            { name: words.tare, isNumber: true },
            { name: words.price(format.currency), isNumber: true },
            { name: words.does },
          ]}
          rows={shown.map((kind) => ({
            key: kind.id,
            cells: [
              <span key="kind" className="ample">
                {nameIn(format.language, kind)}
                <span className="soft block">{kind.isOwn ? words.own(kind.source) : kind.source}</span>
              </span>,
              formatDecimal(fraction(kind.capacityMicrolitres, MICROLITRES_IN_A_LITRE), 3, format.language),
              kind.tareGrams === null ? words.unknown : format.count(kind.tareGrams),
              kind.priceMinorUnits === null ? words.unknown : format.money(kind.priceMinorUnits),
              <span key="does" className="ample">
                {sayTraits(kind, words)}
                <span className="soft block">{kind.traitsSource}</span>
              </span>,
            ],
          }))}
        />
      )}
    </Searched>
  );
}
