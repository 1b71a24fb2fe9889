import { fileURLToPath } from 'node:url';
import { build } from 'vite';

/** The tests look at what a group would be served: a build of the app as it stands, not one for its makers. */
export default async function setUp() {
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  try {
    await build({ root: fileURLToPath(new URL('../../../apps/web', import.meta.url)), logLevel: 'warn' });
  } finally {
    process.env.NODE_ENV = before;
  }
}
