import { TREATMENT_CODES, type TreatmentCode } from '@sheafbook/keeping';
import { useQuery } from '@tanstack/react-query';
import { ApiProblem } from '../../api/problem.ts';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { kindsQuery } from '../shelf/queries.ts';
import { treatmentsQuery } from '../treatment/queries.ts';
import { usePackingText } from './words.ts';

/** What fits where the wish did not: a container, what is done to it and how much goes in; or packets for its air. */
export type Nearest = {
  readonly containerKindId?: string;
  readonly treatment?: TreatmentCode;
  readonly gramsEach?: number;
  readonly absorberMillilitres?: number;
};

/** What a refusal tells of the nearest that fits; null when it tells nothing. */
export function nearestIn(facts: Readonly<Record<string, unknown>>): Nearest | null {
  if (typeof facts.absorberMillilitres === 'number')
    return { absorberMillilitres: facts.absorberMillilitres };
  const { nearest } = facts;
  if (typeof nearest !== 'object' || nearest === null) return null;
  const { containerKindId, treatment, gramsEach } = nearest as Record<string, unknown>;
  const code = TREATMENT_CODES.find((one) => one === treatment);
  if (typeof containerKindId !== 'string' || typeof gramsEach !== 'number' || !code) return null;
  return { containerKindId, treatment: code, gramsEach };
}

export const nearestOf = (error: Error | null): Nearest | null =>
  error instanceof ApiProblem ? nearestIn(error.facts) : null;

/** One tap to what fits, said in full before it is taken. */
export function TakeNearest({
  nearest,
  onTake,
}: {
  nearest: Nearest | null;
  onTake: (nearest: Nearest) => void;
}) {
  const t = usePackingText();
  const { storehouse, format } = useHouse();
  const kinds = useQuery(kindsQuery({ storehouse }));
  const book = useQuery(treatmentsQuery({ storehouse }));
  if (!nearest) return null;
  const kind = kinds.data?.containerKinds.find(({ id }) => id === nearest.containerKindId);
  const treatment = book.data?.treatments.find(({ code }) => code === nearest.treatment);
  const kindName = kind && nameIn(format.language, kind);
  const said =
    nearest.absorberMillilitres === undefined
      ? [kindName, treatment?.names[format.language], t.eachOf(format.mass(nearest.gramsEach ?? 0))].join(
          ', ',
        )
      : t.packetsFor(format.count(nearest.absorberMillilitres));
  return (
    <button type="button" className="btn" onClick={() => onTake(nearest)}>
      {t.takeNearest(said)}
    </button>
  );
}
