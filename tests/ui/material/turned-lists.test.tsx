import { render, screen } from '@testing-library/react';
import { expect, it } from 'vitest';
import { BendPanel } from '../../../src/ui/material/BendPanel.tsx';
import { ComparePanel } from '../../../src/ui/material/ComparePanel.tsx';
import { ConnectionPanel } from '../../../src/ui/material/ConnectionPanel.tsx';
import { createStudyStore, StudyStoreContext } from '../../../src/ui/store/index.ts';
import { workspace } from '../store/fixture.ts';

it('every list names the turned chord that it is computed from', () => {
  const store = createStudyStore(workspace('Eb6/9 Cm7/Bb', { turn: 'sus4', position: 5 }));
  render(
    <StudyStoreContext value={store}>
      <BendPanel open />
      <ConnectionPanel open />
      <ComparePanel />
    </StudyStoreContext>,
  );
  expect(screen.getByText('From E♭sus4 to Cm7/B♭, best first')).toBeInTheDocument();
  expect(screen.getByText('Bends under the hand over E♭sus4, easiest first')).toBeInTheDocument();
  expect(screen.getByText(/^The \w form of E♭sus4$/)).toBeInTheDocument();
});
