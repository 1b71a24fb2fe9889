import { migrate } from '@sheafbook/db';

// Migrates the database of the first argument from the folder of the second, and prints what it ran.
const [url = '', folder] = process.argv.slice(2);
console.log(JSON.stringify(await migrate(url, folder)));
