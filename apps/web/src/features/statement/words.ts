import { en } from '../../text/en/statement.ts';
import { es } from '../../text/es/statement.ts';
import { useWords } from '../../text/taste.ts';

export const useStatementText = () => useWords({ en, es });
