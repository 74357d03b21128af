import { gzipSync } from 'node:zlib';
import type { Response } from '@playwright/test';
import type { Measure, Visit } from './bench.ts';

interface Load {
  readonly asked: readonly string[];
  readonly responses: readonly Response[];
}

const visit = async ({ url, browser }: Visit): Promise<Load> => {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  const page = await context.newPage();
  const responses: Response[] = [];
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  page.on('response', (response) => responses.push(response));
  await page.goto(url, { waitUntil: 'networkidle' });
  return { asked, responses };
};

const isScript = (response: Response): boolean => response.request().resourceType() === 'script';

const kilobytes = async (responses: readonly Response[]): Promise<number> => {
  const bodies = await Promise.all(responses.map((response) => response.body()));
  return bodies.reduce((sum, body) => sum + gzipSync(body).length, 0) / 1000;
};

export const measure: Measure = async (place) => {
  const { asked, responses } = await visit(place);
  const { origin } = new URL(place.url);
  const elsewhere = asked.filter((address) => new URL(address).origin !== origin);
  for (const address of asked) console.log(`  asks for ${address.replace(origin, '')}`);
  return [
    {
      name: 'first load: JavaScript after gzip',
      figure: await kilobytes(responses.filter(isScript)),
      unit: 'kB',
      limit: 130,
    },
    { name: 'first load: everything after gzip', figure: await kilobytes(responses), unit: 'kB' },
    { name: 'first load: requests', figure: asked.length, unit: '' },
    { name: 'first load: requests to other hosts', figure: elsewhere.length, unit: '', limit: 0 },
  ];
};
