import { render, screen } from '@testing-library/svelte';
import { tick } from 'svelte';
import { afterEach, expect, it } from 'vitest';
import type { ZoneView } from '../api/types';
import { view } from '../shell/view.svelte';
import ZoneColour from './ZoneColour.svelte';

afterEach(() => {
  view.light = 'daylight';
});

it('shows a zone under the light that was chosen', async () => {
  const srgb = { daylight: { hex: '#806040' }, led: { hex: '#906838' }, lamp: { hex: '#a07030' } };
  const planned = { level: 6.1, tone: 'gold', srgb };
  render(ZoneColour, { zone: { planned } as unknown as ZoneView, half: 'planned' });
  const words = screen.getByText('level 6, gold');
  const chip = () => words.querySelector<HTMLElement>('[aria-hidden]')!.style.backgroundColor;
  const day = chip();
  view.light = 'evening';
  await tick();
  expect(chip()).not.toBe(day);
});
