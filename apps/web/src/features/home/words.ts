import { en } from '../../text/en/coverage.ts';
import { es } from '../../text/es/coverage.ts';
import { useWords } from '../../text/taste.ts';

/** The words of what needs me and of how long we last. */
export const useCoverageText = () => useWords({ en, es });
