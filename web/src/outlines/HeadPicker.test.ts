import { fireEvent, render, screen, within } from '@testing-library/svelte';
import { describe, expect, it, vi } from 'vitest';
import HeadPicker from './HeadPicker.svelte';
import { BASE_AREAS, type HeadArea } from './types';

const whole: HeadArea[] = BASE_AREAS.map((base) => ({
  id: base,
  label: base.replace('-', ' '),
  regions: [{ base, slices: [] }],
}));

function show(selected: string[], many = false, areas = whole) {
  const onselect = vi.fn();
  const view = render(HeadPicker, { areas, hair: 'cropped', selected, many, onselect });
  const head = () => screen.getByRole(many ? 'group' : 'radiogroup', { name: /^Head from/ });
  return { onselect, view, head, list: screen.getByRole('group', { name: 'Area' }) };
}

describe('choosing an area on the head', () => {
  it('gives the same choice from the drawing and from the list', async () => {
    const { onselect, head, list } = show(['top']);
    await fireEvent.click(within(head()).getByRole('radio', { name: 'hairline' }));
    await fireEvent.click(within(list).getByRole('radio', { name: 'hairline' }));
    expect(onselect.mock.calls).toEqual([[['hairline']], [['hairline']]]);
  });

  it('has one tab stop on the drawing, and arrows choose round it', async () => {
    const { onselect, head } = show(['top']);
    const boxes = within(head()).getAllByRole('radio');
    const name = (box: Element | undefined) => box?.getAttribute('aria-label');
    const stops = boxes.filter((b) => b.getAttribute('tabindex') === '0');
    expect(stops.map(name)).toEqual(['top']);
    const at = boxes.indexOf(stops[0]!);
    await fireEvent.keyDown(stops[0]!, { key: 'ArrowRight' });
    const next = boxes[(at + 1) % boxes.length];
    expect(document.activeElement).toBe(next);
    expect(onselect).toHaveBeenLastCalledWith([next?.getAttribute('aria-label')?.replace(' ', '-')]);
  });

  it('turns to what is chosen elsewhere, and stays where it is turned by hand', async () => {
    const { view, head } = show(['top']);
    expect(head().getAttribute('aria-label')).toBe('Head from the front');
    await view.rerender({ selected: ['nape'] });
    expect(within(head()).getByRole('radio', { name: 'nape' })).toBeTruthy();
    await fireEvent.click(screen.getByRole('radio', { name: 'front' }));
    expect(head().getAttribute('aria-label')).toBe('Head from the front');
    expect(within(head()).queryByRole('radio', { name: 'nape' })).toBeNull();
  });

  it('clips no clip: the browser would leave parts of the head unpainted', () => {
    const { view } = show(['top']);
    expect(view.container.querySelectorAll('clipPath').length).toBeGreaterThan(BASE_AREAS.length);
    expect(view.container.querySelectorAll('clipPath[clip-path]')).toHaveLength(0);
  });

  it('draws both halves of a parted area', () => {
    const halves = [0, 1].map((index): HeadArea => ({
      id: `hairline ${index}`,
      label: `hairline ${index}`,
      regions: [{ base: 'hairline', slices: [{ cut: 'left-right', index, of: 2 }] }],
    }));
    const { head } = show(['top'], false, [...halves, ...whole.slice(1)]);
    for (const { label } of halves) expect(within(head()).getByRole('radio', { name: label })).toBeTruthy();
  });
});

describe('choosing several', () => {
  it('adds and takes back, on the drawing and in the list', async () => {
    const { onselect, head, list } = show(['top'], true);
    await fireEvent.click(within(list).getByRole('checkbox', { name: 'hairline' }));
    const top = within(head()).getByRole('checkbox', { name: 'top' });
    expect(top.getAttribute('aria-checked')).toBe('true');
    await fireEvent.keyDown(top, { key: ' ' });
    expect(onselect.mock.calls).toEqual([[['hairline', 'top']], [[]]]);
  });

  it('moves with the arrows without choosing', async () => {
    const { onselect, head } = show(['top'], true);
    const boxes = within(head()).getAllByRole('checkbox');
    await fireEvent.keyDown(boxes[0]!, { key: 'ArrowLeft' });
    expect(document.activeElement).toBe(boxes.at(-1));
    expect(onselect).not.toHaveBeenCalled();
  });
});
