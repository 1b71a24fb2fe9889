import { useHouse } from '../../ui/house.ts';
import { LooseLink } from '../buy/loose-link.tsx';
import { useCoverageText } from './words.ts';

/** Where each duty's work begins. */
const FIRST_PAGES = [
  { duty: 'coordinator', path: '/buys', word: 'runTheBuys' },
  { duty: 'treasurer', path: '/books', word: 'theBooks' },
  { duty: 'equipment_keeper', path: '/equipment/desk', word: 'keepEquipment' },
  { duty: 'reviewer', path: '/books/audit', word: 'reviewBooks' },
] as const;

export function Duties() {
  const words = useCoverageText();
  const { storehouse, duties } = useHouse();
  const mine = FIRST_PAGES.filter(({ duty }) => duties.includes(duty));
  if (mine.length === 0) return null;
  return (
    <nav className="actions" aria-label={words.yourDuties}>
      {mine.map(({ duty, path, word }) => (
        <LooseLink key={duty} className="btn" to={`/s/${storehouse}${path}`}>
          {words[word]}
        </LooseLink>
      ))}
    </nav>
  );
}
