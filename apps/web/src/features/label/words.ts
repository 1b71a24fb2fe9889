import { en } from '../../text/en/label.ts';
import { es } from '../../text/es/label.ts';
import { useWords } from '../../text/taste.ts';

export const useLabelText = () => useWords({ en, es });
