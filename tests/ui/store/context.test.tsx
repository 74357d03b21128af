import { act, render, screen } from '@testing-library/react';
import { expect, it, vi } from 'vitest';
import {
  createStudyStore,
  StudyStoreContext,
  useIntents,
  useStudy,
} from '../../../src/ui/store/index.ts';
import { workspace } from './fixture.ts';

let renders = 0;

function UnderCursor() {
  renders += 1;
  const symbol = useStudy(({ study }) => study.symbol);
  const { moveCursor } = useIntents();
  return (
    <button type="button" onClick={() => moveCursor(1)}>
      {symbol}
    </button>
  );
}

it('a component renders again only when what it takes from the state changes', () => {
  const store = createStudyStore(workspace('C G'));
  render(
    <StudyStoreContext value={store}>
      <UnderCursor />
    </StudyStoreContext>,
  );
  renders = 0;
  act(() => store.intents.setTheme('dark'));
  expect(renders).toBe(0);
  act(() => screen.getByRole('button').click());
  expect(renders).toBe(1);
  expect(screen.getByRole('button')).toHaveTextContent('G');
});

it('a component outside the context is a mistake of ours', () => {
  const reported = vi.spyOn(console, 'error').mockImplementation(() => undefined);
  expect(() => render(<UnderCursor />)).toThrow('no StudyStoreContext');
  reported.mockClear();
});
