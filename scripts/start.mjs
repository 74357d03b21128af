// npm start: installs what is missing, builds, serves, and ends with the address to open.
import { at, build, ensureModules } from './run.mjs';

const fail = () => process.exit(1);
if ((await ensureModules()) !== 0) fail();
if ((await build()) !== 0) fail();
const { serve } = await import('./serve.mjs');
const { url } = await serve({ root: at('dist'), port: Number(process.env['PORT'] ?? 4173) });
console.log('Handspan is running; Ctrl+C stops it. Open');
console.log(url);
