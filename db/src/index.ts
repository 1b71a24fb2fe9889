export * from './administer.ts';
export * from './app-login.ts';
export * from './connect.ts';
export * from './database-url.ts';
export * from './embedded.ts';
export * from './migrate.ts';
export * from './open-database.ts';
export * from './roles.ts';
