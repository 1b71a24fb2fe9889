import { parseMass } from '@sheafbook/units';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ask, askOnce } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { Check, Field, problemsOf } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { Beam, type Three } from './beam.tsx';
import type { BuyLineBody, BuyPage, OwnPledge } from './buy-body.ts';
import { type LineFacts, limitsOf, unitsOf, type Wish, wishOf } from './line-facts.ts';
import { PledgeCost } from './pledge-cost.tsx';
import { PledgeLimits } from './pledge-limits.tsx';
import { Sacks } from './sacks.tsx';
import { usePreview } from './use-preview.ts';

const pledges = api.storehouses[':storehouse'].buys[':buy'].pledges;
type Masses = { leastGrams: number; wantedGrams: number; mostGrams: number };

type FormProps = {
  buy: BuyPage;
  line: BuyLineBody;
  pledge: OwnPledge | undefined;
  facts: LineFacts;
  landed: { minorUnits: number; grams: number } | null;
  title: string;
};

/** What the typed texts weigh; undefined while one of them is no mass. */
function massesOf(wish: Wish, unit: 'lb' | 'kg'): Masses | undefined {
  const read = (text: string) => {
    const mass = parseMass(text, { defaultUnit: unit });
    return 'problem' in mass ? (mass.problem === 'zero' ? 0 : undefined) : mass.grams;
  };
  const [leastGrams, wantedGrams, mostGrams] = [read(wish.least), read(wish.wanted), read(wish.most)];
  if (leastGrams === undefined || !wantedGrams || !mostGrams) return undefined;
  return { leastGrams, wantedGrams, mostGrams };
}

