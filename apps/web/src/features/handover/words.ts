import { en } from '../../text/en/handover.ts';
import { es } from '../../text/es/handover.ts';
import { useWords } from '../../text/taste.ts';

export const useHandoverText = () => useWords({ en, es });

/** Duties by their names, one after another. */
export function useDutiesNamed() {
  const { dutyNames } = useHandoverText();
  return (duties: readonly string[]): string => duties.map((duty) => dutyNames[duty] ?? duty).join(', ');
}
