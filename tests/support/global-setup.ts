import type { TestProject } from 'vitest/node';
import { dropTemplate, makeTemplate, type Template } from './template.ts';
import { startTestServer, type TestServer } from './test-server.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    template: Template;
  }
}

type Shared = { server: TestServer; template: Template };
type Place = { shared?: Promise<Shared>; users: number };

/** Each project of a run loads this file for itself, so what they share lies where all of them find it. */
const KEY = Symbol.for('sheafbook: the database of the tests');
const rooms = globalThis as unknown as Record<symbol, Place | undefined>;

/** Once per run, for all of its projects: a server, and a migrated template that each test file clones. */
export default async function setUp(project: TestProject) {
  const place: Place = rooms[KEY] ?? { users: 0 };
  rooms[KEY] = place;
  place.users += 1;
  place.shared ??= start();
  const { server, template } = await place.shared;
  project.provide('template', template);
  return async () => {
    place.users -= 1;
    if (place.users > 0) return;
    rooms[KEY] = undefined;
    await dropTemplate(template);
    await server.stop();
  };
}

async function start(): Promise<Shared> {
  const server = await startTestServer(process.env);
  console.log(`Database of the tests: ${server.where}.`);
  try {
    return { server, template: await makeTemplate(server.adminUrl) };
  } catch (error) {
    await server.stop();
    throw error;
  }
}
