import type { Face } from './fonts.ts';

export type Style = { readonly face: Face; readonly points: number };
