import type { Hair, HairTexture } from './types';

/** How hair of one texture lies, in cm and in shares; a drawing convention, not a measurement. */
interface TextureStyle {
  /** Half the height of a wave, cm. */
  readonly amplitudeCm: number;
  readonly wavelengthCm: number;
  /** 1: neighbouring locks wave together; 0: each for itself. */
  readonly together: number;
  /** Drawn width of a lock in CSS px and how far locks lie over one another (1 = side by side). */
  readonly lockPx: number;
  readonly overlap: number;
  /** Distance between highlights along the hair, cm, and their half width in radians of that distance. */
  readonly sheenCm: number;
  readonly sheenWidth: number;
  /** How far a lock comes forward on each wave. */
  readonly turn: number;
  /** How deep one lock lies under another, 0..1. */
  readonly depth: number;
  /** Rounding of each lock, 0..1. */
  readonly round: number;
  /** Ragged length at the tip, cm. */
  readonly frayCm: number;
}

export const TEXTURES: Readonly<Record<HairTexture, TextureStyle>> = {
  straight: {
    amplitudeCm: 0.06,
    wavelengthCm: 9,
    together: 0.55,
    lockPx: 8,
    overlap: 1.3,
    sheenCm: 11,
    sheenWidth: 0.95,
    turn: 0,
    depth: 0.35,
    round: 0.14,
    frayCm: 0.9,
  },
  wavy: {
    amplitudeCm: 0.26,
    wavelengthCm: 5.2,
    together: 0.8,
    lockPx: 9,
    overlap: 1.45,
    sheenCm: 5.2,
    sheenWidth: 1.0,
    turn: 0.2,
    depth: 0.45,
    round: 0.2,
    frayCm: 1.1,
  },
  curly: {
    amplitudeCm: 0.4,
    wavelengthCm: 2.5,
    together: 0.35,
    lockPx: 7.5,
    overlap: 1.9,
    sheenCm: 2.5,
    sheenWidth: 0.95,
    turn: 0.8,
    depth: 0.6,
    round: 0.26,
    frayCm: 1.2,
  },
  coily: {
    amplitudeCm: 0.26,
    wavelengthCm: 0.95,
    together: 0.1,
    lockPx: 7,
    overlap: 2.0,
    sheenCm: 0.95,
    sheenWidth: 0.95,
    turn: 1,
    depth: 0.65,
    round: 0.28,
    frayCm: 0.8,
  },
};

/** The hair of one half in CSS px: everything the shader and the fallback need to know about shape. */
export interface HairShape {
  readonly width: number;
  readonly height: number;
  readonly pxPerCm: number;
  readonly locks: number;
  readonly perLock: number;
  readonly flyaways: number;
  readonly amplitude: number;
  readonly wavelength: number;
  readonly spacing: number;
  readonly halfLock: number;
  readonly fibrePx: number;
  readonly margin: number;
  readonly fray: number;
  /** Locks on each side that can reach one point. */
  readonly reach: number;
  readonly style: TextureStyle;
}

/**
 * Shape of one half. `width` and `height` in CSS px, `dpr` in device px per CSS px. Fibres are drawn much wider than
 * life (a real one is 0.07 mm), in proportion to the diameter, and never thinner than the screen can show.
 */
export function hairShape(
  hair: Hair,
  width: number,
  height: number,
  pxPerCm: number,
  dpr: number,
): HairShape {
  const style = TEXTURES[hair.texture];
  const fibrePx = Math.max((hair.diameterUm / 70) * 0.95, 1.15 / dpr);
  const amplitude = Math.min(style.amplitudeCm * pxPerCm, height * 0.15);
  const margin = 1 + amplitude * 1.1 + style.lockPx * 0.25;
  const inner = Math.max(height - 2 * margin, height * 0.4);
  const locks = Math.max(3, Math.round(inner / style.lockPx));
  const spacing = inner / locks;
  const halfLock = (spacing * style.overlap) / 2;
  return {
    width,
    height,
    pxPerCm,
    locks,
    amplitude,
    spacing,
    halfLock,
    fibrePx,
    margin,
    style,
    reach: Math.ceil(style.overlap / 2 + 0.15 + (amplitude * 1.1) / spacing),
    perLock: Math.max(3, Math.round((2 * halfLock) / fibrePx)),
    flyaways: Math.max(3, Math.round(inner / 7)),
    wavelength: style.wavelengthCm * pxPerCm,
    fray: Math.min(style.frayCm * pxPerCm, width * 0.14),
  };
}
