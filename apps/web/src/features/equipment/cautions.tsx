import type { Item } from './queries.ts';
import { useEquipmentText } from './words.ts';

/** What its keeper says before anybody uses it; the maker and local rules come first. */
export function Cautions({ item }: { item: Item }) {
  const words = useEquipmentText();
  if (item.cautions === '') return null;
  return (
    <section className="said watch-said stack">
      <h2>{words.cautions}</h2>
      <p>{item.cautions}</p>
      <p>{words.cautionsDefer}</p>
    </section>
  );
}
