/** What closes a container and can close it badly. Units: none. Errors: none. */
export type SealMachineKind = 'can-seamer' | 'heat-sealer' | 'vacuum-sealer';

const CLOSED_BY: readonly (readonly [RegExp, readonly SealMachineKind[]])[] = [
  [/^can-/, ['can-seamer']],
  [/^pouch-/, ['heat-sealer', 'vacuum-sealer']],
  [/^pail-.*-lined$/, ['heat-sealer']],
  [/^jar-/, ['vacuum-sealer']],
  [/^(pail-.*-bare|bottle-.*|drum-.*)$/, []],
];

/**
 * Whether a machine of this kind is what closes such a container. A kind that the storehouse made up itself may be closed by
 * any machine, so that a doubt is never overlooked; a lid that a hand turns is closed by none.
 * Units: none. Errors: none. Source: common practice, no source.
 */
export function closesKind(machine: SealMachineKind, kindCode: string): boolean {
  const known = CLOSED_BY.find(([pattern]) => pattern.test(kindCode));
  return known === undefined || known[1].includes(machine);
}
