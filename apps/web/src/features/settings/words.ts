import { en } from '../../text/en/settings.ts';
import { es } from '../../text/es/settings.ts';
import { useWords } from '../../text/taste.ts';

export const useSettingsText = () => useWords({ en, es });
