import { en } from '../../text/en/way-to-keep.ts';
import { es } from '../../text/es/way-to-keep.ts';
import { useWords } from '../../text/taste.ts';

export const useWaysText = () => useWords({ en, es });
