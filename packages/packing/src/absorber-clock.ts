import { assert, assertWhole } from '@sheafbook/units';

/** How long a packet may lie open. Units: seconds. Errors: none. Source: 30 minutes published; 20 is trade practice. */
export const ABSORBER_WINDOW = {
  windowSeconds: 20 * 60,
  stopSeconds: 30 * 60,
  ruinedSeconds: 4 * 60 * 60,
} as const;

/** Where an open pack stands. Units: none. Errors: none. */
export type AbsorberState = 'fresh' | 'jar-them-now' | 'past-window' | 'stop' | 'discard';

/**
 * What to do with a pack that was opened so long ago: a warning at 80 % of the window, a stop at 30 minutes, and never
 * seal a packet that was out for over four hours.
 * Units: seconds. Errors: AssertionError when the time is below zero.
 * Source: a published instruction page for 30 minutes and 4 hours; 20 minutes is common practice, no source.
 */
export function judgeOpenPack(
  openSeconds: number,
  windowSeconds: number = ABSORBER_WINDOW.windowSeconds,
): AbsorberState {
  assert(openSeconds >= 0, 'a pack is not opened in the future');
  assert(windowSeconds > 0, 'a window lasts');
  if (openSeconds > ABSORBER_WINDOW.ruinedSeconds) return 'discard';
  if (openSeconds >= ABSORBER_WINDOW.stopSeconds) return 'stop';
  if (openSeconds >= windowSeconds) return 'past-window';
  return openSeconds * 5 >= windowSeconds * 4 ? 'jar-them-now' : 'fresh';
}

/**
 * How a pack of packets is used within its window: in how many jars it must be divided when it is opened.
 * Units: packets, seconds a container. Shape: `servedInWindow` containers that one window serves.
 * Errors: AssertionError when a count or a time is not above zero.
 */
export function planOpenPack({
  packets,
  packetsPerContainer,
  secondsPerContainer,
  windowSeconds = ABSORBER_WINDOW.windowSeconds,
}: {
  readonly packets: number;
  readonly packetsPerContainer: number;
  readonly secondsPerContainer: number;
  readonly windowSeconds?: number;
}): { readonly servedInWindow: number; readonly jars: number; readonly packSeconds: number } {
  assertWhole(packets, 'packets');
  assertWhole(packetsPerContainer, 'packetsPerContainer');
  assert(packets > 0 && packetsPerContainer > 0, 'a pack has packets, a container takes one');
  assert(secondsPerContainer > 0, 'a container takes time');
  const servedInWindow = Math.floor(windowSeconds / secondsPerContainer);
  const packetsInWindow = Math.max(servedInWindow * packetsPerContainer, packetsPerContainer);
  const packSeconds = Math.ceil(packets / packetsPerContainer) * secondsPerContainer;
  return { servedInWindow, jars: Math.ceil(packets / packetsInWindow), packSeconds };
}

/**
 * Whether the next pack may be opened: only once the open one lasts no longer than a minute.
 * Units: packets left, packets used a minute. Errors: AssertionError when a figure is below zero.
 */
export function mayOpenNextPack(packetsLeft: number, packetsPerMinute: number): boolean {
  assert(packetsLeft >= 0 && packetsPerMinute >= 0, 'packets are not below zero');
  return packetsLeft <= packetsPerMinute;
}
