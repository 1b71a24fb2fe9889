import { en } from '../../text/en/calendar.ts';
import { es } from '../../text/es/calendar.ts';
import { useWords } from '../../text/taste.ts';

export const useCalendarText = () => useWords({ en, es });
