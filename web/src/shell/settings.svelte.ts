/** Choices of this device, kept in the browser's local storage. */
export interface Settings {
  theme: 'system' | 'light' | 'dark';
  mass: 'g' | 'oz';
  strength: 'percent' | 'volumes';
}

const place = 'strandline.settings';
const first: Settings = { theme: 'system', mass: 'g', strength: 'percent' };

const allowed: { [K in keyof Settings]: readonly Settings[K][] } = {
  theme: ['system', 'light', 'dark'],
  mass: ['g', 'oz'],
  strength: ['percent', 'volumes'],
};

/** Stored settings; anything unknown or unreadable falls back to the first choice. */
export function readSettings(text: string | null): Settings {
  const kept = { ...first };
  let found: unknown;
  try {
    found = JSON.parse(text ?? '{}');
  } catch {
    return kept;
  }
  if (typeof found !== 'object' || found === null) return kept;
  for (const key of Object.keys(allowed) as (keyof Settings)[]) {
    const value = (found as Record<string, unknown>)[key];
    if ((allowed[key] as readonly unknown[]).includes(value)) Object.assign(kept, { [key]: value });
  }
  return kept;
}

export const settings = $state<Settings>(readSettings(localStorage.getItem(place)));

export function saveSettings(): void {
  localStorage.setItem(place, JSON.stringify(settings));
}

/** Puts the chosen greys on the document and follows the device when asked to. */
export function applyTheme(device: MediaQueryList): void {
  const dark = settings.theme === 'dark' || (settings.theme === 'system' && device.matches);
  document.documentElement.dataset.theme = dark ? 'dark' : 'light';
}
