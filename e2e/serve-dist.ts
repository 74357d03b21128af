import { at } from '../scripts/run.mjs';
import { serve } from '../scripts/serve.mjs';

/** Serves dist/ while the specs run; they find the address in HANDSPAN_URL. */
export default async function serveDist(): Promise<() => Promise<void>> {
  const { url, close } = await serve({ root: at('dist') });
  process.env['HANDSPAN_URL'] = url;
  return close;
}
