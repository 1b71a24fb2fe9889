import { en } from '../../text/en/books.ts';
import { es } from '../../text/es/books.ts';
import { useWords } from '../../text/taste.ts';

export const useBooksText = () => useWords({ en, es });
