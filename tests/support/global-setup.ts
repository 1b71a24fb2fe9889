import type { TestProject } from 'vitest/node';
import { dropTemplate, makeTemplate, type Template } from './template.ts';
import { startTestServer } from './test-server.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    template: Template;
  }
}

/** Once per run: a server, and a migrated template that each test file clones. */
export default async function setUp(project: TestProject) {
  const server = await startTestServer(process.env);
  console.log(`Database of the tests: ${server.where}.`);
  try {
    const template = await makeTemplate(server.adminUrl);
    project.provide('template', template);
    return async () => {
      await dropTemplate(template);
      await server.stop();
    };
  } catch (error) {
    await server.stop();
    throw error;
  }
}
