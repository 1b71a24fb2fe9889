import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { equipmentQuery } from './queries.ts';
import { useImportText } from './words.ts';

/** The group's own things by name: where each is kept and what belongs to it. */
export function Equipment() {
  const t = useImportText();
  const { storehouse, format } = useHouse();
  const [wanted, setWanted] = useState('');
  const reading = useQuery(equipmentQuery({ storehouse }));
  useTitle(t.equipment);
  return (
    <Loaded reading={reading}>
      {({ items }) => {
        const shown = items.filter(({ name }) => name.toLowerCase().includes(wanted.trim().toLowerCase()));
        return (
          <>
            <h1>{items.length === 0 ? t.noEquipment : t.equipmentTitle(items.length)}</h1>
            {items.length === 0 ? null : (
              <Field
                label={t.findEquipment}
                type="search"
                value={wanted}
                onChange={(event) => setWanted(event.target.value)}
              />
            )}
            <ul className="list">
              {shown.map((item) => (
                <li key={item.id} className="stack">
                  <div className="row">
                    <b>{item.name}</b>
                    {item.valueMinorUnits === null ? null : (
                      <span className="num">{format.money(item.valueMinorUnits)}</span>
                    )}
                  </div>
                  <p className="soft">
                    {[item.kindNote, item.partsList, item.keptWhere].filter(Boolean).join('. ')}
                  </p>
                </li>
              ))}
            </ul>
          </>
        );
      }}
    </Loaded>
  );
}
