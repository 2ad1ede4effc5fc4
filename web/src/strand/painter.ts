import { fibreTable, OWN_COLUMNS } from './fibres';
import { hairPaths } from './paths';
import { sheenStart, type PaintRequest } from './request';
import { FRAGMENT, VERTEX } from './shader';
import { hairShape, type HairShape } from './style';
import { countWeights, evenWeights, type Weights } from './weights';

const UNIFORMS = [
  'uSize',
  'uOrigin',
  'uScale',
  'uSoft',
  'uCount',
  'uColumn',
  'uLock',
  'uSheen',
  'uSheenStart',
  'uShade',
  'uPaths',
  'uFibres',
  'uEnds',
] as const;
type Uniform = (typeof UNIFORMS)[number];

/** Light and dark across one fibre. */
const FIBRE_CONTRAST = 0.3;
/** Columns of the coarse grid per px: at least 200 for a whole strip where that many can differ. */
const gridOf = (width: number): number => Math.min(1, Math.max(0.25, 200 / width));
/** Strips whose fibres are kept. */
const KEPT = 48;

interface Known {
  readonly shape: HairShape;
  readonly ends: readonly number[];
  readonly weights: Weights;
  readonly texture: WebGLTexture;
}

function compile(gl: WebGL2RenderingContext, kind: number, source: string): WebGLShader {
  const shader = gl.createShader(kind);
  if (!shader) throw new Error('strand: no shader object');
  gl.shaderSource(shader, source);
  gl.compileShader(shader);
  if (!gl.getShaderParameter(shader, gl.COMPILE_STATUS) && !gl.isContextLost()) {
    throw new Error(`strand: shader does not compile: ${gl.getShaderInfoLog(shader) ?? ''}`);
  }
  return shader;
}

function link(gl: WebGL2RenderingContext): WebGLProgram {
  const program = gl.createProgram();
  gl.attachShader(program, compile(gl, gl.VERTEX_SHADER, VERTEX));
  gl.attachShader(program, compile(gl, gl.FRAGMENT_SHADER, FRAGMENT));
  gl.linkProgram(program);
  if (!gl.getProgramParameter(program, gl.LINK_STATUS) && !gl.isContextLost()) {
    throw new Error(`strand: program does not link: ${gl.getProgramInfoLog(program) ?? ''}`);
  }
  return program;
}

function dataTexture(gl: WebGL2RenderingContext, unit: number): WebGLTexture {
  const texture = gl.createTexture();
  gl.activeTexture(gl.TEXTURE0 + unit);
  gl.bindTexture(gl.TEXTURE_2D, texture);
  for (const name of [gl.TEXTURE_MIN_FILTER, gl.TEXTURE_MAG_FILTER]) {
    gl.texParameteri(gl.TEXTURE_2D, name, gl.NEAREST);
  }
  return texture;
}

/** One WebGL2 context that draws every strip of a page, one after another. */
export class HairPainter {
  readonly canvas: OffscreenCanvas | HTMLCanvasElement;
  readonly #gl: WebGL2RenderingContext;
  #at: Record<Uniform, WebGLUniformLocation | null> | null = null;
  #lost = false;
  readonly #kept = new Map<string, Known>();

