import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { Figures, Ledger } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { ChecksOfItem } from '../scale/checks-of-item.tsx';
import { ChecksOfThermometer } from '../scale/checks-of-thermometer.tsx';
import { BookForm } from './book-form.tsx';
import { Cautions } from './cautions.tsx';
import { PhotosOfItem } from './photos-of-item.tsx';
import { type Item, itemLoansQuery, itemQuery, maintenanceQuery, type OfItem } from './queries.ts';
import { UnitCare } from './unit-care.tsx';
import { UnitState } from './unit-state.tsx';
import { UseOfItem } from './use-page.tsx';
import { useEquipmentText } from './words.ts';

/** One thing: its terms and cautions, its parts and pieces, when it is free, and what became of it so far. */
export function ItemPage() {
  const param = useParams({ from: '/s/$storehouse/equipment/$item' });
  const reading = useQuery(itemQuery(param));
  return (
    <Loaded isPage reading={reading}>
      {(item) => <Sheet param={param} item={item} />}
    </Loaded>
  );
}

function Sheet({ param, item }: { param: OfItem; item: Item }) {
  const words = useEquipmentText();
  const { household, duties } = useHouse();
  const keeps = duties.includes('equipment_keeper') || duties.includes('coordinator');
  useTitle(item.name);
  return (
    <>
      <Link className="who" to="/s/$storehouse/equipment" params={{ storehouse: param.storehouse }}>
        <BackIcon />
        {words.title}
      </Link>
      <h1>{item.name}</h1>
      <p className="soft">
        {[item.kindNote, item.keptWhere && `${words.keptWhere}: ${item.keptWhere}`]
          .filter(Boolean)
          .join(' · ')}
      </p>
      <Cautions item={item} />
      <div className="cols">
        <div className="stack">
          {item.units.length === 0 || household === null ? null : <BookForm item={item} />}
          <Terms item={item} />
          <Parts item={item} />
        </div>
        <div className="stack">
          <Pieces item={item} keeps={keeps} />
          {item.isScale ? <ChecksOfItem item={item.id} /> : null}
          {item.isThermometer ? <ChecksOfThermometer item={item.id} /> : null}
          {keeps ? (
            <div>
              <Link className="btn" to="/s/$storehouse/equipment/$item/change" params={param}>
                {words.edit}
              </Link>
            </div>
          ) : null}
          <PhotosOfItem item={item} keeps={keeps} />
          <Maintenance param={param} />
          {keeps ? <UseOfItem item={param.item} /> : null}
          <History param={param} keeps={keeps} />
        </div>
      </div>
    </>
  );
}

function Terms({ item }: { item: Item }) {
  const words = useEquipmentText();
  const { format } = useHouse();
  const money = (name: string, minorUnits: number) => ({
    ...{ name, value: format.money(minorUnits), unit: format.currency },
  });
  return (
    <section className="stack">
      <h2>{words.terms}</h2>
      <Figures
        rows={[
          money(words.deposit, item.depositMinorUnits),
          money(words.fee, item.feeMinorUnits),
          money(words.lateFee, item.lateFeeMinorUnits),
          ...(item.valueMinorUnits === null ? [] : [money(words.worth, item.valueMinorUnits)]),
          { name: words.longest, value: words.days(item.longestDays) },
          { name: words.afterUse, value: words.hours(Math.ceil(item.postMinutes / 60)) },
        ]}
      />
      {item.damageNote === '' ? null : <p>{item.damageNote}</p>}
    </section>
  );
}

function Parts({ item }: { item: Item }) {
  const words = useEquipmentText();
  const { format } = useHouse();
  if (item.parts.length === 0)
    return item.partsList === '' ? null : (
      <section className="stack">
        <h2>{words.parts}</h2>
        <p className="soft">{`${words.asWritten}: ${item.partsList}`}</p>
      </section>
    );
  return (
    <section className="stack">
      <h2>{words.parts}</h2>
      <Ledger
        caption={words.parts}
        columns={[
          { name: words.part },
          { name: words.count, isNumber: true },
          { name: words.partWorth, isNumber: true },
        ]}
        rows={item.parts.map((part) => ({
          key: part.id,
          cells: [
            part.isCritical ? `${part.name} (${words.critical})` : part.name,
            String(part.pieces),
            format.money(part.valueMinorUnits),
          ],
        }))}
      />
    </section>
  );
}

function Pieces({ item, keeps }: { item: Item; keeps: boolean }) {
  const words = useEquipmentText();
  const { format } = useHouse();
  return (
    <section className="stack">
      <h2>{words.pieceTitle}</h2>
      {item.units.length === 0 ? <p className="soft">{words.notLent}</p> : null}
      {item.units.map((unit) => (
        <div key={unit.id} className="stack">
          <p className="row place">
            <b>{words.unitCode(unit.unitNo, unit.code)}</b>
            <UnitState unit={unit} />
          </p>
          <p className="soft">
            {[
              unit.conditionNote,
              ...unit.missing.map(({ name, pieces }) => words.missing(name, pieces)),
              words.service(unit.service.usesSince, format.day(unit.service.sinceOn)),
              unit.service.usesLeft === null ? '' : words.usesLeft(unit.service.usesLeft),
              unit.service.daysLeft === null ? '' : words.daysLeft(unit.service.daysLeft),
            ]
              .filter(Boolean)
              .join(' · ')}
          </p>
          {keeps ? <UnitCare unit={unit} /> : null}
        </div>
      ))}
    </section>
  );
}

function Maintenance({ param }: { param: OfItem }) {
  const words = useEquipmentText();
  const { format } = useHouse();
  const reading = useQuery(maintenanceQuery(param));
  return (
    <section className="stack">
      <h2>{words.maintenance}</h2>
      <Loaded reading={reading}>
        {({ maintenance }) =>
          maintenance.length === 0 ? (
            <p className="soft">{words.noMaintenance}</p>
          ) : (
            <ul>
              {maintenance.map((row) => (
                <li key={row.id}>{`${format.day(row.doneOn)}: ${row.what} (${row.recordedBy})`}</li>
              ))}
            </ul>
          )
        }
      </Loaded>
    </section>
  );
}

function History({ param, keeps }: { param: OfItem; keeps: boolean }) {
  const words = useEquipmentText();
  const { format } = useHouse();
  const reading = useQuery(itemLoansQuery(param));
  return (
    <section className="stack">
      <h2>{words.history}</h2>
      <Loaded reading={reading}>
        {({ loans }) =>
          loans.length === 0 ? (
            <p className="soft">{keeps ? words.noHistory : words.noOwnHistory}</p>
          ) : (
            <ul className="list">
              {loans.map((loan) => (
                <li key={loan.id}>
                  <Link to="/s/$storehouse/equipment/$item/loans/$loan" params={{ ...param, loan: loan.id }}>
                    <span>
                      <b>{loan.household.name}</b>
                      <br />
                      <span className="soft">
                        {[
                          `${words.out} ${format.instant(loan.outAt)}`,
                          `${words.due} ${format.instant(loan.dueAt)}`,
                          loan.inAt === null ? '' : `${words.back} ${format.instant(loan.inAt)}`,
                        ]
                          .filter(Boolean)
                          .join(' · ')}
                      </span>
                    </span>
                  </Link>
                </li>
              ))}
            </ul>
          )
        }
      </Loaded>
    </section>
  );
}
