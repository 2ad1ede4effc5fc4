/**
 * The hair, fibre by fibre, in two passes (GLSL ES 3.00). The first finds for every sample which fibre lies uppermost and
 * how light falls on it; the second gives fibres their colours, and is all that runs again when a colour changes.
 * Lengths in CSS px, y downwards.
 */

export const VERTEX = `#version 300 es
void main() {
  vec2 corner = vec2(float(gl_VertexID & 1), float(gl_VertexID >> 1));
  gl_Position = vec4(corner * 4.0 - 1.0, 0.0, 1.0);
}`;

/** Whole steps of light that make a fibre show its own colour. */
export const LIGHT_STEPS = 16384;

const HEAD = `#version 300 es
precision highp float;
precision highp int;
precision highp sampler2D;
precision highp usampler2D;

uniform vec2 uSize;       // hair area, px
uniform vec2 uScale;      // device px per px
uniform ivec2 uSamples;   // samples per pixel, device px high each block of them
uniform sampler2D uFibres;// columns 0, 1: see fibres.ts; then the linear colour in each span

const float TAU = 6.28318530718;
const float LIGHT = ${LIGHT_STEPS}.0;
const float SHEEN = 16384.0;

// Where sample s of the pixel at whole place at lies in the hair, px.
vec2 place(vec2 at, int s) {
  vec2 off = vec2(fract(float(s) * 0.5 + 0.25), (float(s) + 0.5) / float(uSamples.x)) - 0.5;
  vec2 p = (at + 0.5 + off) / uScale;
  return vec2(p.x, uSize.y - p.y);
}
`;

/** The first pass: fibre + 1, light, first and second highlight; the samples of a pixel in blocks above one another. */
export const RELIEF = `${HEAD}
uniform ivec4 uCount;     // locks, fibres per lock, flyaways, locks to look at on each side
uniform vec3 uLock;       // spacing px, half lock px, margin px
uniform vec3 uSheen;      // distance px, half width rad, 1 = follows the wave
uniform float uSheenStart;// phase of the first highlight when it does not follow the wave
uniform vec3 uShade;      // depth, roundness, fibre contrast
uniform sampler2D uPaths; // see paths.ts

out uvec4 outRelief;

float cycle(float phase) { return abs(mod(phase + 3.14159265, TAU) - 3.14159265); }

// A bell with an end: exactly zero outside, so that hair away from highlights shows its own colour.
float bell(float d) { float k = max(1.0 - d * d, 0.0); return k * k * k; }

vec4 pathAt(int row, float x) {
  int i = int(x);
  return mix(texelFetch(uPaths, ivec2(i, row), 0), texelFetch(uPaths, ivec2(i + 1, row), 0), x - float(i));
}

// How strongly the two highlights of a fibre show: one from its surface, a wider one that has passed through its colour.
vec2 sheen(float phase, float x, vec2 own) {
  float glint = 0.15 + 1.9 * own.y * own.y * (0.75 + 0.25 * sin(x * 0.05 + own.x * 40.0));
  float first = bell(cycle(phase + 0.9 * own.x) / uSheen.y);
  float second = bell(cycle(phase + 0.55 + 1.1 * own.x) / (uSheen.y * 1.25));
  return vec2(first, second) * glint;
}

// One point of the hair; zero where there is none.
uvec4 hairAt(vec2 p) {
  int middle = int(floor((p.y - uLock.z) / uLock.x));
  int lock = -1;
  int row = 0;
  float top = -100.0;
  bool above = false;
  bool below = false;
  float u = 0.0;
  vec4 path = vec4(0.0);
  vec4 fibre = vec4(0.0);
  int last = min(middle + uCount.w, uCount.x - 1);
  for (int l = max(middle - uCount.w, 0); l <= last; l++) {
    vec4 at = pathAt(l, p.x);
    float across = (p.y - at.x) * at.y;
    float z = at.z - 0.6 * across * across;
    if (across > 0.0) above = true; else below = true;
    // A lock goes on below its neighbours, so that no hole opens between them.
    if (abs(across) >= 3.0) continue;
    if (abs(across) > 1.0) { across -= sign(across) * 2.0; z -= 4.0; }
    if (z + 0.7 <= top) continue;
    float comb = across + 0.1 * (1.0 - across * across) * sin(p.x * 0.021 + float(l) * 31.0);
    int r = l * uCount.y + clamp(int((comb * 0.5 + 0.5) * float(uCount.y)), 0, uCount.y - 1);
    vec4 f = texelFetch(uFibres, ivec2(0, r), 0);
    z += 0.7 * f.z;
    if (z <= top || p.x > f.x) continue;
    top = z; u = comb; path = at; lock = l; row = r; fibre = f;
  }
  if (lock < 0 || (top < -2.0 && !(above && below))) return uvec4(0u);

  // Shadow of the locks that lie above, stronger below them: the light comes from the upper edge.
  float under = top < -2.0 ? 1.0 : 0.0;
  for (int k = -2; k <= 2; k++) {
    int l = lock + k;
    if (k == 0 || l < 0 || l >= uCount.x) continue;
    vec4 at = texelFetch(uPaths, ivec2(int(p.x), l), 0);
    float across = (p.y - at.x) * at.y;
    float gap = (abs(across) - 1.0) * uLock.y;
    if (at.z - 0.6 * across * across + 0.35 <= top || gap < 0.0) continue;
    under = max(under, exp(-gap / 1.8) * (across > 0.0 ? 1.0 : 0.55));
  }

  float t = fract((u * 0.5 + 0.5) * float(uCount.y));
  float v = (p.y / uSize.y) * 2.0 - 1.0;
  float along = sin(p.x * (0.03 + 0.02 * fibre.z) + float(row) * 2.4);
  float shade = uShade.z * cos(TAU * (t - 0.42)) + uShade.y * ((0.6667 - u * u) - 0.45 * u)
    + 0.07 * along + 0.10 * (0.3333 - v * v) - 0.05 * v;
  float lift = (1.0 - 0.75 * under) * (0.55 + 0.45 * (1.0 - u * u)) * (1.0 - 0.35 * v * v);

  // Single fibres that lie across the others.
  float step = (uSize.y - 2.0 * uLock.z) / float(uCount.z);
  int about = int(floor((p.y - uLock.z) / step));
  for (int f = max(about - 2, 0); f <= min(about + 2, uCount.z - 1); f++) {
    vec4 at = pathAt(uCount.x + f, p.x);
    float d = (p.y - at.x) * at.y;
    if (abs(d) > 4.0) continue;
    int r = uCount.x * uCount.y + f;
    vec4 own = texelFetch(uFibres, ivec2(0, r), 0);
    if (p.x > own.x) continue;
    if (abs(d) < 1.0) {
      row = r; fibre = own; path = at;
      under = 0.0;
      shade = 0.24 - 0.44 * abs(d);
      lift = 1.0 - 0.35 * v * v;
    } else if (d > 0.0 && row != r) {
      shade -= 0.2 * (1.0 - smoothstep(1.0, 4.0, d));
    }
  }

  float seen = max((1.0 + shade) * (1.0 - uShade.x * under), 0.0);
  float turn = uSheen.z > 0.5
    ? path.w
    : p.x * TAU / uSheen.x - uSheenStart + 0.5 * sin(path.w) + 0.5 * sin(float(lock) * 5.0) + 0.5 * v;
  vec2 light = sheen(turn, p.x, texelFetch(uFibres, ivec2(1, row), 0).xy) * lift;
  return uvec4(uint(row + 1), uvec3(min(vec3(seen * LIGHT, light * SHEEN) + 0.5, 65535.0)));
}

void main() {
  ivec2 at = ivec2(gl_FragCoord.xy);
  int s = at.y / uSamples.y;
  vec2 p = place(vec2(at.x, at.y - s * uSamples.y), s);
  outRelief = p.x >= 0.0 && p.x <= uSize.x ? hairAt(p) : uvec4(0u);
}`;

