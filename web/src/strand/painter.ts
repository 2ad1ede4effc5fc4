import { fibreTable, OWN_COLUMNS } from './fibres';
import { dataTexture, link, upload, type Program } from './gl';
import { ReliefMaker, shapeOf, UNIT, type Relief } from './relief';
import type { PaintRequest } from './request';
import { COLOURING, LIGHT_STEPS, VERTEX } from './shader';
import { countWeights, type Weights } from './weights';

const UNIFORMS = [
  'uSize',
  'uScale',
  'uSamples',
  'uOrigin',
  'uSoft',
  'uColumn',
  'uStrength',
  'uRelief',
  'uFibres',
  'uEnds',
] as const;

/** Memory that kept reliefs may take; the newest stays in any case. */
const KEPT_BYTES = 64e6;

interface Known extends Relief {
  weights?: { readonly key: string; readonly value: Weights };
}

interface Tools {
  readonly reliefs: ReliefMaker;
  readonly pass: Program<(typeof UNIFORMS)[number]>;
}

/** One WebGL2 context that draws every strip of a page, one after another. */
export class HairPainter {
  readonly canvas: OffscreenCanvas | HTMLCanvasElement;
  readonly #gl: WebGL2RenderingContext;
  #tools: Tools | null = null;
  #lost = false;
  /** Oldest first. */
  readonly #kept = new Map<string, Known>();

  private constructor(canvas: OffscreenCanvas | HTMLCanvasElement, gl: WebGL2RenderingContext) {
    this.canvas = canvas;
    this.#gl = gl;
    canvas.addEventListener('webglcontextlost', (event) => {
      event.preventDefault();
      this.#lost = true;
      this.#tools = null;
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

  #prepare(): Tools {
    if (this.#tools) return this.#tools;
    const gl = this.#gl;
    gl.bindVertexArray(gl.createVertexArray());
    dataTexture(gl, UNIT.fibres);
    dataTexture(gl, UNIT.ends);
    const pass = link(gl, VERTEX, COLOURING, UNIFORMS);
    gl.useProgram(pass.program);
    gl.uniform1i(pass.at.uRelief, UNIT.relief);
    gl.uniform1i(pass.at.uFibres, UNIT.fibres);
    gl.uniform1i(pass.at.uEnds, UNIT.ends);
    this.#tools = { pass, reliefs: new ReliefMaker(gl) };
    return this.#tools;
  }

  /** The relief of a strip, worked out once and kept while the strip keeps its size. */
  #known(request: PaintRequest, { reliefs }: Tools): Known {
    const shape = shapeOf(request);
    const key = JSON.stringify([request.seed, request.dpr, shape]);
    const kept = this.#kept.get(key);
    this.#kept.delete(key);
    const known: Known = kept ?? reliefs.make(request, shape);
    this.#kept.set(key, known);
    this.#tidy();
    return known;
  }

  #tidy(): void {
    let bytes = [...this.#kept.values()].reduce((sum, known) => sum + known.bytes, 0);
    for (const [key, known] of this.#kept) {
      if (bytes <= KEPT_BYTES || this.#kept.size === 1) return;
      this.#gl.deleteTexture(known.texture);
      this.#kept.delete(key);
      bytes -= known.bytes;
    }
  }

  #weights(known: Known, ends: readonly number[]): Weights {
    const key = ends.join();
    if (known.weights?.key !== key) {
      const columns = ends.map((end) => end * known.gridScale);
      known.weights = { key, value: countWeights(known.grid, known.rows, columns, LIGHT_STEPS) };
    }
    return known.weights.value;
  }

  #drawHalf(request: PaintRequest, known: Known, top: number, firstColumn: number): void {
    const gl = this.#gl;
    const at = this.#prepare().pass.at;
    const { dpr, picture } = request;
    const { height } = known;
    const width = Math.min(this.canvas.width, known.width);
    const y = this.canvas.height - Math.round(top * dpr) - height;
    gl.viewport(0, y, width, height);
    gl.scissor(0, y, width, height);
    gl.uniform2f(at.uOrigin, 0, y);
    gl.uniform2i(at.uColumn, picture.spans.length, OWN_COLUMNS + firstColumn);
    gl.drawArrays(gl.TRIANGLE_STRIP, 0, 4);
  }

  /** Draws the hair of one strip into `canvas` (device px of the whole strip, transparent around it). */
  paint(request: PaintRequest): void {
    const gl = this.#gl;
    const { layout, picture, dpr, seed, sheen = 1 } = request;
    const width = Math.round(layout.width * dpr);
    const height = Math.round(layout.height * dpr);
    if (this.canvas.width !== width) this.canvas.width = width;
    if (this.canvas.height !== height) this.canvas.height = height;
    const tools = this.#prepare();
    const known = this.#known(request, tools);
    const { shape } = known;
    const ends = picture.spans.map((s) => s.toCm * layout.pxPerCm);
    const table = fibreTable(picture, shape, seed, this.#weights(known, ends));
    upload(gl, UNIT.fibres, 'rgba', table.columns, table.rows, table.data);
    upload(gl, UNIT.ends, 'r', ends.length, 1, new Float32Array(ends));
    gl.activeTexture(gl.TEXTURE0 + UNIT.relief);
    gl.bindTexture(gl.TEXTURE_2D, known.texture);
    gl.bindFramebuffer(gl.FRAMEBUFFER, null);
    gl.useProgram(tools.pass.program);
    const { at } = tools.pass;
    gl.uniform2f(at.uSize, shape.width, shape.height);
    gl.uniform2f(at.uScale, dpr, dpr);
    gl.uniform2i(at.uSamples, known.samples, known.height);
    gl.uniform1f(at.uSoft, shape.pxPerCm * 0.12);
    gl.uniform1f(at.uStrength, sheen);
    gl.disable(gl.SCISSOR_TEST);
    gl.clearColor(0, 0, 0, 0);
    gl.clear(gl.COLOR_BUFFER_BIT);
    gl.enable(gl.SCISSOR_TEST);
    this.#drawHalf(request, known, layout.todayTop, 0);
    if (layout.plannedTop !== null) this.#drawHalf(request, known, layout.plannedTop, picture.spans.length);
  }
}
