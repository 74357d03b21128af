import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, it, vi } from 'vitest';
import { Levels } from '../../../src/ui/sound/Levels.tsx';
import { SoundSection } from '../../../src/ui/sound/SoundSection.tsx';
import { createStudyStore, StudyStoreContext } from '../../../src/ui/store/index.ts';
import { workspace } from '../store/fixture.ts';

vi.mock('#sound/browser', () => ({}));

const store = () => createStudyStore(workspace('| C | G |'));
let one = store();

beforeEach(() => {
  one = store();
});

it('explains in a line what is heard over the backing', async () => {
  render(
    <StudyStoreContext value={one}>
      <SoundSection />
    </StudyStoreContext>,
  );
  expect(screen.getByText(/^The tones of the grip one after the other/)).toBeInTheDocument();
  await userEvent.click(screen.getByRole('button', { name: 'what leads on' }));
  expect(screen.getByText(/^Into every change one tone of this chord/)).toBeInTheDocument();
  expect(screen.queryByText(/^The tones of the grip/)).toBeNull();
});

it('writes beside every level how high it is, or that the part is silent', async () => {
  render(
    <StudyStoreContext value={one}>
      <Levels />
    </StudyStoreContext>,
  );
  const row = (name: string) => within(screen.getByRole('row', { name: new RegExp(`^${name}`) }));
  const { bass } = one.cell.get().workspace.sound.mix.parts;
  expect(row('bass').getByText(`${Math.round(bass.level * 100)} %`)).toBeInTheDocument();
  await userEvent.click(screen.getByRole('button', { name: 'Mute the bass' }));
  expect(row('bass').getByText('silent')).toBeInTheDocument();
});
