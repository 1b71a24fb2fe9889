import { en } from '../../text/en/eat-first.ts';
import { es } from '../../text/es/eat-first.ts';
import { useWords } from '../../text/taste.ts';

/** The few words of what to eat first, which come without those of the whole rotation. */
export const useEatFirstText = () => useWords({ en, es });
