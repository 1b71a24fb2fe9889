import type { ReactNode } from 'react';
import { useHouse } from './house.ts';

type Props = {
  /** What the API lists, below the storehouse: `claims-answered`, or with what it is asked, `bank/lines?state=open`. */
  list: string;
  children: ReactNode;
};

/** A whole list as a spreadsheet. */
export function CsvLink({ list, children }: Props) {
  const { storehouse } = useHouse();
  const href = `/api/storehouses/${storehouse}/${list}${list.includes('?') ? '&' : '?'}format=csv`;
  return (
    <a className="btn quiet" href={href} download>
      {children}
    </a>
  );
}
