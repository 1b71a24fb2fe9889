import { en, type ReminderWords } from './en.ts';
import { es } from './es.ts';

export const wordsOf = (language: string): ReminderWords => (language === 'es' ? es : en);
