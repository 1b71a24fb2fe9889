import type { Logger } from 'pino';
import type { Actor } from './actor.ts';
import type { Config } from './config.ts';
import type { Outside } from './context.ts';
import type { Session, SessionWithin } from './session.ts';

/** What every handler finds in its context. `actor` is there behind `memberOnly` alone, `session` behind `signedIn`. */
export type AppEnv = {
  Variables: {
    requestId: string;
    outside: Outside;
    config: Config;
    log: Logger;
    session: Session;
    /** What the login is in the storehouse of this address; `memberOnly` decides on it. */
    found: SessionWithin['actor'];
    actor: Actor;
  };
};
