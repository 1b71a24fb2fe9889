/** The neighbour's household that this tab acts for. It ends with the tab, so nobody helps on without knowing it. */
export type Acting = {
  readonly storehouse: string;
  readonly household: string;
  readonly householdName: string;
};

const PLACE = 'sheafbook.acting';
let kept = JSON.parse(sessionStorage.getItem(PLACE) ?? 'null') as Acting | null;

export const actingIn = (storehouse: string): Acting | null =>
  kept?.storehouse === storehouse ? kept : null;

/** Whom the page at this address acts for. */
export const actingHere = (): Acting | null => actingIn(/^\/s\/([^/]+)/.exec(location.pathname)?.[1] ?? '');

/** Begins on a fresh page, so that nothing of the one household stays on the screen of the other. */
export function startActing(acting: Acting): void {
  sessionStorage.setItem(PLACE, JSON.stringify(acting));
  location.assign(`/s/${acting.storehouse}`);
}

export function stopActing({ storehouse }: Pick<Acting, 'storehouse'>): void {
  forgetActing();
  location.assign(`/s/${storehouse}`);
}

/** Whoever signs out stops helping too. */
export function forgetActing(): void {
  kept = null;
  sessionStorage.removeItem(PLACE);
}
