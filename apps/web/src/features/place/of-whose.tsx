import { Link } from '@tanstack/react-router';
import { type ReactNode, useState } from 'react';
import { useText } from '../../text/taste.ts';
import { Choice } from '../../ui/field.tsx';
import { type House, useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { keepsStore, type Whose } from './queries.ts';

/** Whose stock somebody means before they choose: their own, or the store's if they have none. */
export const whoseFirst = ({ household }: House): Whose => (household === null ? 'common' : 'household');

type ChoiceProps = {
  label: string;
  owners: Readonly<Record<Whose, string>>;
  of: Whose;
  onChange: (of: Whose) => void;
};

/** The choice of whoever has stock at home and keeps the store's; for everybody else there is none. */
export function WhoseChoice({ label, owners, of, onChange }: ChoiceProps) {
  const house = useHouse();
  if (house.household === null || !keepsStore(house)) return null;
  return (
    <Choice
      label={label}
      value={of}
      options={(['household', 'common'] as const).map((value) => ({ value, name: owners[value] }))}
      onChange={(value) => onChange(value as Whose)}
    />
  );
}

type PageProps = Pick<ChoiceProps, 'label' | 'owners'> & {
  /** Whose the address asks for, where this person may see it. */
  first?: Whose | undefined;
  back: { to: '/s/$storehouse/shelf' | '/s/$storehouse/places'; name: string };
  children: (of: Whose) => ReactNode;
};

/** A page about what a household has at home, or about common stock for whoever keeps it. */
export function OfWhose({ back, label, owners, first, children }: PageProps) {
  const t = useText();
  const house = useHouse();
  const [of, setOf] = useState(first === 'common' && keepsStore(house) ? first : whoseFirst(house));
  if (house.household === null && !keepsStore(house)) return <h1>{t.noHousehold}</h1>;
  return (
    <>
      <Link className="who" to={back.to} params={{ storehouse: house.storehouse }}>
        <BackIcon />
        {back.name}
      </Link>
      <WhoseChoice label={label} owners={owners} of={of} onChange={setOf} />
      {children(of)}
    </>
  );
}
