import { en } from '../../text/en/treatment.ts';
import { es } from '../../text/es/treatment.ts';
import { useWords } from '../../text/taste.ts';

export const useTreatmentText = () => useWords({ en, es });