/** The second pass. */
export const COLOURING = `${HEAD}
uniform vec2 uOrigin;     // lower left corner of the hair in the drawing buffer, device px
uniform float uSoft;      // half length of the change at a join, px
uniform ivec2 uColumn;    // spans, first colour column
uniform float uStrength;  // of the highlights
uniform highp usampler2D uRelief;
uniform sampler2D uEnds;  // end of each span, px

out vec4 outColour;

vec3 fibreColour(int row, float x) {
  float at = x + texelFetch(uFibres, ivec2(0, row), 0).y;
  vec3 c = texelFetch(uFibres, ivec2(uColumn.y, row), 0).rgb;
  for (int s = 1; s < uColumn.x; s++) {
    float join = texelFetch(uEnds, ivec2(s - 1, 0), 0).r;
    float t = smoothstep(join - uSoft, join + uSoft, at);
    if (t <= 0.0) break;
    c = mix(c, texelFetch(uFibres, ivec2(uColumn.y + s, row), 0).rgb, t);
  }
  return c;
}

vec3 encode(vec3 c) {
  c = clamp(c, 0.0, 1.0);
  return mix(c * 12.92, 1.055 * pow(c, vec3(1.0 / 2.4)) - 0.055, step(0.0031308, c));
}

void main() {
  ivec2 at = ivec2(gl_FragCoord.xy - uOrigin);
  vec4 sum = vec4(0.0);
  for (int s = 0; s < uSamples.x; s++) {
    uvec4 hair = texelFetch(uRelief, ivec2(at.x, at.y + s * uSamples.y), 0);
    if (hair.r == 0u) continue;
    vec3 c = fibreColour(int(hair.r) - 1, place(vec2(at), s).x);
    float peak = max(max(c.r, c.g), max(c.b, 1e-4));
    vec3 tint = c / peak;
    vec3 body = c * min(float(hair.g) / LIGHT, 1.0 / peak);
    vec2 lobes = vec2(hair.ba) / SHEEN * uStrength;
    vec3 light = mix(vec3(1.0), tint, 0.5) * 0.17 * lobes.x + tint * sqrt(peak) * 0.6 * lobes.y;
    sum += vec4(body + (1.0 - body) * (1.0 - exp(-light)), 1.0);
  }
  float cover = sum.a / float(uSamples.x);
  vec3 colour = sum.a > 0.0 ? encode(sum.rgb / sum.a) : vec3(0.0);
  outColour = vec4(colour * cover, cover);
}`;
