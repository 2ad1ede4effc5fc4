import { cssColour, mix } from './colour';
import { FAN_WIDTH, LETTER_RADIUS, type StripLayout } from './layout';
import type { ColourFan, Rgb } from './types';

/** Anything one can draw on: the strip's own canvas or the still. */
export type Pen = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

export interface Ink {
  readonly text: string;
  readonly font: string;
}

const BLADES = 9;
const DARK = 'rgb(16 16 16)';
const PALE = 'rgb(246 246 246)';

/** Colour of blade `i` of `count`, from the 10th over the 50th to the 90th percentile. */
export function bladeColour(fan: ColourFan, i: number, count: number): Rgb {
  const t = (i + 0.5) / count;
  return t < 0.5 ? mix(fan.p10, fan.p50, t * 2) : mix(fan.p50, fan.p90, t * 2 - 1);
}

/** A fan opening away from the tip: each blade one likely colour, the darkest end below. */
function drawFan(pen: Pen, fan: ColourFan, x: number, y: number, height: number): void {
  const narrow = Math.min(height * 0.42, 18);
  const middle = y + height / 2;
  const inset = height < 40 ? 1 : 0;
  const gap = height / BLADES >= 4 ? 0.35 : -0.3;
  for (let i = 0; i < BLADES; i++) {
    const edge = (k: number, tall: number) => middle + (0.5 - k / BLADES) * tall;
    pen.beginPath();
    pen.moveTo(x, edge(i, narrow));
    pen.lineTo(x + FAN_WIDTH, edge(i, height - 2 * inset) - gap);
    pen.lineTo(x + FAN_WIDTH, edge(i + 1, height - 2 * inset) + gap);
    pen.lineTo(x, edge(i + 1, narrow));
    pen.closePath();
    pen.fillStyle = cssColour(bladeColour(fan, i, BLADES));
    pen.fill();
  }
  const tall = (height - 2 * inset) / BLADES;
  pen.strokeStyle = DARK;
  pen.lineWidth = 1.5;
  pen.beginPath();
  pen.moveTo(x + FAN_WIDTH + 2, middle - tall / 2);
  pen.lineTo(x + FAN_WIDTH + 2, middle + tall / 2);
  pen.stroke();
}

/** A dashed line in two greys, so that it shows on any hair. */
function drawJoin(pen: Pen, x: number, top: number, bottom: number): void {
  for (const [colour, offset] of [
    [DARK, 0],
    [PALE, 3],
  ] as const) {
    pen.strokeStyle = colour;
    pen.globalAlpha = colour === PALE ? 0.7 : 0.85;
    pen.lineWidth = 1;
    pen.setLineDash([3, 3]);
    pen.lineDashOffset = offset;
    pen.beginPath();
    pen.moveTo(Math.round(x) + 0.5, top);
    pen.lineTo(Math.round(x) + 0.5, bottom);
    pen.stroke();
  }
  pen.globalAlpha = 1;
  pen.setLineDash([]);
}

function drawLetter(pen: Pen, letter: string, x: number, y: number, ink: Ink): void {
  pen.beginPath();
  pen.arc(x, y, LETTER_RADIUS, 0, Math.PI * 2);
  pen.fillStyle = PALE;
  pen.fill();
  pen.strokeStyle = DARK;
  pen.lineWidth = 1.5;
  pen.stroke();
  pen.fillStyle = DARK;
  pen.font = `700 13px ${ink.font}`;
  pen.textAlign = 'center';
  pen.textBaseline = 'alphabetic';
  pen.fillText(letter, x, y + 4.7);
}

/** A lozenge with "≠": this colour lies outside what the screen can show. */
function drawMark(pen: Pen, x: number, y: number, ink: Ink): void {
  pen.save();
  pen.translate(x, y);
  pen.rotate(Math.PI / 4);
  pen.beginPath();
  pen.rect(-6, -6, 12, 12);
  pen.restore();
  pen.fillStyle = PALE;
  pen.fill();
  pen.strokeStyle = DARK;
  pen.lineWidth = 1.25;
  pen.stroke();
  pen.fillStyle = DARK;
  pen.font = `700 11px ${ink.font}`;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.fillText('≠', x, y + 0.5);
}

/** What changes most often; right of all else, but for letters on very short hair. */
export function drawFans(pen: Pen, layout: StripLayout): void {
  for (const { fan, y, height } of layout.fans) drawFan(pen, fan, layout.fanX, y, height);
}

/** Everything on the strip that is not hair; the pen is scaled to CSS px. */
export function drawOverlay(pen: Pen, layout: StripLayout, ink: Ink): void {
  const bottom = (layout.plannedTop ?? layout.todayTop) + layout.halfHeight;
  if (layout.bareTo > 0) drawJoin(pen, layout.bareTo, layout.todayTop - 2, bottom);
  for (const x of layout.joins) drawJoin(pen, x, layout.todayTop - 2, bottom);
  drawFans(pen, layout);
  for (const { x, y } of layout.marks) drawMark(pen, x, y, ink);
  for (const { letter, x, y } of layout.letters) drawLetter(pen, letter, x, y, ink);
}

/** A ruler in whole cm from the scalp, figures every 5 cm; `y` is its upper edge, 22 px high. */
export function drawRuler(
  pen: Pen,
  lengthCm: number,
  pxPerCm: number,
  y: number,
  unit: string,
  ink: Ink,
): void {
  pen.strokeStyle = ink.text;
  pen.fillStyle = ink.text;
  pen.lineWidth = 1;
  pen.font = `500 12px ${ink.font}`;
  pen.textBaseline = 'alphabetic';
  const every = pxPerCm >= 5 ? 5 : 10;
  for (let cm = 0; cm <= lengthCm + 1e-6; cm++) {
    if (pxPerCm < 4 && cm % 5 !== 0) continue;
    const x = Math.round(cm * pxPerCm) + 0.5;
    const long = cm % every === 0;
    pen.globalAlpha = long ? 1 : 0.55;
    pen.beginPath();
    pen.moveTo(x, y);
    pen.lineTo(x, y + (long ? 7 : 4));
    pen.stroke();
    if (!long) continue;
    pen.textAlign = cm === 0 ? 'left' : 'center';
    pen.fillText(cm === 0 ? `0 ${unit}` : String(cm), cm === 0 ? 0 : x, y + 19);
  }
  pen.globalAlpha = 1;
}
