import { makeAddress } from '#lesson';
import type { Page } from './page.ts';
import { notify } from './state.ts';
import type { AppState } from './types.ts';
import type { Cell } from './zustand.ts';

/** Copies the address of the present work; a notice says whether that worked. */
export async function copyLink(cell: Cell<AppState>, page: Page): Promise<void> {
  const { workspace } = cell.get();
  const link = `${page.href().replace(/#.*$/s, '')}#${makeAddress(workspace)}`;
  const told = await page.copy(link).then(
    () => ({
      tone: 'info' as const,
      text: 'The link is copied, without tempo, loop and levels.',
    }),
    () => ({
      tone: 'error' as const,
      text: 'The link could not be copied; the address bar has it.',
    }),
  );
  cell.update((state) => notify(state, { id: 'copy', ...told }));
}
