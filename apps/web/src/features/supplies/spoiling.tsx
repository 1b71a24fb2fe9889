import { useQuery } from '@tanstack/react-query';
import { useHouse } from '../../ui/house.ts';
import { type Supply, shoppingQuery } from './queries.ts';
import { useSuppliesText } from './words.ts';

/** What nobody should pack with, since its last good day is past or will be on the packing day. */
export function Spoiling({ supplies }: { supplies: readonly Pick<Supply, 'id' | 'name' | 'spoiling'>[] }) {
  const t = useSuppliesText();
  const { format } = useHouse();
  return supplies.flatMap(({ id, name, spoiling }) =>
    spoiling.map(({ standing, useBy, pieces }) => (
      <p key={`${id} ${standing}`} className={standing === 'past' ? 'said' : 'said watch-said'} role="note">
        {t.spoils[standing](name, format.count(pieces), format.day(useBy))}
      </p>
    )),
  );
}

/** The same of what a day needs; nothing for whoever may not read its supplies. */
export function SpoilingOfDay({
  param,
}: {
  param: { readonly storehouse: string; readonly session: string };
}) {
  const { data } = useQuery(shoppingQuery(param));
  return data ? <Spoiling supplies={data.lines.map(({ supply }) => supply)} /> : null;
}
