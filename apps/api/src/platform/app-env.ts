import type { Logger } from 'pino';
import type { Actor } from './actor.ts';
import type { Config } from './config.ts';
import type { Outside } from './context.ts';
import type { Session } from './session.ts';

/** What every handler finds in its context. `actor` is there behind `memberOnly` alone, `session` behind `signedIn`. */
export type AppEnv = {
  Variables: {
    requestId: string;
    outside: Outside;
    config: Config;
    log: Logger;
    session: Session;
    actor: Actor;
  };
};
