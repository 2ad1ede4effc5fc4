import { fibreTable } from './fibres';
import { dataTexture, link, upload, type Program } from './gl';
import { hairPaths } from './paths';
import { sheenStart, type PaintRequest } from './request';
import { RELIEF, VERTEX } from './shader';
import { hairShape, type HairShape } from './style';
import { evenWeights, type Grid } from './weights';

/** Texture units: paths, fibres, ends of spans, relief. */
export const UNIT = { paths: 0, fibres: 1, ends: 2, relief: 3 } as const;

const UNIFORMS = [
  'uSize',
  'uScale',
  'uSamples',
  'uCount',
  'uLock',
  'uSheen',
  'uSheenStart',
  'uShade',
  'uPaths',
  'uFibres',
] as const;

/** Light and dark across one fibre. */
const FIBRE_CONTRAST = 0.3;
/** Columns of the coarse grid per px: at least 200 for a whole strip where that many can differ. */
const gridOf = (width: number): number => Math.min(1, Math.max(0.25, 200 / width));

/** Everything about the hair of one strip that does not depend on colour. */
export interface Relief {
  readonly shape: HairShape;
  readonly rows: number;
  readonly samples: number;
  readonly width: number;
  readonly height: number;
  readonly texture: WebGLTexture;
  /** A coarse copy to count on, and its columns per px. */
  readonly grid: Grid;
  readonly gridScale: number;
  readonly bytes: number;
}

export const shapeOf = ({ picture, layout, dpr }: PaintRequest): HairShape =>
  hairShape(picture.hair, layout.hairWidth, layout.halfHeight, layout.pxPerCm, dpr);

/** Works out reliefs, the costly half of drawing hair. */
export class ReliefMaker {
  readonly #gl: WebGL2RenderingContext;
  readonly #pass: Program<(typeof UNIFORMS)[number]>;
  readonly #target: WebGLFramebuffer;
  readonly #paths: WebGLTexture;

  constructor(gl: WebGL2RenderingContext) {
    this.#gl = gl;
    this.#pass = link(gl, VERTEX, RELIEF, UNIFORMS);
    this.#target = gl.createFramebuffer();
    this.#paths = dataTexture(gl, UNIT.paths);
    gl.useProgram(this.#pass.program);
    gl.uniform1i(this.#pass.at.uPaths, UNIT.paths);
    gl.uniform1i(this.#pass.at.uFibres, UNIT.fibres);
  }

  /** The relief of a strip. The texture of fibres must be bound to its unit; it is filled here. */
  make(request: PaintRequest, shape: HairShape): Relief {
    const gl = this.#gl;
    const { seed, dpr, layout, picture } = request;
    const rows = shape.locks * shape.perLock + shape.flyaways;
    const samples = dpr >= 2 ? 2 : 4;
    const width = Math.ceil(layout.hairWidth * dpr);
    const height = Math.round(layout.halfHeight * dpr);
    const paths = hairPaths(shape, seed);
    gl.useProgram(this.#pass.program);
    gl.activeTexture(gl.TEXTURE0 + UNIT.paths);
    gl.bindTexture(gl.TEXTURE_2D, this.#paths);
    upload(gl, UNIT.paths, 'rgba', paths.columns, paths.rows, paths.data);
    const table = fibreTable(picture, shape, seed, evenWeights(rows, picture.spans.length));
    upload(gl, UNIT.fibres, 'rgba', table.columns, table.rows, table.data);
    this.#describe(shape, seed);

    const gridScale = gridOf(shape.width);
    const columns = Math.max(1, Math.floor(shape.width * gridScale));
    const told = this.#tell(columns, Math.floor(shape.height * 2), gridScale);
    const texture = this.#draw(width, height, { x: dpr, y: dpr }, samples);
    const bytes = width * height * samples * 8;
    return { shape, rows, samples, width, height, texture, gridScale, grid: { columns, ...told }, bytes };
  }

  #describe(shape: HairShape, seed: number): void {
    const gl = this.#gl;
    const { at } = this.#pass;
    const { style } = shape;
    gl.uniform2f(at.uSize, shape.width, shape.height);
    gl.uniform4i(at.uCount, shape.locks, shape.perLock, shape.flyaways, shape.reach);
    gl.uniform3f(at.uLock, shape.spacing, shape.halfLock, shape.margin);
    const follows = style.sheenCm === style.wavelengthCm ? 1 : 0;
    gl.uniform3f(at.uSheen, style.sheenCm * shape.pxPerCm, style.sheenWidth, follows);
    gl.uniform1f(at.uSheenStart, sheenStart(seed));
    gl.uniform3f(at.uShade, style.depth, style.round, FIBRE_CONTRAST);
  }

  /** Draws into a new texture and leaves it bound to its unit. */
  #draw(width: number, height: number, scale: { x: number; y: number }, samples: number): WebGLTexture {
    const gl = this.#gl;
    const texture = dataTexture(gl, UNIT.relief);
    const tall = height * samples;
    gl.texStorage2D(gl.TEXTURE_2D, 1, gl.RGBA16UI, width, tall);
    gl.bindFramebuffer(gl.FRAMEBUFFER, this.#target);
    gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, texture, 0);
    gl.disable(gl.SCISSOR_TEST);
    gl.viewport(0, 0, width, tall);
    gl.uniform2f(this.#pass.at.uScale, scale.x, scale.y);
    gl.uniform2i(this.#pass.at.uSamples, samples, height);
    gl.drawArrays(gl.TRIANGLE_STRIP, 0, 4);
    return texture;
  }

  /** Asks on a coarse grid which fibre lies uppermost and how light it is drawn. */
  #tell(columns: number, tall: number, across: number): { fibre: Uint16Array; light: Uint16Array } {
    const gl = this.#gl;
    const texture = this.#draw(columns, tall, { x: across, y: 2 }, 1);
    const told = new Uint32Array(columns * tall * 4);
    gl.readPixels(0, 0, columns, tall, gl.RGBA_INTEGER, gl.UNSIGNED_INT, told);
    gl.deleteTexture(texture);
    const every = (k: number) => Uint16Array.from({ length: columns * tall }, (_, i) => told[i * 4 + k] ?? 0);
    return { fibre: every(0), light: every(1) };
  }
}
