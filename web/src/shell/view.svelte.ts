/** The lights hair is shown under, by the engine's illuminant keys. */
export const lights = ['daylight', 'salon', 'evening'] as const;
export type Light = (typeof lights)[number];

/** What the hair on screen shows. One switch for everything that is drawn. */
export const view = $state<{ light: Light; hairOnly: boolean; moment: 'today' | 'plan' }>({
  light: 'daylight',
  hairOnly: false,
  moment: 'plan',
});
