import { useQuery } from '@tanstack/react-query';
import { useHouse } from '../../ui/house.ts';
import type { LogQueue } from '../packing/use-log.ts';
import { watchQuery } from './queries.ts';
import { machinesHere } from './watch-here.ts';
import { useSeamText } from './words.ts';

/** Beside the key at the line: what is out, by the book or by a check that waits on this phone still. */
export function StoppedHere({ log }: { log: LogQueue }) {
  const t = useSeamText();
  const { format } = useHouse();
  const watch = useQuery(watchQuery(log.param)).data;
  if (!watch) return null;
  // What is out and stands elsewhere stops nobody here.
  const isHere = (machine: string) =>
    watch.lines.some((line) => line.machine.id === machine) ||
    log.waiting.some(({ act }) => act.kind === 'check' && act.json.machineId === machine);
  return machinesHere(watch, log.waiting).map(({ id, name, outSince }) =>
    outSince === null || !isHere(id) ? null : (
      <p key={id} className="said" role="alert">
        {t.outSays(name, format.instant(outSince))}
      </p>
    ),
  );
}
