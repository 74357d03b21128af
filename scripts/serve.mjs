import { readFileSync } from 'node:fs';
import { readFile, realpath, stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, sep } from 'node:path';

/** @type {Record<string, string>} */
const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.wav': 'audio/wav',
  '.txt': 'text/plain; charset=utf-8',
};

/**
 * The policy stands in index.html; what a meta element cannot carry is added here.
 * @param {string} root
 */
const policyOf = (root) => {
  const html = readFileSync(join(root, 'index.html'), 'utf8');
  const policy = /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/.exec(html)?.[1];
  if (policy === undefined) throw new Error('index.html has no content security policy');
  return `${policy}; frame-ancestors 'none'`;
};

/** @param {string} root */
const headersOf = (root) => ({
  'Content-Security-Policy': policyOf(root),
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
});

/**
 * The file that an address asks for, or undefined; never one outside the root.
 * @param {string} root a real path
 * @param {string} prefix begins and ends with a slash
 * @param {string} address path and query as in the request line
 */
const fileFor = async (root, prefix, address) => {
  try {
    const path = decodeURIComponent(address.split(/[?#]/, 1)[0] ?? '');
    if (!path.startsWith(prefix)) return undefined;
    const asked = join(root, path.slice(prefix.length));
    const file = await realpath(
      (await stat(asked)).isDirectory() ? join(asked, 'index.html') : asked,
    );
    return file.startsWith(root + sep) ? file : undefined;
  } catch {
    // Bad escapes, zero bytes and missing files: there is nothing to be had at this address.
    return undefined;
  }
};

/** Names with a hash in them never change their content. @param {string} file */
const cacheControl = (file) =>
  file.includes(`${sep}assets${sep}`) ? 'public, max-age=31536000, immutable' : 'no-cache';

/**
 * @param {string} root
 * @param {string} prefix
 * @param {Record<string, string>} headers
 * @returns {(request: import('node:http').IncomingMessage, response: import('node:http').ServerResponse) => Promise<void>}
 */
const answerFrom = (root, prefix, headers) => async (request, response) => {
  const plain = { ...headers, 'Content-Type': 'text/plain; charset=utf-8' };
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.writeHead(405, { ...plain, Allow: 'GET, HEAD' }).end('Method not allowed\n');
    return;
  }
  const file = await fileFor(root, prefix, request.url ?? '/');
  if (file === undefined) {
    response.writeHead(404, plain).end('Not found\n');
    return;
  }
  const body = await readFile(file);
  const type = TYPES[extname(file)] ?? 'application/octet-stream';
  response.writeHead(200, {
    ...headers,
    'Content-Type': type,
    'Content-Length': body.length,
    'Cache-Control': cacheControl(file),
  });
  response.end(request.method === 'HEAD' ? undefined : body);
};

/**
 * Listens on the port, or on the next free one.
 * @param {import('node:http').Server} server
 * @param {string} host
 * @param {number} port
 * @returns {Promise<number>} the port taken
 */
const listen = (server, host, port) =>
  new Promise((resolve, reject) => {
    server.once('error', (/** @type {NodeJS.ErrnoException} */ error) => {
      if (error.code !== 'EADDRINUSE' || port >= 65_535) reject(error);
      else resolve(listen(server, host, port + 1));
    });
    server.listen(port, host, () => {
      server.removeAllListeners('error');
      const address = server.address();
      resolve(typeof address === 'object' && address !== null ? address.port : port);
    });
  });

/**
 * Serves a folder of static files on this machine only.
 * @param {{ root: string, port?: number, prefix?: string }} options port 0 = any free one;
 *   prefix = the sub-path to serve below, with a slash at both ends
 * @returns {Promise<{ url: string, close: () => Promise<void> }>}
 */
export const serve = async ({ root, port = 0, prefix = '/' }) => {
  const real = await realpath(root);
  const host = '127.0.0.1';
  const answer = answerFrom(real, prefix, headersOf(real));
  const server = createServer((request, response) => {
    answer(request, response).catch(() => response.destroy());
  });
  const taken = await listen(server, host, port);
  return {
    url: `http://${host}:${taken}${prefix}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
};
