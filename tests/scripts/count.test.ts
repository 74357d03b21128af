import { describe, expect, it } from 'vitest';
import { countBrowser, countStage, countUnit, total } from '../../scripts/count.mjs';

const file = (status: string, ...tests: string[]) => ({
  status,
  assertionResults: tests.map((test) => ({ status: test })),
});

describe('the count at the end of npm test', () => {
  it('takes a stage without tests as one', () => {
    expect(countStage(0)).toMatchObject({ passed: 1, failed: 0 });
    expect(countStage(2)).toMatchObject({ passed: 0, failed: 1 });
  });

  it.each([
    ['all well', 0, { numPassedTests: 3, numFailedTests: 0 }, [3, 0]],
    ['one test failed', 1, { numPassedTests: 2, numFailedTests: 1 }, [2, 1]],
    ['no report', 1, {}, [0, 1]],
    ['no tests', 0, { numPassedTests: 0 }, [0, 1]],
    ['all passed and yet it broke down', 1, { numPassedTests: 3 }, [3, 1]],
    [
      'one file could not be read',
      1,
      { numPassedTests: 1, testResults: [file('failed'), file('passed', 'passed')] },
      [1, 1],
    ],
    [
      'one file could not be read, one test failed',
      1,
      {
        numPassedTests: 1,
        numFailedTests: 1,
        testResults: [file('failed'), file('failed', 'failed')],
      },
      [1, 2],
    ],
  ])('counts unit tests: %s', (_, code, report, [passed, failed]) => {
    expect(countUnit(code, report)).toMatchObject({ passed, failed });
  });

  it.each([
    ['all well', 0, { stats: { expected: 3, unexpected: 0, flaky: 0 } }, [3, 0]],
    ['one failed, one at first', 1, { stats: { expected: 1, unexpected: 1, flaky: 1 } }, [1, 2]],
    ['a spec could not be read', 1, { errors: ['?'] }, [0, 1]],
    ['no report', 1, {}, [0, 1]],
    ['no tests', 0, { stats: { expected: 0, unexpected: 0, flaky: 0 } }, [0, 1]],
  ])('counts browser tests: %s', (_, code, report, [passed, failed]) => {
    expect(countBrowser(code, report)).toMatchObject({ passed, failed });
  });

  it('adds the stages up', () => {
    expect(
      total([countStage(0), countStage(1, 'lint'), { passed: 5, failed: 2, told: ['a', 'b'] }]),
    ).toEqual({
      passed: 6,
      failed: 3,
      told: ['lint', 'a', 'b'],
    });
  });
});

describe('what failed, at the end of npm test', () => {
  it('names a stage and the beginning of what it printed, and what broke down without a test', () => {
    expect(countStage(1, 'tsc', '\na.ts: no\n').told).toEqual(['tsc\n    a.ts: no']);
    expect(countStage(0, 'tsc', 'fine').told).toEqual([]);
    expect(countUnit(7, { numPassedTests: 3 }).told).toEqual(['broke down with exit code 7']);
  });

  it('names a unit test and the beginning of its message', () => {
    const failed = {
      status: 'failed',
      fullName: 'a grip is held',
      failureMessages: ['no\nit is not'],
    };
    const testResults = [
      { name: 'grips.test.ts', status: 'failed', assertionResults: [{ status: 'passed' }, failed] },
      { name: 'neck.test.ts', status: 'passed', assertionResults: [{ status: 'passed' }] },
      { name: 'lane.test.ts', status: 'failed', message: 'cannot be read', assertionResults: [] },
    ];
    expect(countUnit(1, { numFailedTests: 2, testResults }).told).toEqual([
      'grips.test.ts › a grip is held\n    no\n    it is not',
      'lane.test.ts\n    cannot be read',
    ]);
  });

  it('names a browser test, also one that passed when tried again, wherever it stands', () => {
    const spec = (title: string, ...messages: (string | undefined)[]) => ({
      title,
      tests: [{ results: messages.map((message) => (message ? { error: { message } } : {})) }],
    });
    const stats = { expected: 1, unexpected: 1, flaky: 1 };
    const suites = [
      {
        title: 'lane.spec.ts',
        specs: [spec('moves', undefined), spec('stays', 'it went', undefined)],
        suites: [{ title: 'at 390', specs: [spec('fits', 'it does not')] }],
      },
    ];
    expect(countBrowser(1, { stats, suites }).told).toEqual([
      'lane.spec.ts › stays\n    it went',
      'at 390 › fits\n    it does not',
    ]);
  });
});
