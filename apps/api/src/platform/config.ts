import { z } from 'zod';

const environment = z.object({
  PORT: z.coerce.number().int().min(0).max(65_535).default(4180),
  HOST: z.string().default('127.0.0.1'),
  PUBLIC_URL: z.url().optional(),
  LOG_LEVEL: z.enum(['fatal', 'error', 'warn', 'info', 'debug', 'silent']).default('info'),
});

export type Config = {
  readonly port: number;
  readonly host: string;
  /** Where members reach the server; its scheme decides which cookie they get. */
  readonly publicUrl: string;
  /** Whether that address was given; without it a server knows only its own. */
  readonly isPublicUrlSet: boolean;
  readonly isSecure: boolean;
  readonly logLevel: string;
};

/** Reads the settings that are not the database's. Errors: ZodError naming the variable. */
export function readConfig(env: Readonly<Record<string, string | undefined>>): Config {
  const { PORT, HOST, PUBLIC_URL, LOG_LEVEL } = environment.parse(env);
  const publicUrl = PUBLIC_URL ?? `http://${HOST}:${PORT}`;
  return {
    port: PORT,
    host: HOST,
    publicUrl,
    isPublicUrlSet: PUBLIC_URL !== undefined,
    isSecure: publicUrl.startsWith('https://'),
    logLevel: LOG_LEVEL,
  };
}
