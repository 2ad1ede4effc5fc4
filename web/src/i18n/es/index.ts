import type { PartialDictionary } from '../types';
import { shell } from './shell';
import { ui } from './ui';

export const es: PartialDictionary = { ...ui, ...shell };
