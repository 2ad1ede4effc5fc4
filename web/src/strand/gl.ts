/** The few steps every WebGL2 drawing needs. */

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

/** A linked program and where its uniforms are. */
export interface Program<U extends string> {
  readonly program: WebGLProgram;
  readonly at: Readonly<Record<U, WebGLUniformLocation | null>>;
}

export function link<U extends string>(
  gl: WebGL2RenderingContext,
  vertex: string,
  fragment: string,
  uniforms: readonly U[],
): Program<U> {
  const program = gl.createProgram();
  gl.attachShader(program, compile(gl, gl.VERTEX_SHADER, vertex));
  gl.attachShader(program, compile(gl, gl.FRAGMENT_SHADER, fragment));
  gl.linkProgram(program);
  if (!gl.getProgramParameter(program, gl.LINK_STATUS) && !gl.isContextLost()) {
    throw new Error(`strand: program does not link: ${gl.getProgramInfoLog(program) ?? ''}`);
  }
  const at = Object.fromEntries(uniforms.map((u) => [u, gl.getUniformLocation(program, u)]));
  return { program, at: at as Record<U, WebGLUniformLocation | null> };
}

/** A texture of plain numbers bound to `unit`: read by place, never smoothed. */
export function dataTexture(gl: WebGL2RenderingContext, unit: number): WebGLTexture {
  const texture = gl.createTexture();
  gl.activeTexture(gl.TEXTURE0 + unit);
  gl.bindTexture(gl.TEXTURE_2D, texture);
  for (const name of [gl.TEXTURE_MIN_FILTER, gl.TEXTURE_MAG_FILTER]) {
    gl.texParameteri(gl.TEXTURE_2D, name, gl.NEAREST);
  }
  return texture;
}

/** Fills the texture bound to `unit` with floats: four or one to a place. */
export function upload(
  gl: WebGL2RenderingContext,
  unit: number,
  format: 'rgba' | 'r',
  width: number,
  height: number,
  data: Float32Array,
): void {
  const [inner, outer] = format === 'rgba' ? [gl.RGBA32F, gl.RGBA] : [gl.R32F, gl.RED];
  gl.activeTexture(gl.TEXTURE0 + unit);
  gl.texImage2D(gl.TEXTURE_2D, 0, inner, width, height, 0, outer, gl.FLOAT, data);
}
