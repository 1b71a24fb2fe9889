import { en } from '../../text/en/split.ts';
import { es } from '../../text/es/split.ts';
import { useWords } from '../../text/taste.ts';

export const useSplitText = () => useWords({ en, es });
