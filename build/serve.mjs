/** `node build/serve.mjs [PORT]`: serves the built bench page to a browser on this computer. */
import { servePage } from './setup/servePage.mjs';

const { address } = await servePage(Number(process.argv[2] ?? 0));
console.log(`The bench is at ${address} (on this computer only; stop with Ctrl+C).`);
