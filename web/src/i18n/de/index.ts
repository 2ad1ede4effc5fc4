import type { PartialDictionary } from '../types';
import { aim } from './aim';
import { hair } from './hair';
import { plan } from './plan';
import { shell } from './shell';
import { ui } from './ui';

export const de: PartialDictionary = { ...ui, ...shell, ...hair, ...aim, ...plan };
