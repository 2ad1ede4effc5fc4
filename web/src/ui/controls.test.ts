import { fireEvent, render, screen } from '@testing-library/svelte';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createRawSnippet, tick } from 'svelte';
import Button from './Button.svelte';
import { hand } from './hand.svelte';
import Segmented from './Segmented.svelte';
import Stepper from './Stepper.svelte';
import { dismiss, notify, toasts } from './toasts.svelte';

const words = (text: string) => createRawSnippet(() => ({ render: () => `<span>${text}</span>` }));

describe('Stepper', () => {
  const level = { label: 'Level', value: 6, min: 1, max: 10, step: 0.5, bigStep: 1 };

  it('answers the keys of a spin button', async () => {
    const onchange = vi.fn();
    render(Stepper, { ...level, onchange });
    const box = screen.getByRole('spinbutton', { name: 'Level' });
    for (const [key, now] of [
      ['ArrowUp', '6.5'],
      ['PageDown', '5.5'],
      ['Home', '1'],
      ['ArrowDown', '1'],
      ['End', '10'],
      ['ArrowRight', '10'],
    ]) {
      await fireEvent.keyDown(box, { key });
      expect(box.getAttribute('aria-valuenow'), key).toBe(now);
    }
    // At the ends nothing changes and nothing is told.
    expect(onchange.mock.calls.map(([value]) => value)).toEqual([6.5, 5.5, 1, 10]);
  });

  it('takes typed digits, with a comma too, and snaps them', async () => {
    const onchange = vi.fn();
    render(Stepper, { ...level, onchange });
    const box = screen.getByRole('spinbutton');
    for (const key of ['7', ',', '4', 'Enter']) await fireEvent.keyDown(box, { key });
    expect(onchange).toHaveBeenLastCalledWith(7.5);
  });

  it('forgets typed digits on Escape', async () => {
    const onchange = vi.fn();
    render(Stepper, { ...level, onchange });
    const box = screen.getByRole('spinbutton');
    for (const key of ['9', 'Escape', 'Enter']) await fireEvent.keyDown(box, { key });
    expect(onchange).not.toHaveBeenCalled();
  });

  describe('held down', () => {
    beforeEach(() => void vi.useFakeTimers());
    afterEach(() => void vi.useRealTimers());

    it('steps once per tap, goes on while held, stops on release', async () => {
      const onchange = vi.fn();
      render(Stepper, { ...level, max: 100, onchange });
      const more = screen.getByRole('button', { name: 'More: Level' });
      await fireEvent.pointerDown(more, { button: 0 });
      await fireEvent.pointerUp(more);
      vi.advanceTimersByTime(3000);
      expect(onchange).toHaveBeenCalledTimes(1);
      await fireEvent.pointerDown(more, { button: 0 });
      vi.advanceTimersByTime(1000);
      await fireEvent.pointerUp(more);
      const held = onchange.mock.calls.length;
      expect(held).toBeGreaterThan(5);
      vi.advanceTimersByTime(1000);
      expect(onchange).toHaveBeenCalledTimes(held);
    });

    it('tells what it shows a frame later, and on release at once', async () => {
      const onchange = vi.fn();
      render(Stepper, { ...level, max: 100, onchange });
      const box = screen.getByRole('spinbutton');
      const more = screen.getByRole('button', { name: 'More: Level' });
      await fireEvent.pointerDown(more, { button: 0 });
      expect(onchange).toHaveBeenLastCalledWith(6.5);
      vi.advanceTimersByTime(420);
      vi.advanceTimersToNextFrame();
      await tick();
      expect(box.getAttribute('aria-valuenow')).toBe('7');
      expect(onchange).toHaveBeenCalledTimes(1);
      await fireEvent.pointerUp(more);
      expect(onchange).toHaveBeenLastCalledWith(7);
      vi.advanceTimersByTime(1000);
      expect(onchange).toHaveBeenCalledTimes(2);
    });

    it('counts what was typed, here or in another, before the first step', async () => {
      const told: string[] = [];
      const one = (label: string) =>
        render(Stepper, { ...level, label, onchange: (value: number) => told.push(`${label} ${value}`) });
      one('First');
      one('Second');
      const box = screen.getByRole('spinbutton', { name: 'First' });
      for (const at of ['Second', 'First']) {
        box.focus();
        await fireEvent.keyDown(box, { key: '3' });
        const more = screen.getByRole('button', { name: `More: ${at}` });
        await fireEvent.pointerDown(more, { button: 0 });
        await fireEvent.pointerUp(more);
        await fireEvent.keyDown(box, { key: 'End' });
      }
      expect(told).toEqual(['First 3', 'Second 6.5', 'First 10', 'First 3', 'First 3.5', 'First 10']);
    });

    it('tells the newest value when a key comes between the number and its telling', async () => {
      const onchange = vi.fn();
      render(Stepper, { ...level, max: 100, onchange });
      const more = screen.getByRole('button', { name: 'More: Level' });
      await fireEvent.pointerDown(more, { button: 0 });
      vi.advanceTimersByTime(420);
      vi.advanceTimersToNextFrame(); // 7 is shown
      await fireEvent.keyDown(screen.getByRole('spinbutton'), { key: 'ArrowUp' });
      vi.advanceTimersToNextFrame();
      await fireEvent.pointerUp(more);
      expect(onchange.mock.calls.map(([value]) => value)).toEqual([6.5, 7.5]);
    });

    it('is a hand that holds until the release or the end of the range', async () => {
      render(Stepper, { ...level, max: 7 });
      const more = screen.getByRole('button', { name: 'More: Level' });
      await fireEvent.pointerDown(more, { button: 0 });
      expect(hand.held).toBe(true);
      await fireEvent.pointerUp(more);
      expect(hand.held).toBe(false);
      await fireEvent.pointerDown(more, { button: 0 });
      vi.advanceTimersByTime(2000);
      expect(hand.held).toBe(false);
    });
  });

  it('says why a value is refused', () => {
    render(Stepper, { ...level, error: 'Levels go from 1 to 10.' });
    const box = screen.getByRole('spinbutton');
    expect(box.getAttribute('aria-invalid')).toBe('true');
    const why = document.getElementById(box.getAttribute('aria-describedby') ?? '');
    expect(why?.textContent).toBe('Levels go from 1 to 10.');
  });
});

describe('Button', () => {
  it('cannot be pressed while busy, and says so', async () => {
    const onclick = vi.fn();
    render(Button, { onclick, busy: true, children: words('Plan') });
    const button = screen.getByRole('button', { name: /Plan/ });
    await fireEvent.click(button);
    expect(onclick).not.toHaveBeenCalled();
    expect(button.getAttribute('aria-busy')).toBe('true');
  });
});

describe('Segmented', () => {
  it('is a group of radio buttons that reports the choice', async () => {
    const onchange = vi.fn();
    render(Segmented, {
      label: 'Light',
      choices: [
        { value: 'day', label: 'daylight' },
        { value: 'lamp', label: 'lamp' },
      ],
      value: 'day',
      onchange,
    });
    expect(screen.getByRole<HTMLInputElement>('radio', { name: 'daylight' }).checked).toBe(true);
    await fireEvent.click(screen.getByRole('radio', { name: 'lamp' }));
    expect(onchange).toHaveBeenCalledWith('lamp');
  });
});

describe('notes', () => {
  it('keep the latest three and can be closed', () => {
    const ids = ['a', 'b', 'c', 'd'].map((text) => notify(text));
    expect(toasts.map((toast) => toast.text)).toEqual(['b', 'c', 'd']);
    ids.forEach(dismiss);
    expect(toasts).toHaveLength(0);
  });
});
