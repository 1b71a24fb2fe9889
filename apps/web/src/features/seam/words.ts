import { en } from '../../text/en/seam.ts';
import { es } from '../../text/es/seam.ts';
import { useWords } from '../../text/taste.ts';

export const useSeamText = () => useWords({ en, es });
export type SeamText = typeof en;
