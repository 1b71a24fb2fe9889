import { useQuery } from '@tanstack/react-query';
import { useHouse } from '../../ui/house.ts';
import { keyingsQuery } from './queries.ts';
import { usePaperText } from './words.ts';

/** Beside a thing that came from paper: when the pen wrote it, and who keyed it in when. Nothing for what was typed. */
export function ByPen({ buy, subject }: { buy: string; subject: string }) {
  const words = usePaperText();
  const { storehouse, format } = useHouse();
  const reading = useQuery(keyingsQuery({ storehouse, buy }));
  const own = reading.data?.keyings.filter(({ subjectId }) => subjectId === subject) ?? [];
  return own.map((keying) => (
    <p key={keying.id} className="soft">
      {words.byPen(
        words.keyingKinds[keying.what] ?? keying.what,
        format.instant(keying.writtenAt),
        format.instant(keying.keyedAt),
        keying.keyedBy,
      )}
      {keying.isEnteredFor ? `, ${words.enteredFor}` : ''}
    </p>
  ));
}
