import { en } from '../../text/en/people.ts';
import { es } from '../../text/es/people.ts';
import { useWords } from '../../text/taste.ts';

export const usePeopleText = () => useWords({ en, es });
