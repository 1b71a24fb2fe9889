import { en } from '../../text/en/year-of-mass.ts';
import { es } from '../../text/es/year-of-mass.ts';
import { useWords } from '../../text/taste.ts';

export const useYearOfMassText = () => useWords({ en, es });
