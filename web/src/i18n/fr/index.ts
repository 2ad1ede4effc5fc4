import type { Dictionary } from '../types';
import { kit } from './kit';
import { shell } from './shell';
import { ui } from './ui';

export const fr: Dictionary = { ...ui, ...shell, ...kit };
