import type { Population, Rgb, StrandPicture, StrandProblem, StrandSpan } from './types';

/** cm, and the sum of shares. */
const TOLERANCE = 5e-3;

const inRange = (colour: Rgb): boolean => colour.every((v) => v >= 0 && v <= 1);

function checkPopulations(list: readonly Population[], span: StrandSpan): StrandProblem[] {
  const problems: StrandProblem[] = [];
  const sum = list.reduce((total, p) => total + p.share, 0);
  const sharesFine = list.every((p) => p.share >= 0) && Math.abs(sum - 1) <= TOLERANCE;
  if (!sharesFine) problems.push({ code: 'shares_not_one', span: span.id, found: sum });
  for (const p of list) {
    if (!inRange(p.srgb)) problems.push({ code: 'colour_out_of_range', span: span.id });
    if (p.packets && !(p.packets.widthMm > 0 && p.packets.everyMm >= p.packets.widthMm)) {
      problems.push({ code: 'packets_impossible', span: span.id, found: p.packets.widthMm });
    }
  }
  return problems;
}

function checkSpan(span: StrandSpan, expectedFrom: number): StrandProblem[] {
  const problems: StrandProblem[] = [];
  if (!(span.toCm > span.fromCm)) problems.push({ code: 'span_empty', span: span.id, found: span.toCm });
  if (!(Math.abs(span.fromCm - expectedFrom) <= TOLERANCE)) {
    problems.push({ code: 'spans_not_joined', span: span.id, found: span.fromCm });
  }
  if (span.today.length === 0) problems.push({ code: 'no_populations', span: span.id });
  else problems.push(...checkPopulations(span.today, span));
  if (span.planned.length > 0) problems.push(...checkPopulations(span.planned, span));
  const beds = [span.mixedBed?.today, span.mixedBed?.planned, span.fan?.p10, span.fan?.p50, span.fan?.p90];
  if (beds.some((colour) => colour && !inRange(colour))) {
    problems.push({ code: 'colour_out_of_range', span: span.id });
  }
  return problems;
}

/** All problems of a picture; an empty list means that it can be drawn. */
export function checkPicture(picture: StrandPicture): StrandProblem[] {
  const problems: StrandProblem[] = [];
  const { lengthCm, spans, hair } = picture;
  if (!(lengthCm > 0 && Number.isFinite(lengthCm))) {
    problems.push({ code: 'length_not_positive', found: lengthCm });
  }
  if (!(hair.diameterUm >= 30 && hair.diameterUm <= 130)) {
    problems.push({ code: 'diameter_out_of_range', found: hair.diameterUm });
  }
  if (spans.length === 0) return [...problems, { code: 'no_spans' }];
  // Hair next to the scalp may be unread; from the first span on there is no gap.
  let at = Math.max(spans[0]?.fromCm ?? 0, 0);
  for (const span of spans) {
    problems.push(...checkSpan(span, at));
    at = span.toCm;
  }
  if (!(Math.abs(at - lengthCm) <= TOLERANCE)) problems.push({ code: 'spans_not_to_tip', found: at });
  return problems;
}

/** True when any span has a plan, so that the lower half is drawn. */
export const hasPlan = (picture: StrandPicture): boolean =>
  picture.spans.some((span) => span.planned.length > 0);
