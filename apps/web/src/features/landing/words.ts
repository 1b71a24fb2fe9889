import { en } from '../../text/en/landing.ts';
import { es } from '../../text/es/landing.ts';
import { useWords } from '../../text/taste.ts';

export const useLandingText = () => useWords({ en, es });
