import { Check, Choice, Field } from '../../ui/field.tsx';
import type { Kind } from '../shelf/queries.ts';
import { useKindText } from './words.ts';

const BARRIERS = ['metal', 'foil', 'glass', 'pet', 'bare-plastic', 'open'] as const;
type Barrier = (typeof BARRIERS)[number];

export type TraitDraft = {
  barrier: Barrier | '';
  isDark: boolean;
  isBreakable: boolean;
  isRodentProof: boolean;
  needsOuter: boolean;
  isReusable: boolean;
  mostStacked: string;
  traitsSource: string;
};
export const NO_TRAITS: TraitDraft = {
  barrier: '',
  isDark: false,
  isBreakable: false,
  isRodentProof: false,
  needsOuter: false,
  isReusable: false,
  mostStacked: '',
  traitsSource: '',
};

export const draftTraits = (kind: Kind): TraitDraft => ({
  barrier: kind.barrier ?? '',
  isDark: kind.isDark,
  isBreakable: kind.isBreakable,
  isRodentProof: kind.isRodentProof,
  needsOuter: kind.needsOuter,
  isReusable: kind.isReusable,
  mostStacked: kind.mostStacked === null ? '' : String(kind.mostStacked),
  traitsSource: kind.traitsSource,
});

/** Nothing that can be counted is no limit: the server says what it makes of the rest. */
export const readTraits = ({ barrier, mostStacked, ...rest }: TraitDraft) => ({
  ...rest,
  barrier: barrier === '' ? null : barrier,
  mostStacked: /^[1-9]\d*$/.test(mostStacked.trim()) ? Number(mostStacked) : null,
});

const FLAGS = ['isDark', 'isRodentProof', 'isBreakable', 'needsOuter', 'isReusable'] as const;

/** What a kind of one's own does for its food; it is kept once somebody says who says so. */
export function TraitFields({
  draft,
  onChange,
}: {
  draft: TraitDraft;
  onChange: (draft: TraitDraft) => void;
}) {
  const words = useKindText();
  return (
    <fieldset className="stack">
      <legend>{words.traits}</legend>
      <Choice
        label={words.wall}
        value={draft.barrier}
        options={[
          { value: '', name: words.unknown },
          ...BARRIERS.map((barrier) => ({ value: barrier, name: words.barriers[barrier] })),
        ]}
        onChange={(barrier) => onChange({ ...draft, barrier: barrier as Barrier | '' })}
      />
      {FLAGS.map((flag) => (
        <Check
          key={flag}
          label={words.flags[flag]}
          isOn={draft[flag]}
          onChange={(isOn) => onChange({ ...draft, [flag]: isOn })}
        />
      ))}
      <Field
        label={words.mostStacked}
        inputMode="numeric"
        value={draft.mostStacked}
        onChange={(event) => onChange({ ...draft, mostStacked: event.target.value })}
      />
      <Field
        label={words.traitsSource}
        hint={words.traitsSourceHint}
        value={draft.traitsSource}
        onChange={(event) => onChange({ ...draft, traitsSource: event.target.value })}
      />
    </fieldset>
  );
}
