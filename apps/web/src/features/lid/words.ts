import { en } from '../../text/en/lid.ts';
import { es } from '../../text/es/lid.ts';
import { useWords } from '../../text/taste.ts';

export const useLidText = () => useWords({ en, es });
