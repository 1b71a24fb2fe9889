import { en } from '../../text/en/intake.ts';
import { es } from '../../text/es/intake.ts';
import { useWords } from '../../text/taste.ts';

export const useIntakeText = () => useWords({ en, es });
