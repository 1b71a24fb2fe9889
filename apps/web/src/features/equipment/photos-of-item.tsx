import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Choice } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Photos } from '../photo/photos.tsx';
import { type Item, itemLoansQuery, type Loan } from './queries.ts';
import { useEquipmentText } from './words.ts';

/** A thing and each of its parts as they look when all is well: what whoever ticks them compares with. */
export function PhotosOfItem({ item, keeps }: { item: Item; keeps: boolean }) {
  const words = useEquipmentText();
  const [part, setPart] = useState('');
  return (
    <section className="stack">
      <h2>{words.photosOfItem}</h2>
      {item.parts.length === 0 ? null : (
        <Choice
          label={words.photosShow}
          value={part}
          options={[
            { value: '', name: words.wholeThing },
            ...item.parts.map(({ id, name }) => ({ value: id, name })),
          ]}
          onChange={setPart}
        />
      )}
      <Photos
        key={part}
        shows={part === '' ? 'equipment' : 'part'}
        item={item.id}
        thingId={part || item.id}
        isTaker={keeps}
      />
    </section>
  );
}

type LoanProps = { loan: Pick<Loan, 'id' | 'itemId' | 'inAt' | 'outAgainAt'> };

/** How a piece looked when it went out: what a word about damage is judged by. */
export function PhotosOut({ loan }: LoanProps) {
  const words = useEquipmentText();
  return (
    <section className="stack">
      <h2>{words.photosOut}</h2>
      <Photos shows="loan-out" item={loan.itemId} thingId={loan.id} isTaker={loan.inAt === null} />
    </section>
  );
}

/** The same, and how it looks when it comes back. */
export function PhotosOfLoan({ loan }: LoanProps) {
  const words = useEquipmentText();
  return (
    <>
      <PhotosOut loan={loan} />
      <section className="stack">
        <h2>{words.photosBack}</h2>
        <Photos shows="loan-back" item={loan.itemId} thingId={loan.id} isTaker={loan.outAgainAt === null} />
      </section>
    </>
  );
}

/** What was just handed out, photographed before it leaves the door. */
export function PhotosOfGone({ item, booking }: { item: string; booking: string }) {
  const { storehouse } = useHouse();
  return (
    <Loaded reading={useQuery(itemLoansQuery({ storehouse, item }))}>
      {({ loans }) => {
        const loan = loans.find(({ bookingId }) => bookingId === booking);
        return loan ? <PhotosOut loan={loan} /> : null;
      }}
    </Loaded>
  );
}
