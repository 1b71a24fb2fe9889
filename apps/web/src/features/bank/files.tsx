import { useQuery } from '@tanstack/react-query';
import { CsvLink } from '../../ui/csv-link.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { filesQuery } from './queries.ts';
import { useBankText } from './words.ts';

/** The newest files that were taken in, so that a month is not fetched twice or forgotten. */
export function FilesTaken() {
  const words = useBankText();
  const { storehouse, format } = useHouse();
  return (
    <Loaded reading={useQuery(filesQuery({ storehouse }))}>
      {({ files }) =>
        files.length === 0 ? null : (
          <section className="stack">
            <h2>{words.filesTaken}</h2>
            <Ledger
              caption={words.filesTaken}
              columns={[
                { name: words.takenOn },
                { name: words.file },
                { name: words.newLines, isNumber: true },
                { name: words.takenInBy },
              ]}
              rows={files.map(({ id, takenAt, name, newLines, takenBy }) => ({
                key: id,
                cells: [format.instant(takenAt), name, String(newLines), takenBy],
              }))}
            />
            <CsvLink list="bank/files">{words.asCsv}</CsvLink>
          </section>
        )
      }
    </Loaded>
  );
}
