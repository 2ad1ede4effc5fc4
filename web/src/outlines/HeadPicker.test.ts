import { fireEvent, render, screen, within } from '@testing-library/svelte';
import { describe, expect, it, vi } from 'vitest';
import { splitArea, wholeHead } from './areas';
import HeadPicker from './HeadPicker.svelte';
import { areaNameEn, outlineWordsEn, partNameEn } from './words.en';

function show(selected: string[] = [], areas = wholeHead(areaNameEn)) {
  const calls = { onselect: vi.fn(), onsplit: vi.fn(), onmerge: vi.fn() };
  const view = render(HeadPicker, { areas, hair: 'cropped', selected, words: outlineWordsEn, ...calls });
  return { ...calls, view, head: screen.getByRole('group', { name: 'Head from the front' }) };
}

describe('choosing areas on the head', () => {
  it('gives the same choice from the drawing and from the list', async () => {
    const { onselect, head } = show(['top']);
    await fireEvent.click(within(head).getByRole('checkbox', { name: 'front hairline' }));
    await fireEvent.click(
      within(screen.getByRole('group', { name: 'Areas' })).getByRole('checkbox', { name: 'front hairline' }),
    );
    expect(onselect.mock.calls).toEqual([[['hairline', 'top']], [['hairline', 'top']]]);
  });

  it('takes an area back', async () => {
    const { onselect, head } = show(['top']);
    const top = within(head).getByRole('checkbox', { name: 'top' });
    expect(top.getAttribute('aria-checked')).toBe('true');
    await fireEvent.keyDown(top, { key: ' ' });
    expect(onselect).toHaveBeenCalledWith([]);
  });

  it('has one tab stop, and arrows go round', async () => {
    const { head } = show();
    const boxes = within(head).getAllByRole('checkbox');
    const stops = () =>
      boxes.filter((b) => b.getAttribute('tabindex') === '0').map((b) => b.getAttribute('aria-label'));
    expect(stops()).toEqual(['front hairline']);
    await fireEvent.keyDown(boxes[0] as Element, { key: 'ArrowLeft' });
    expect(document.activeElement).toBe(boxes.at(-1));
    expect(stops()).toEqual([boxes.at(-1)?.getAttribute('aria-label')]);
    await fireEvent.keyDown(boxes.at(-1) as Element, { key: 'Home' });
    expect(document.activeElement).toBe(boxes[0]);
  });

  it('shows from the back what the front hides', async () => {
    const { head } = show();
    expect(within(head).queryByRole('checkbox', { name: 'nape' })).toBeNull();
    await fireEvent.click(screen.getByRole('radio', { name: 'back' }));
    const back = screen.getByRole('group', { name: 'Head from the back' });
    expect(within(back).getByRole('checkbox', { name: 'nape' })).toBeTruthy();
  });

  it('asks for a parting only where one is possible', async () => {
    const { onsplit, view } = show(['side-left']);
    expect(screen.queryByRole('button', { name: 'part left | right' })).toBeNull();
    await fireEvent.click(screen.getByRole('button', { name: 'part front | back' }));
    expect(onsplit).toHaveBeenCalledWith({ id: 'side-left', cut: 'front-back' });
    await view.rerender({ selected: [] });
    expect(screen.queryByRole('button', { name: 'part front | back' })).toBeNull();
  });

  it('asks to merge two or more', async () => {
    const { onmerge } = show(['top', 'crown']);
    expect(screen.queryByRole('button', { name: 'part front | back' })).toBeNull();
    await fireEvent.click(screen.getByRole('button', { name: 'make one area' }));
    expect(onmerge).toHaveBeenCalledWith({ ids: ['top', 'crown'] });
  });

  it('draws both halves of a split area', () => {
    const { head } = show([], splitArea(wholeHead(areaNameEn), 'hairline', 'left-right', partNameEn));
    expect(within(head).getByRole('checkbox', { name: 'front hairline left' })).toBeTruthy();
    expect(within(head).getByRole('checkbox', { name: 'front hairline right' })).toBeTruthy();
  });
});
