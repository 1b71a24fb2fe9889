import { startEmbedded } from '@sheafbook/db';

// Holds an embedded server on the data folder of the first argument until it is killed.
const [dataFolder = ''] = process.argv.slice(2);
const { adminUrl, port } = await startEmbedded({ dataFolder, persistent: true });
console.log(JSON.stringify({ adminUrl, port }));
setInterval(() => undefined, 60_000);
