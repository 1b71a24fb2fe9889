import { en } from '../../text/en/tare.ts';
import { es } from '../../text/es/tare.ts';
import { useWords } from '../../text/taste.ts';

export const useTareText = () => useWords({ en, es });
