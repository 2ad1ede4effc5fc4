import { fireEvent, render, screen, within } from '@testing-library/svelte';
import { describe, expect, it, vi } from 'vitest';
import type { Visit } from '../../api/types';
import { toasts } from '../../ui/toasts.svelte';
import { newVisit, withReading } from '../../visit/head';
import { readSpan } from '../../visit/reading';
import { takeUp } from '../../visit/weave';
import type { Work } from '../../visit/work.svelte';
import HeadAreas from './HeadAreas.svelte';

function show(visit: Visit, chosen: string) {
  const back = vi.fn();
  const change = vi.fn((_: Visit) => back);
  const onarea = vi.fn();
  const area = visit.head.areas.find((a) => a.id === chosen)!;
  render(HeadAreas, { work: { visit, change } as unknown as Work, area, onarea });
  const changed = () => change.mock.calls.at(-1)![0];
  return { back, change, changed, onarea };
}
const press = (name: string | RegExp) => fireEvent.click(screen.getByRole('button', { name }));
const gather = (name: string) =>
  fireEvent.click(within(screen.getByRole('group', { name: 'Area' })).getByRole('checkbox', { name }));
const ids = (visit: Visit) => visit.head.areas.map((a) => a.id);
const start = newVisit('A. B.', '2024-05-02');

describe('parting and joining areas', () => {
  it('offers the partings of the chosen area and takes its wishes along', async () => {
    const wished = { ...start, aims: [{ zone: 'sides/regrowth', level: 6 }] };
    const { changed, onarea } = show(wished, 'sides');
    await press('Part');
    expect(screen.getAllByRole('button').map((b) => b.textContent?.trim())).toEqual([
      'left | right',
      'front | back',
      'upper | lower',
      'Cancel',
    ]);
    await press('left | right');
    expect(ids(changed())).toEqual(['front hairline', 'top', 'crown', 'sides left', 'sides right', 'nape']);
    expect(changed().aims?.map((a) => a.zone)).toEqual(['sides left/regrowth', 'sides right/regrowth']);
    expect(onarea).toHaveBeenLastCalledWith('sides left');
  });

  it('joins at once what is read alike, with a way back', async () => {
    const { back, changed, onarea } = show(start, 'top');
    await press('Join');
    expect(screen.getByRole('button', { name: 'Join' })).toHaveProperty('disabled', true);
    await gather('crown');
    await press('Join 2 areas');
    expect(ids(changed())).toEqual(['front hairline', 'top + crown', 'sides', 'nape']);
    toasts.at(-1)?.undo?.();
    expect(back).toHaveBeenCalledOnce();
    expect(onarea).toHaveBeenLastCalledWith('top');
  });

  it('takes packets up and puts them back, with a way back each time', async () => {
    const { back, changed, onarea } = show(start, 'top');
    await press('Weave out packets');
    expect(ids(changed())).toEqual(['front hairline', 'top', 'top packets', 'crown', 'sides', 'nape']);
    expect(onarea).toHaveBeenLastCalledWith('top packets');
    toasts.at(-1)?.undo?.();
    expect(back).toHaveBeenCalledOnce();
    expect(onarea).toHaveBeenLastCalledWith('top');
  });

  it('neither parts nor joins packets, and puts them back', async () => {
    const { head } = takeUp(start.head, 'top');
    const { changed, onarea } = show({ ...start, head }, 'top packets');
    for (const name of ['Part', 'Join', 'Weave out packets'])
      expect(screen.queryByRole('button', { name })).toBeNull();
    await press('Put them back');
    expect(ids(changed())).toEqual(ids(start));
    expect(onarea).toHaveBeenLastCalledWith('top');
  });

  it('asks whose reading holds where they differ', async () => {
    const head = withReading(start.head, 'crown', 'regrowth', { white: 40 });
    const { change, changed } = show({ ...start, head }, 'top');
    await press('Join');
    await gather('crown');
    await press('Join 2 areas');
    expect(change).not.toHaveBeenCalled();
    await fireEvent.click(await screen.findByRole('button', { name: /^crown.*40/ }));
    expect(readSpan(changed().head.areas[1]!.spans[0]!).white).toBe(40);
  });
});
