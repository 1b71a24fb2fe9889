import { compareText } from '@sheafbook/units';

/**
 * What a food leaves behind where it ran: its allergens, and gluten, also where it may only have been near it.
 * Units: none. Shape: sorted, each once. Errors: none.
 */
export const carriedBy = ({
  allergens,
  gluten,
}: {
  readonly allergens: readonly string[];
  readonly gluten: string;
}): string[] => [...new Set([...allergens, ...(gluten === 'no' ? [] : ['gluten'])])].toSorted();

/** A container that a line closed, by its number there, and the allergens and gluten of what went in. Units: none. Errors: none. */
export type LinePour = {
  readonly containerId: string;
  readonly sessionId: string;
  readonly line: number;
  readonly serial: number;
  readonly carries: readonly string[];
};

/** A container that ran after reached food, and what that may have left in it. Units: none. Errors: none. */
export type CarryOver = {
  readonly containerId: string;
  /** The last reached container that ran before it on the line. */
  readonly afterContainerId: string;
  /** What the reached food carries and this one's own does not, in their order. */
  readonly newAllergens: readonly string[];
};

/**
 * Containers that a line closed after reached food on the same day, which a rest of it may have got into: a warning, no hold.
 * A full clean between two foods is planned but nobody writes down that it was done, so the whole rest of the day counts.
 * Units: none. Shape: in the order in which the lines closed them; reached ones are left out. Errors: none.
 * Source: job map 12, "carry-over edge".
 */
export function carryOvers(
  pours: readonly LinePour[],
  isReached: (containerId: string) => boolean,
): CarryOver[] {
  const inOrder = pours.toSorted(
    (a, b) => compareText(a.sessionId, b.sessionId) || a.line - b.line || a.serial - b.serial,
  );
  const found: CarryOver[] = [];
  let last: LinePour | undefined;
  let met = new Set<string>();
  for (const pour of inOrder) {
    if (last && (last.sessionId !== pour.sessionId || last.line !== pour.line)) last = undefined;
    if (isReached(pour.containerId)) {
      met = new Set([...(last ? met : []), ...pour.carries]);
      last = pour;
    } else if (last)
      found.push({
        ...{ containerId: pour.containerId, afterContainerId: last.containerId },
        newAllergens: [...met].filter((allergen) => !pour.carries.includes(allergen)),
      });
  }
  return found;
}

/**
 * What may have got into containers from whatever their line closed before them on the same day, beyond what is their own.
 * Units: none. Shape: by container, in the order in which it was met; empty where nothing was. Errors: none.
 * Source: job map 12, "carry-over edge": a line that was not cleaned in full in between.
 */
export function metOnLine(pours: readonly LinePour[]): Map<string, string[]> {
  const metOn = new Map<string, Set<string>>();
  const met = new Map<string, string[]>();
  for (const { containerId, sessionId, line, carries } of pours.toSorted((a, b) => a.serial - b.serial)) {
    const key = `${sessionId} ${line}`;
    const before = metOn.get(key) ?? new Set<string>();
    met.set(
      containerId,
      [...before].filter((allergen) => !carries.includes(allergen)),
    );
    metOn.set(key, new Set([...before, ...carries]));
  }
  return met;
}
