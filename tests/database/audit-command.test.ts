import { once } from 'node:events';
import { text } from 'node:stream/consumers';
import { expect, onTestFinished, test, vi } from 'vitest';
import { startChild } from '../support/child.ts';
import { makeTemporaryFolder } from '../support/temporary-folder.ts';

async function runAudit(...args: string[]) {
  const child = startChild('apps/api/src/audit-command.ts', args);
  const [printed, [exitCode]] = await Promise.all([
    child.stdout ? text(child.stdout) : '',
    once(child, 'exit'),
  ]);
  return { printed, exitCode };
}

test('the audit command opens a book on its own server, prints its findings alone, and exits with 0', async () => {
  vi.stubEnv('DATABASE_URL', '');
  vi.stubEnv('SHEAFBOOK_DATA', `${makeTemporaryFolder()}/book`);
  onTestFinished(() => void vi.unstubAllEnvs());
  expect(await runAudit('--json')).toEqual({ printed: '[]\n', exitCode: 0 });
});

test('the audit command exits with 2 when it is asked for something that it does not know', async () => {
  expect(await runAudit('--nonsense')).toEqual({ printed: '', exitCode: 2 });
});
