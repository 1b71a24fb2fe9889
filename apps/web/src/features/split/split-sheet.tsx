import { useHouse } from '../../ui/house.ts';
import { Figures, Ledger } from '../../ui/pieces.tsx';
import type { Share, Split } from './split-body.ts';
import { useSplitText } from './words.ts';

/** What was split, by which rule, who got what out of which bags, and every odd gram accounted for. */
export function SplitSheet({ split }: { split: Split }) {
  const t = useSplitText();
  const { format } = useHouse();
  const grams = (value: number) => format.count(value);
  const sees = split.shares.length > 1;
  const nameOf = (share: Share) => (share.isCommonStock ? t.commonStock : share.name);
  return (
    <div className="stack">
      <Figures
        rows={[
          { name: t.landed, value: grams(split.landedGrams), unit: 'g' },
          { name: t.claimed, value: grams(split.claimedGrams), unit: 'g' },
          { name: t.given, value: grams(split.awardedGrams), unit: 'g' },
        ]}
      />
      <Ledger
        caption={t.whoGetsWhat(split.roundNo)}
        columns={[
          { name: t.household },
          { name: t.claimGrams, isNumber: true },
          { name: t.exactly, isNumber: true },
          { name: t.awardGrams, isNumber: true },
          { name: t.inBags },
        ]}
        rows={[
          ...split.shares.map((share) => ({
            key: share.ownerId,
            cells: [
              nameOf(share),
              grams(share.claimGrams),
              share.exactAward,
              share.gotSpareGram ? `${grams(share.awardGrams)} ${t.spareMark}` : grams(share.awardGrams),
              share.pieces.map((piece) => t.piece(piece.bagNo, piece.bagCode, grams(piece.grams))).join(', '),
            ],
          })),
          ...(sees
            ? [
                {
                  key: 'sum',
                  isSum: true,
                  cells: [t.whole, grams(split.claimedGrams), '', grams(split.awardedGrams), ''],
                },
              ]
            : []),
        ]}
      />
      <p>
        {split.sentence} {t.tieBreak}
      </p>
      <p className="soft">
        {t.spareMarkWords} {t.pieces(split.pieceCount, split.isFewestPieces)}{' '}
        {t.madeAt(format.instant(split.madeAt))}
      </p>
      {split.losses.length === 0 ? null : (
        <p className="soft">
          {t.lost(
            split.losses.map(({ cause, grams: lost }) => `${grams(lost)} g ${t.causes[cause] ?? cause}`),
          )}
        </p>
      )}
    </div>
  );
}
