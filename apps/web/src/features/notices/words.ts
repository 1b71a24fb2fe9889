import { en } from '../../text/en/notices.ts';
import { es } from '../../text/es/notices.ts';
import { useWords } from '../../text/taste.ts';

export const useNoticeText = () => useWords({ en, es });
