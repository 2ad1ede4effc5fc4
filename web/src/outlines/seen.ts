import { DRAWINGS } from './drawings';
import { regionBox } from './geometry';
import { VIEWS, type HeadArea, type View } from './types';

/** True when some of the area shows from there. */
export const seenFrom = (view: View, area: HeadArea): boolean =>
  area.regions.some((region) => {
    const shape = DRAWINGS[view].areas.find((s) => s.base === region.base);
    return shape !== undefined && regionBox(region, view, shape.box) !== null;
  });

/** The view to show so that the area is seen: the present one where it is, else the first that shows it. */
export const viewOf = (area: HeadArea, now: View): View =>
  seenFrom(now, area) ? now : (VIEWS.find((view) => seenFrom(view, area)) ?? now);
