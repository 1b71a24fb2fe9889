import { pgSchema } from 'drizzle-orm/pg-core';

/** The schema of every storehouse's tables. The migrations come first; these tables follow them, and a test compares the two. */
export const book = pgSchema('book');
