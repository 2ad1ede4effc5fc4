import { kit } from './kit';
import { shell } from './shell';
import { ui } from './ui';

export const en = { ...ui, ...shell, ...kit } as const;
