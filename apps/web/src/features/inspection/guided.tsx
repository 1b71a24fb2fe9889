import { type Finding, isInsectDamaged, lookGroupsOf } from '@sheafbook/keeping';
import { Check, Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { NextStep } from '../../ui/pieces.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import type { How, Look, Looks, Rules } from './queries.ts';
import { Result } from './result.tsx';
import { useInspectionText } from './words.ts';

const NO_LOOK: Look = {
  ...{ how: null, ticked: [], damaged: '', sample: '', found: null },
  ...{ outcome: null, note: '', isMovedOut: false },
};
const LOOK_ROWS = { how: '', ticked: '', found: { how: '', findings: [''], kernels: null }, outcome: '' };
type Facts = { readonly container: Looks['container']; readonly rules: Rules };

/** Three questions: from outside or open, what is there, and what becomes of it. */
export function Guided({ container, rules }: Facts) {
  const { draft, change, forget } = useDraft<Look>(`look.${container.id}`, NO_LOOK, { rows: LOOK_ROWS });
  const { how, found } = draft;
  if (how === null) return <HowAsked container={container} onHow={(how) => change({ how })} />;
  if (found === null) return <FoundAsked {...{ how, rules, draft, change }} />;
  return <Result {...{ container, rules, found, draft, change }} onSaved={forget} />;
}

function HowAsked({ container, onHow }: { container: Looks['container']; onHow: (how: How) => void }) {
  const words = useInspectionText();
  return (
    <NextStep title={words.howAsked}>
      <p>{words.outsideFirst}</p>
      <div className="stack">
        <button type="button" className="btn go" onClick={() => onHow('outside')}>
          {words.hows.outside}
        </button>
        <button type="button" className="btn" onClick={() => onHow('opened')}>
          {words.hows.opened}
        </button>
      </div>
      {container.openedOn === null ? <p className="soft">{words.opensIt}</p> : null}
    </NextStep>
  );
}

type AskedProps = { how: How; rules: Rules; draft: Look; change: (part: Partial<Look>) => void };

function FoundAsked({ how, rules, draft, change }: AskedProps) {
  const words = useInspectionText();
  const { ticked, damaged, sample } = draft;
  const kernels = readKernels(damaged, sample);
  const tick = (finding: Finding, isOn: boolean) =>
    change({ ticked: isOn ? [...ticked, finding] : ticked.filter((one) => one !== finding) });
  const findings =
    kernels && isInsectDamaged(kernels.damaged, kernels.sampleGrams)
      ? [...ticked, 'insect-damaged-kernels' as const]
      : ticked;
  return (
    <Form
      onSend={() => {
        if (kernels !== undefined)
          change({
            found: { how, kernels, findings: findings.length === 0 ? ['nothing-wrong'] : findings },
          });
      }}
    >
      <h2>{words.foundAsked}</h2>
      {lookGroupsOf(how).map((group) => (
        <fieldset key={group.code} className="looks">
          <legend>{words.groups[group.code]}</legend>
          {group.findings.map((finding) => (
            <OneFinding
              key={finding}
              {...{ finding, rules }}
              isOn={ticked.includes(finding)}
              onChange={(isOn) => tick(finding, isOn)}
            />
          ))}
        </fieldset>
      ))}
      {how === 'outside' ? null : (
        <fieldset className="looks">
          <legend>{words.kernels}</legend>
          <div className="pair">
            <Field
              label={words.damaged}
              inputMode="numeric"
              value={damaged}
              onChange={(event) => change({ damaged: event.target.value })}
              problem={kernels === undefined ? words.kernelsProblem : undefined}
            />
            <Field
              label={words.sample}
              inputMode="numeric"
              value={sample}
              onChange={(event) => change({ sample: event.target.value })}
            />
          </div>
        </fieldset>
      )}
      <div className="actions">
        <button type="submit" className="btn go">
          {findings.length === 0 ? words.nothingWrong : words.judge(findings.length)}
        </button>
        <button type="button" className="btn quiet" onClick={() => change({ how: null })}>
          {words.back}
        </button>
      </div>
    </Form>
  );
}

/** Null where nothing was counted, undefined where it can't be read. */
function readKernels(damaged: string, sample: string) {
  if (damaged.trim() === '' && sample.trim() === '') return null;
  const isCount = (text: string) => /^\d{1,5}$/.test(text.trim());
  return isCount(damaged) && isCount(sample) && Number(sample) > 0 && Number(sample) <= 10_000
    ? { damaged: Number(damaged), sampleGrams: Number(sample) }
    : undefined;
}

/** What is to be minded stands at the finding as soon as it is ticked. */
function OneFinding({
  finding,
  rules,
  isOn,
  onChange,
}: {
  finding: Finding;
  rules: Rules;
  isOn: boolean;
  onChange: (isOn: boolean) => void;
}) {
  const { format } = useHouse();
  const said = rules.findings.find(({ code }) => code === finding);
  const mind = said?.mind?.[format.language];
  return (
    <>
      <Check label={said?.name[format.language] ?? finding} isOn={isOn} onChange={onChange} />
      <div role="status">{isOn && mind ? <p className="said">{mind}</p> : null}</div>
    </>
  );
}
