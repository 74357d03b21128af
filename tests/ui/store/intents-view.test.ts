import { describe, expect, it } from 'vitest';
import { acted, degree } from './fixture.ts';

describe('the view', () => {
  it('switches colours on and off', () => {
    const nine = degree('9');
    const on = acted(
      'C',
      (i) => i.toggleColour(nine),
      (i) => i.toggleColour(degree('b7')),
    );
    expect(on.workspace.show).toEqual([nine, degree('b7')]);
    const off = acted(
      'C',
      (i) => i.toggleColour(nine),
      (i) => i.toggleColour(degree('9')),
    );
    expect(off.workspace.show).toEqual([]);
  });

  it('changes labels, spacing, theme, spelling and shortcuts, each a step of its own', () => {
    const { workspace: now, undone } = acted('C', (i) => {
      i.setLabels('notes');
      i.setSpacing('even');
      i.setTheme('dark');
      i.setSpelling('plain');
      i.setShortcuts(false);
    });
    const { labels, spacing, theme, spelling, shortcuts } = now;
    expect([labels, spacing, theme, spelling, shortcuts, undone]).toEqual([
      ...['notes', 'even', 'dark', 'plain', false, 5],
    ]);
  });

  it('opens and closes a panel, which is no step', () => {
    const open = acted('C', (i) => i.openPanel('keys'));
    expect([open.state.panel, open.undone]).toEqual(['keys', 0]);
    const shut = acted(
      'C',
      (i) => i.openPanel('settings'),
      (i) => i.openPanel(undefined),
    );
    expect('panel' in shut.state).toBe(false);
    const same = acted('C', (i) => i.openPanel(undefined));
    expect(same.state).toBe(same.before);
  });
});
