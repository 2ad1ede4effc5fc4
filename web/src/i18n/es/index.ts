import type { PartialDictionary } from '../types';
import { hair } from './hair';
import { shell } from './shell';
import { ui } from './ui';

export const es: PartialDictionary = { ...ui, ...shell, ...hair };
