import { longestQueue, soonerMinutes } from '@sheafbook/packing';
import { useQuery } from '@tanstack/react-query';
import { useHouse } from '../../ui/house.ts';
import { type LinePlan, type LogBody, logQuery, type OfSession } from './queries.ts';
import { usePackingText } from './words.ts';

type Running = Pick<LogBody, 'queues' | 'pours'>;

/**
 * Where a line jams: while it runs the station with the longest queue over the last ten containers, with what one person more
 * there would buy by the plan's own times; else, and where nobody told of a queue, the station that the plan says.
 */
export function useJam(): (line: LinePlan, lineNo: number, running: Running | null) => string {
  const t = usePackingText();
  const { format } = useHouse();
  const nameOf = (station: string) => t.stations[station as keyof typeof t.stations] ?? station;
  return (line, lineNo, running) => {
    const cycleSeconds = line.cycleSeconds ?? 0;
    const seconds = format.count(Math.round(cycleSeconds));
    const planned = line.bottleneck.map(nameOf).join(', ');
    if (running === null) return t.jamPlanned(planned, seconds);
    const closed = running.pours.filter((pour) => pour.line === lineNo && !pour.isUndone);
    const longest = longestQueue(
      line.blocks.flatMap(({ stations }) => stations),
      running.queues
        .filter((queue) => queue.line === lineNo)
        .map(({ saidAt, ...queue }) => ({ ...queue, saidAtMs: Date.parse(saidAt) })),
      closed.map(({ pouredAt }) => Date.parse(pouredAt)),
    );
    if (longest === null) return `${t.jamPlanned(planned, seconds)} ${t.jamUntold}`;
    const block = line.blocks.find(({ stations }) => stations.includes(longest.station));
    const sooner = soonerMinutes({
      ...{ cycleSeconds, oneMoreSeconds: block?.oneMoreSeconds ?? cycleSeconds },
      containersLeft: line.containers - closed.length,
    });
    return [
      t.jamNow(nameOf(longest.station), format.count(Math.max(1, Math.round(longest.waiting)))),
      sooner > 0 ? t.jamOneMore(sooner) : t.jamOneMoreNothing,
    ].join(' ');
  };
}

/** The same on the lead's first page; while the day runs, by its log. */
export function Jam({
  line,
  lineNo,
  runs,
}: {
  line: LinePlan;
  lineNo: number;
  /** The day, where it runs. */
  runs: OfSession | null;
}) {
  const say = useJam();
  const { data } = useQuery({
    ...logQuery(runs ?? { storehouse: '', session: '' }),
    enabled: runs !== null,
  });
  return say(line, lineNo, (runs && data) ?? null);
}