  private constructor(canvas: OffscreenCanvas | HTMLCanvasElement, gl: WebGL2RenderingContext) {
    this.canvas = canvas;
    this.#gl = gl;
    canvas.addEventListener('webglcontextlost', (event) => {
      event.preventDefault();
      this.#lost = true;
      this.#at = null;
      this.#kept.clear();
    });
    canvas.addEventListener('webglcontextrestored', () => (this.#lost = false));
  }

  /** Null where the browser gives no WebGL2. */
  static create(): HairPainter | null {
    const canvas =
      typeof OffscreenCanvas === 'function' ? new OffscreenCanvas(16, 16) : document.createElement('canvas');
    const gl = canvas.getContext('webgl2', { premultipliedAlpha: true, antialias: false, depth: false });
    return gl ? new HairPainter(canvas, gl as WebGL2RenderingContext) : null;
  }

  get lost(): boolean {
    return this.#lost || this.#gl.isContextLost();
  }

  /** Gives the context back; the painter cannot draw afterwards. */
  release(): void {
    this.#gl.getExtension('WEBGL_lose_context')?.loseContext();
  }

  #prepare(): Record<Uniform, WebGLUniformLocation | null> {
    if (this.#at) return this.#at;
    const gl = this.#gl;
    const program = link(gl);
    gl.useProgram(program);
    gl.bindVertexArray(gl.createVertexArray());
    for (const unit of [1, 2]) dataTexture(gl, unit);
    const at = Object.fromEntries(UNIFORMS.map((u) => [u, gl.getUniformLocation(program, u)]));
    this.#at = at as Record<Uniform, WebGLUniformLocation | null>;
    gl.uniform1i(this.#at.uPaths, 0);
    gl.uniform1i(this.#at.uFibres, 1);
    gl.uniform1i(this.#at.uEnds, 2);
    return this.#at;
  }

  #upload(unit: number, format: 'rgba' | 'r', width: number, height: number, data: Float32Array): void {
    const gl = this.#gl;
    const [inner, outer] = format === 'rgba' ? [gl.RGBA32F, gl.RGBA] : [gl.R32F, gl.RED];
    gl.activeTexture(gl.TEXTURE0 + unit);
    gl.texImage2D(gl.TEXTURE_2D, 0, inner, width, height, 0, outer, gl.FLOAT, data);
  }

  /** Shape and visibility of the fibres of one strip; worked out once and kept while the strip keeps its size. */
  #known(request: PaintRequest): Known {
    const { picture, layout, seed, dpr } = request;
    const shape = hairShape(picture.hair, layout.hairWidth, layout.halfHeight, layout.pxPerCm, dpr);
    const ends = picture.spans.map((s) => s.toCm * layout.pxPerCm);
    const key = JSON.stringify([seed, shape, ends]);
    const kept = this.#kept.get(key);
    if (kept) return kept;
    if (this.#kept.size >= KEPT) this.#forget();
    const paths = hairPaths(shape, seed);
    const rows = shape.locks * shape.perLock + shape.flyaways;
    const texture = dataTexture(this.#gl, 0);
    this.#upload(0, 'rgba', paths.columns, paths.rows, paths.data);
    const known: Known = { shape, ends, texture, weights: evenWeights(rows, ends.length) };
    this.#fill(request, known);
    const measured = { ...known, weights: this.#measure(request, known, rows) };
    if (!this.lost) this.#kept.set(key, measured);
    return measured;
  }

  #forget(): void {
    for (const { texture } of this.#kept.values()) this.#gl.deleteTexture(texture);
    this.#kept.clear();
  }

  #fill({ picture, seed }: PaintRequest, { shape, ends, weights, texture }: Known): void {
    const table = fibreTable(picture, shape, seed, weights);
    const gl = this.#gl;
    gl.activeTexture(gl.TEXTURE0);
    gl.bindTexture(gl.TEXTURE_2D, texture);
    this.#upload(1, 'rgba', table.columns, table.rows, table.data);
    this.#upload(2, 'r', ends.length, 1, new Float32Array(ends));
  }

  /** Asks the shader on a coarse grid which fibre lies uppermost and how light it is drawn. */
  #measure(request: PaintRequest, known: Known, rows: number): Weights {
    const gl = this.#gl;
    const { shape, ends } = known;
    const grid = gridOf(shape.width);
    const across = Math.min(2, this.canvas.height / shape.height);
    const columns = Math.max(1, Math.min(this.canvas.width, Math.floor(shape.width * grid)));
    const tall = Math.floor(shape.height * across);
    this.#draw(request, known, { x: grid, y: across }, { y: 0, width: columns, height: tall }, 0, 0);
    const told = new Uint8Array(columns * tall * 4);
    gl.readPixels(0, 0, columns, tall, gl.RGBA, gl.UNSIGNED_BYTE, told);
    return countWeights(
      told,
      columns,
      rows,
      ends.map((end) => end * grid),
    );
  }

  #draw(
    request: PaintRequest,
    known: Known,
    scale: { x: number; y: number },
    box: { y: number; width: number; height: number },
    firstColumn: number,
    samples: number,
  ): void {
    const gl = this.#gl;
    const at = this.#prepare();
    const { picture, seed, sheen = 1 } = request;
    const { shape } = known;
    const { style } = shape;
    gl.viewport(0, box.y, box.width, box.height);
    gl.scissor(0, box.y, box.width, box.height);
    gl.uniform2f(at.uSize, shape.width, shape.height);
    gl.uniform2f(at.uOrigin, 0, box.y);
    gl.uniform2f(at.uScale, scale.x, scale.y);
    gl.uniform1f(at.uSoft, shape.pxPerCm * 0.12);
    gl.uniform4i(at.uCount, shape.locks, shape.perLock, shape.flyaways, shape.reach);
    gl.uniform3i(at.uColumn, picture.spans.length, OWN_COLUMNS + firstColumn, samples);
    gl.uniform3f(at.uLock, shape.spacing, shape.halfLock, shape.margin);
    const follows = style.sheenCm === style.wavelengthCm ? 1 : 0;
    gl.uniform4f(at.uSheen, style.sheenCm * shape.pxPerCm, style.sheenWidth, sheen, follows);
    gl.uniform1f(at.uSheenStart, sheenStart(seed));
    gl.uniform3f(at.uShade, style.depth, style.round, FIBRE_CONTRAST);
    gl.drawArrays(gl.TRIANGLE_STRIP, 0, 4);
  }

  #drawHalf(request: PaintRequest, known: Known, top: number, firstColumn: number): void {
    const { layout, dpr } = request;
    const height = Math.round(layout.halfHeight * dpr);
    const y = this.canvas.height - Math.round(top * dpr) - height;
    const width = Math.min(this.canvas.width, Math.ceil(layout.hairWidth * dpr));
    this.#draw(request, known, { x: dpr, y: dpr }, { y, width, height }, firstColumn, dpr >= 2 ? 2 : 4);
  }

  /** Draws the hair of one strip into `canvas` (device px of the whole strip, transparent around it). */
  paint(request: PaintRequest): void {
    const gl = this.#gl;
    const { layout, picture, dpr } = request;
    const width = Math.round(layout.width * dpr);
    const height = Math.round(layout.height * dpr);
    if (this.canvas.width !== width) this.canvas.width = width;
    if (this.canvas.height !== height) this.canvas.height = height;
    this.#prepare();
    const known = this.#known(request);
    this.#fill(request, known);
    gl.disable(gl.SCISSOR_TEST);
    gl.clearColor(0, 0, 0, 0);
    gl.clear(gl.COLOR_BUFFER_BIT);
    gl.enable(gl.SCISSOR_TEST);
    this.#drawHalf(request, known, layout.todayTop, 0);
    if (layout.plannedTop !== null) this.#drawHalf(request, known, layout.plannedTop, picture.spans.length);
  }
}

let shared: HairPainter | null | undefined;
const watchers = new Set<() => void>();

function makeShared(): HairPainter | null {
  const painter = HairPainter.create();
  for (const kind of ['webglcontextlost', 'webglcontextrestored']) {
    painter?.canvas.addEventListener(kind, () => watchers.forEach((tell) => tell()));
  }
  return painter;
}

/** The painter of this page; null means: draw with plain strokes. */
export function sharedPainter(): HairPainter | null {
  if (shared === undefined) shared = makeShared();
  return shared && !shared.lost ? shared : null;
}

/** Calls `tell` when the painter is lost or comes back, so that strips draw again; returns the way to stop. */
export function watchPainter(tell: () => void): () => void {
  watchers.add(tell);
  return () => watchers.delete(tell);
}
