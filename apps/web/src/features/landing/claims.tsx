import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, askOnce } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { Photos } from '../photo/photos.tsx';
import { nameOfLine, type Proposal, type Sheet } from './landing-body.ts';
import { useLandingText } from './words.ts';

const KEEPERS = ['coordinator', 'treasurer'];
const STATES: Readonly<Record<string, 'well' | 'watch' | 'wrong'>> = { credited: 'well', refused: 'wrong' };

/** What the supplier owes back, as the book works it out from counts and scale: one tap claims it. */
export function Claims({ sheet }: { sheet: Sheet }) {
  const t = useLandingText();
  const { duties, format } = useHouse();
  const mayClaim = KEEPERS.some((duty) => duties.includes(duty));
  const { proposedClaims, claims, deliveries } = sheet;
  if (proposedClaims.length === 0 && claims.length === 0) return null;
  const open = deliveries.filter(({ isClaimDayPast }) => !isClaimDayPast);
  const by = open.map(({ claimByOn }) => claimByOn).toSorted()[0];
  const foodOf = (buyLineId: string | null) => {
    const line = sheet.lines.find((candidate) => candidate.buyLineId === buyLineId);
    return line ? nameOfLine(line, format.language) : t.wholeOrder;
  };
  return (
    <section className="stack tight">
      <h2>{t.claimsTitle}</h2>
      {proposedClaims.length > 0 ? (
        <p className={by === undefined ? 'said' : 'said watch-said'}>
          {by === undefined
            ? t.windowPast(sheet.claimWindowHours)
            : t.claimBy(format.day(by), sheet.claimWindowHours)}
        </p>
      ) : null}
      <ul className="list">
        {proposedClaims.map((proposal) => (
          <li key={`${proposal.buyLineId} ${proposal.kind}`}>
            <Proposed proposal={proposal} food={foodOf(proposal.buyLineId)} {...{ sheet, mayClaim }} />
          </li>
        ))}
        {claims.map(({ id, buyLineId, kind, minorUnits, state, because }) => (
          <li key={id} className="stack">
            <div className="row">
              <span>
                <b>{foodOf(buyLineId)}</b>: {t.claimKinds[kind] ?? kind}
                <br />
                <span className="soft">{because}</span>
              </span>
              <span className="num">
                {format.money(minorUnits)}{' '}
                <State kind={STATES[state] ?? 'watch'} word={t.claimStates[state] ?? state} />
              </span>
            </div>
            <Photos buy={sheet.buyId} shows="claim" thingId={id} />
          </li>
        ))}
      </ul>
    </section>
  );
}

type ProposedProps = { proposal: Proposal; food: string; sheet: Sheet; mayClaim: boolean };

function Proposed({ proposal, food, sheet, mayClaim }: ProposedProps) {
  const t = useLandingText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const { supplierId, buyLineId, kind, minorUnits, shortBags, lostGrams } = proposal;
  const because = t.because(kind, { bags: shortBags, grams: format.count(lostGrams), lost: lostGrams });
  const param = { storehouse, buy: sheet.buyId };
  const json = { supplierId, buyLineId, kind, minorUnits, because };
  const claiming = useMutation({
    mutationFn: () =>
      askOnce(`claim.${buyLineId}.${kind}`, json, (headers) =>
        api.storehouses[':storehouse'].buys[':buy'].claims.$post({ param, json }, { headers }),
      ),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['buy', param] }),
  });
  return (
    <div className="stack tight">
      <p>
        <b>{food}</b>: {because} {t.claimPosts(format.money(minorUnits))}
      </p>
      <ProblemSaid error={claiming.error} />
      {mayClaim ? (
        <div>
          <button
            type="button"
            className="btn"
            disabled={claiming.isPending}
            onClick={() => claiming.mutate()}
          >
            {t.claimIt(format.money(minorUnits))}
          </button>
        </div>
      ) : null}
    </div>
  );
}
