import type { Dictionary } from '../types';
import { advice } from './advice';
import { aim } from './aim';
import { asked } from './asked';
import { beside } from './beside';
import { bowl } from './bowl';
import { chair } from './chair';
import { clock } from './clock';
import { diary } from './diary';
import { doors } from './doors';
import { everyday } from './everyday';
import { hair } from './hair';
import { kit } from './kit';
import { learned } from './learned';
import { people } from './people';
import { plan } from './plan';
import { problems } from './problems';
import { reading } from './reading';
import { rules } from './rules';
import { shelf } from './shelf';
import { shell } from './shell';
import { stock } from './stock';
import { ui } from './ui';
import { visit } from './visit';
import { ways } from './ways';
import { why } from './why';

export const es: Dictionary = {
  ...ui,
  ...shell,
  ...shelf,
  ...stock,
  ...kit,
  ...hair,
  ...visit,
  ...reading,
  ...aim,
  ...people,
  ...doors,
  ...plan,
  ...problems,
  ...ways,
  ...advice,
  ...why,
  ...rules,
  ...asked,
  ...clock,
  ...chair,
  ...bowl,
  ...learned,
  ...diary,
  ...beside,
  ...everyday,
};
