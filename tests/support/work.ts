import { type Outside, openLog, runWorkOnce, TASKS, type WorkTasks } from '@sheafbook/api';
import type { TestApp } from './app.ts';

/** Does what is due in the background at the test's clock, with what follows from it, and says how it ended. */
export function doWork(app: TestApp, options: { tasks?: WorkTasks; mail?: Outside['mail'] } = {}) {
  return runWorkOnce({
    outside: { ...app.outside, mail: options.mail },
    tasks: options.tasks ?? TASKS,
    log: openLog(process.env.TEST_LOG ?? 'silent'),
  });
}
