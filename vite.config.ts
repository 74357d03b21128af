import { createHash } from 'node:crypto';
import { readdirSync } from 'node:fs';
import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { PRIVATE_NAMES } from './scripts/private-names.ts';

/** The dev server injects inline scripts and styles, which the policy in index.html forbids. */
const policyOffInDev: Plugin = {
  name: 'policy-off-in-dev',
  apply: 'serve',
  transformIndexHtml: {
    order: 'pre',
    handler: (html) => html.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, ''),
  },
};

/** Pictures for people who read the repository; the program never asks for them. */
const SERVED = /\.(svg|woff2|webmanifest)$/;

const servedFiles = (): string[] =>
  readdirSync('public', { recursive: true, encoding: 'utf8' }).filter((name) => SERVED.test(name));

/** Tells public/sw.js what to keep for work without a network, under a name that changes with it. */
const offlineList: Plugin = {
  name: 'offline-list',
  apply: 'build',
  enforce: 'post',
  generateBundle(_options, bundle) {
    const hash = createHash('sha256');
    for (const file of Object.values(bundle))
      hash.update(file.type === 'chunk' ? file.code : file.source);
    const files = [
      './',
      ...Object.keys(bundle).filter((name) => name !== 'index.html'),
      ...servedFiles(),
    ];
    const list = { version: hash.digest('hex').slice(0, 16), files };
    this.emitFile({
      type: 'asset',
      fileName: 'sw-files.js',
      source: `self.OFFLINE = ${JSON.stringify(list)};\n`,
    });
  },
};

export default defineConfig({
  base: './',
  plugins: [react(), policyOffInDev, offlineList],
  build: {
    target: 'es2022',
    // A data: address would need room in the content security policy.
    assetsInlineLimit: 0,
    // The chunks that come later import nothing that could be fetched beside them.
    modulePreload: false,
    // Some 4 % smaller after gzip than what the bundler's own minifier makes.
    minify: 'terser',
    // Nothing in the bundle reads a property for a side effect, which lets it join more.
    terserOptions: {
      compress: {
        passes: 4,
        ecma: 2022,
        unsafe_methods: true,
        keep_fargs: false,
        unsafe_arrows: true,
        inline: 1,
        pure_getters: true,
      },
      module: true,
      mangle: {
        properties: { builtins: true, regex: new RegExp(`^(?:${PRIVATE_NAMES.join('|')})$`) },
      },
    },
    rolldownOptions: {
      // One file for the first view: two would be 0.7 % larger after gzip.
      output: { codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] } },
      // Of tonal only the chord dictionary is used; the rest is kept alive by marks it lacks.
      treeshake: {
        moduleSideEffects: [{ test: /@tonaljs\/(?!chord-type)/, sideEffects: false }],
      },
    },
  },
  test: {
    // Room tests run without a DOM, so that one which sneaks in is noticed.
    projects: [
      {
        extends: true,
        test: {
          name: 'rooms',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/ui/**'],
          environment: 'node',
        },
      },
      {
        extends: true,
        test: {
          name: 'ui',
          include: ['tests/ui/**/*.test.{ts,tsx}'],
          environment: 'jsdom',
          setupFiles: ['tests/ui/setup.ts'],
        },
      },
    ],
    restoreMocks: true,
    // They only end what hangs; the build runs beside the tests, on machines a third as fast.
    testTimeout: 30_000,
    hookTimeout: 30_000,
    expect: { poll: { timeout: 30_000 } },
    // Files share their modules and their page: a fifth of the time. What a test installs it leaves
    // as it found it; the order of files may be shuffled.
    isolate: false,
    // One fewer is the default: beside the build, which ends in half their time, it leaves a core idle.
    maxWorkers: '100%',
    passWithNoTests: false,
  },
});
