import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve } from '../../scripts/serve.mjs';

const POLICY = `<meta http-equiv="Content-Security-Policy" content="default-src 'none'" />`;

let top: string;
let site: Awaited<ReturnType<typeof serve>>;

beforeAll(async () => {
  top = mkdtempSync(join(tmpdir(), 'serve-'));
  const root = join(top, 'dist');
  mkdirSync(join(root, 'assets'), { recursive: true });
  writeFileSync(join(root, 'index.html'), `${POLICY}home`);
  writeFileSync(join(root, 'assets', 'a.js'), 'a');
  writeFileSync(join(top, 'secret.txt'), 'secret');
  writeFileSync(join(top, 'dist-secret.txt'), 'secret');
  symlinkSync(join(top, 'secret.txt'), join(root, 'link.txt'));
  site = await serve({ root, prefix: '/below/' });
});

afterAll(async () => {
  await site.close();
  rmSync(top, { recursive: true });
});

/** Asks with the path as it stands; fetch would tidy it first. */
const ask = (path: string, method = 'GET'): Promise<{ status: number; text: string }> =>
  new Promise((resolve, reject) => {
    const { hostname, port } = new URL(site.url);
    const asked = request({ hostname, port, path, method }, (answer) => {
      let text = '';
      answer.on('data', (part) => {
        text += part;
      });
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, text }));
    });
    asked.on('error', reject).end();
  });

describe('serve', () => {
  it.each([
    ['/below/', 'home'],
    ['/below/?a=1', 'home'],
    ['/below/index.html', 'home'],
    ['/below/assets/a.js', 'a'],
    ['/below/assets/%61.js', 'a'],
  ])('answers %s', async (path, text) => {
    const answer = await ask(path);
    expect(answer.status).toBe(200);
    expect(answer.text).toContain(text);
  });

  it.each([
    ['/'],
    ['/below'],
    ['/below/none.js'],
    ['/below/assets/'],
    ['/below/../secret.txt'],
    ['/below/../dist-secret.txt'],
    ['/below/..%2fsecret.txt'],
    ['/below/%2e%2e/secret.txt'],
    ['/below/%2e%2e%2f%2e%2e%2fetc/passwd'],
    ['/below/assets/../../secret.txt'],
    ['/below/link.txt'],
    ['/below/%'],
    ['/below/%00'],
    ['/below/index.html%00.js'],
    ['//etc/passwd'],
  ])('has nothing at %s', async (path) => {
    expect(await ask(path)).toEqual({ status: 404, text: 'Not found\n' });
  });

  it('reads only', async () => {
    expect(await ask('/below/', 'POST')).toMatchObject({ status: 405 });
    expect(await ask('/below/', 'HEAD')).toEqual({ status: 200, text: '' });
  });

  it('sends types, the policy of the page, and lets only hashed files be kept', async () => {
    const page = await fetch(site.url);
    const script = await fetch(`${site.url}assets/a.js`);
    expect(page.headers.get('content-security-policy')).toBe(
      "default-src 'none'; frame-ancestors 'none'",
    );
    expect(page.headers.get('x-content-type-options')).toBe('nosniff');
    expect(page.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(page.headers.get('cache-control')).toBe('no-cache');
    expect(script.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
    expect(script.headers.get('cache-control')).toContain('immutable');
  });

  it('takes the next port when one is busy', async () => {
    const port = Number(new URL(site.url).port);
    const other = await serve({ root: join(top, 'dist'), port });
    expect(Number(new URL(other.url).port)).toBeGreaterThan(port);
    await other.close();
  });

  it('refuses a page without a policy', async () => {
    writeFileSync(join(top, 'index.html'), 'home');
    await expect(serve({ root: top })).rejects.toThrow('no content security policy');
  });
});
