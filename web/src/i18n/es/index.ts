import type { PartialDictionary } from '../types';
import { advice } from './advice';
import { aim } from './aim';
import { hair } from './hair';
import { plan } from './plan';
import { reading } from './reading';
import { shell } from './shell';
import { ui } from './ui';
import { visit } from './visit';
import { warnings } from './warnings';
import { ways } from './ways';
import { why } from './why';

export const es: PartialDictionary = {
  ...ui,
  ...shell,
  ...hair,
  ...visit,
  ...reading,
  ...aim,
  ...plan,
  ...ways,
  ...advice,
  ...why,
  ...warnings,
};
