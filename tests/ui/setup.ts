import '@testing-library/jest-dom/vitest';
import { cleanup } from '@testing-library/react';
import { afterEach, beforeEach, expect, vi } from 'vitest';
import { installAllCommands } from '../../src/ui/commands/index.ts';
import { installEngine } from '../../src/ui/store/engine.ts';

// The program fetches the study lenses after its first view; tests have them from the start.
installAllCommands();
installEngine();

// React reports misuse on the console only. A test that provokes it on purpose clears the mock.
beforeEach(() => {
  vi.spyOn(console, 'error');
  vi.spyOn(console, 'warn');
});

afterEach(() => {
  cleanup();
  expect(console.error).not.toHaveBeenCalled();
  expect(console.warn).not.toHaveBeenCalled();
});
