import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Top of the repository. */
export const TOP = dirname(dirname(fileURLToPath(import.meta.url)));

/** Path of something below the top. @param {string[]} parts */
export const at = (...parts) => join(TOP, ...parts);

/**
 * @typedef {object} RunOptions
 * @property {Record<string, string>} [env] added to that of this process
 * @property {number} [timeout] milliseconds
 * @property {(text: string) => void} [heard] is given what the program prints, which is shown all the same
 */

/**
 * Runs a program with its output shown and gives its exit code; 1 when it cannot start, when a signal
 * ends it, or when it takes longer than `timeout`.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {RunOptions} [options]
 * @returns {Promise<number>}
 */
export const run = (command, args, { env = {}, timeout = 0, heard } = {}) =>
  new Promise((resolve) => {
    const out = heard === undefined ? 'inherit' : 'pipe';
    const child = spawn(command, args, {
      cwd: TOP,
      stdio: ['ignore', out, out],
      env: { ...process.env, ...env },
      timeout,
    });
    /** @param {string} text */
    const say = (text) => {
      process.stdout.write(text);
      heard?.(text);
    };
    child.stdout?.setEncoding('utf8').on('data', say);
    child.stderr?.setEncoding('utf8').on('data', say);
    child.on('error', (error) => {
      say(`${command}: ${error.message}\n`);
      resolve(1);
    });
    child.on('close', (code, signal) => {
      if (signal !== null) say(`${command} was ended by ${signal}\n`);
      resolve(code ?? 1);
    });
  });

/** Runs a script of an installed package. @type {(script: string, args: readonly string[], options?: RunOptions) => Promise<number>} */
export const runModule = (script, args, options) =>
  run(process.execPath, [at('node_modules', script), ...args], options);

/** @param {string} path */
const packagesOf = (path) =>
  /** @type {Record<string, { version: string, optional?: boolean }>} */ (
    JSON.parse(readFileSync(path, 'utf8')).packages
  );

/** Whether node_modules holds just what package-lock.json asks for; optional ones may be absent. */
const modulesFit = () => {
  const hidden = at('node_modules', '.package-lock.json');
  if (!existsSync(hidden)) return false;
  const installed = packagesOf(hidden);
  return Object.entries(packagesOf(at('package-lock.json'))).every(
    ([path, { version, optional }]) =>
      path === '' ||
      installed[path]?.version === version ||
      (optional === true && installed[path] === undefined),
  );
};

/**
 * Installs the packages when they are missing or not those of the lockfile.
 * @returns {Promise<number>} exit code
 */
export const ensureModules = async () => {
  if (modulesFit()) return 0;
  console.log('Installing packages …');
  const npm = process.env['npm_execpath'];
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund'];
  return await (npm?.endsWith('.js') ? run(process.execPath, [npm, ...args]) : run('npm', args));
};

/** Builds the program into dist/. Gives an exit code. */
export const build = () => runModule('vite/bin/vite.js', ['build', '--logLevel', 'warn']);