export function PledgeForm({ buy, line, pledge, facts, landed, title }: FormProps) {
  const t = useText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, buy: buy.id };
  const start = wishOf(pledge, facts, format.money);
  const {
    draft,
    change: keep,
    forget,
    reset,
  } = useDraft<Wish>(`pledge.${line.id}`, start, { version: pledge?.version ?? 0 });
  const masses = massesOf(draft, facts.unit);
  const { limits, isCeilingWrong } = limitsOf(draft, start, {
    ...{ pledge, unit: facts.unit, currency: format.currency },
  });
  const terms = { wholeBags: draft.wholeBags, asTyped: draft.wanted, ...limits };
  const preview = usePreview(param, masses ? { buyLineId: line.id, ...masses, ...terms } : undefined);
  const renew = async () => {
    forget();
    await queries.invalidateQueries({ queryKey: ['buy', param] });
  };
  const pledging = useMutation({
    mutationFn: async (wish: Masses) => {
      if (pledge) {
        const json = { version: pledge.version, ...wish, ...terms };
        return ask(pledges[':pledge'].$put({ param: { ...param, pledge: pledge.id }, json }));
      }
      const json = { buyLineId: line.id, ...wish, ...terms };
      return askOnce(`pledge.${line.id}`, json, (headers) => pledges.$post({ param, json }, { headers }));
    },
    onSuccess: renew,
  });
  const withdrawing = useMutation({
    mutationFn: ({ id, version }: OwnPledge) =>
      askOnce(`withdraw.${id}`, { version }, (headers) =>
        pledges[':pledge'].withdrawal.$post(
          { param: { ...param, pledge: id }, json: { version } },
          { headers },
        ),
      ),
    onSuccess: renew,
  });
  // What was refused of an older wish is not said of the new one.
  const change = (part: Partial<Wish>) => {
    pledging.reset();
    keep(part);
  };
  const problems = { ...problemsOf(preview.error), ...problemsOf(pledging.error) };
  const three: Three = masses
    ? [
        unitsOf(masses.leastGrams, facts.unit),
        unitsOf(masses.wantedGrams, facts.unit),
        unitsOf(masses.mostGrams, facts.unit),
      ]
    : [0, 0, 0];
  const step = draft.wholeBags ? facts.bagUnits : facts.stepUnits;
  const ownUnits = pledge ? unitsOf(pledge.wantedGrams, facts.unit) : 0;
  const drawn = { ...facts, standingUnits: Math.max(0, facts.standingUnits - ownUnits + three[1]) };
  const isTouched = JSON.stringify(draft) !== JSON.stringify(start);
  const field = (key: 'least' | 'wanted' | 'most', name: string) => (
    <Field
      label={name}
      value={draft[key]}
      onChange={(event) => change({ [key]: event.target.value })}
      problem={problemOfText(draft[key], key === 'least', t.massProblem) ?? problems[`${key}Grams`]}
    />
  );
  return (
    <form
      className="cols"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (masses) pledging.mutate(masses);
      }}
    >
      <div className="stack">
        <Sacks facts={drawn} title={title} landed={preview.data?.landedPrice ?? landed} />
        <section className="stack">
          <h2>
            {t.yourPledge} <span className="u">{t.unitAndStep(facts.unit, step, draft.wholeBags)}</span>
          </h2>
          <Beam
            value={three}
            step={step}
            bag={facts.bagUnits}
            max={Math.max(facts.bagUnits * 4, Math.ceil(three[2] / facts.bagUnits) * facts.bagUnits)}
            unit={facts.unit}
            onChange={([least, wanted, most]) =>
              change({ least: String(least), wanted: String(wanted), most: String(most) })
            }
          />
          <div className="pair three">
            {field('least', t.least)}
            {field('wanted', t.wanted)}
            {field('most', t.most)}
          </div>
          <Check label={t.wholeBags} isOn={draft.wholeBags} onChange={(wholeBags) => change({ wholeBags })} />
          <PledgeLimits
            {...{ draft, change, problems }}
            unit={facts.unit}
            others={buy.lines.filter(({ id }) => id !== line.id)}
            isCeilingWrong={isCeilingWrong}
          />
        </section>
      </div>
      <div className="stack">
        <NextStep title={pledge && !isTouched ? t.youPledged : pledge ? t.changeTitle : t.pledgeTitle}>
          <PledgeCost preview={preview.data} isWaiting={preview.isFetching} landed={landed} facts={facts} />
          {preview.error && Object.keys(problemsOf(preview.error)).length === 0 ? (
            <ProblemSaid error={preview.error} />
          ) : null}
          {pledging.error && Object.keys(problemsOf(pledging.error)).length === 0 ? (
            <ProblemSaid error={pledging.error} />
          ) : null}
          {pledge && !isTouched ? null : (
            <button
              type="submit"
              className="btn go"
              disabled={!masses || isCeilingWrong || pledging.isPending}
            >
              {(pledge ? t.changeTo : t.pledgeMass)(format.massIn(masses?.wantedGrams ?? 0, facts.unit))}
            </button>
          )}
        </NextStep>
        {pledge ? (
          <div className="stack">
            <p className="soft">
              {isTouched ? t.youHave(format.massIn(pledge.wantedGrams, facts.unit)) : t.mayChange}
            </p>
            <div className="actions">
              {isTouched ? (
                <button type="button" className="btn" onClick={() => reset(start)}>
                  {t.leaveIt}
                </button>
              ) : null}
              <button
                type="button"
                className="btn"
                disabled={withdrawing.isPending}
                onClick={() => withdrawing.mutate(pledge)}
              >
                {t.withdraw(format.massIn(pledge.wantedGrams, facts.unit))}
              </button>
            </div>
            {withdrawing.error ? <ProblemSaid error={withdrawing.error} /> : null}
          </div>
        ) : null}
      </div>
    </form>
  );
}

function problemOfText(text: string, mayBeNone: boolean, words: string): string | undefined {
  const mass = parseMass(text, { defaultUnit: 'lb' });
  if (!('problem' in mass)) return undefined;
  return mass.problem === 'zero' && mayBeNone ? undefined : words;
}
