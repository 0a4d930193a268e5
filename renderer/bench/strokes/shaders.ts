/**
 * The shaders of the bench's line work. Circles and lines are solved per pixel, so they stay smooth at any zoom,
 * and every width is counted in device pixels.
 *
 * Each stroke names its owner, a row of the place table (x, y, rotation, emphasis): moving an arbor changes one
 * row and no geometry. Places are millimetres from the scene's origin, so single precision is enough.
 */

/** Row width of the place table, texels. */
export const PLACES_ACROSS = 256;
/** Pieces of the strip that carries a circle; the shader solves the circle itself, the strip only covers it. */
export const ARC_PIECES = 48;

const COMMON = /* glsl */ `
precision highp float;
precision highp int;
precision highp sampler2D;
uniform vec2 uCentre;     // middle of the view, mm from the scene's origin
uniform vec2 uHalf;       // half the bench, device pixels
uniform float uScale;     // device pixels for a millimetre
uniform float uRatio;     // device pixels for a CSS pixel
uniform float uDensity;   // 0 numbers .. 1 context
uniform float uUsualModule; // mm
uniform float uRecede;    // what the rest keeps of its strength while something is chosen
uniform vec3 uPens[6];
uniform sampler2D uPlaces;

vec4 placeOf(float owner) {
  int row = int(owner + 0.5);
  return texelFetch(uPlaces, ivec2(row % ${PLACES_ACROSS}, row / ${PLACES_ACROSS}), 0);
}
vec2 turned(vec2 p, float angle) {
  float c = cos(angle), s = sin(angle);
  return vec2(c * p.x - s * p.y, s * p.x + c * p.y);
}
// Teeth are drawn from about 9 pixels of pitch upward, or from 3 when the wheel is chosen. The usual module of the
// movement decides for all its wheels, so that a drawing is either of circles or of teeth.
float teethShown(float module, float emphasis) {
  float pixels = 3.14159265 * uScale / uRatio;
  float own = smoothstep(2.2, 3.2, module * pixels);
  return emphasis == 1.0 ? own : own * smoothstep(8.4, 9.0, uUsualModule * pixels);
}
// rgb of the pen and the strength of the stroke.
vec4 inkOf(float pen, float emphasis, float from, float untilTeeth) {
  int index = int(pen + 0.5);
  bool chosen = emphasis == 1.0 || emphasis == 3.0;
  if (chosen && index < 2) index = 3;
  float alpha = from <= 0.0 || emphasis == 1.0 ? 1.0 : smoothstep(from - 0.2, from, uDensity);
  if (emphasis == 0.0) alpha *= uRecede;
  if (emphasis < 0.0) alpha = 0.0;
  if (untilTeeth > 0.0) alpha *= 1.0 - 0.9 * teethShown(untilTeeth, emphasis);
  return vec4(uPens[index], alpha);
}
`;

const FRAGMENT_COMMON = /* glsl */ `
precision highp float;
precision highp int;
uniform float uRatio;
uniform float uHatchShift;
out vec4 colour;

// Coverage of a dash pattern (CSS pixels), fitted so that a whole number of repeats fills the length.
float dashed(vec4 pattern, float along, float total) {
  float period = (pattern.x + pattern.y + pattern.z + pattern.w) * uRatio;
  float repeats = max(1.0, floor(total / period + 0.5));
  float s = total / repeats / uRatio / (pattern.x + pattern.y + pattern.z + pattern.w);
  // Ends and closing points fall in the middle of a long dash.
  float at = fract(along / total * repeats + 0.5 * pattern.x / (pattern.x + pattern.y + pattern.z + pattern.w))
    * total / repeats;
  float d1 = pattern.x * uRatio * s;
  float g1 = d1 + pattern.y * uRatio * s;
  float d2 = g1 + pattern.z * uRatio * s;
  float first = clamp(min(at + 0.5, d1 - at + 0.5), 0.0, 1.0);
  float second = pattern.z > 0.0 ? clamp(min(at - g1 + 0.5, d2 - at + 0.5), 0.0, 1.0) : 0.0;
  return max(first, second);
}
float typed(int type, float along, float total, float diagonal) {
  if (type == 0) return 1.0;
  if (type == 1) return dashed(vec4(15.0, 3.0, 2.5, 3.0), along, total);
  if (type == 2) return dashed(vec4(22.0, 3.5, 3.0, 3.5), along, total);
  if (type == 3) return dashed(vec4(6.0, 4.0, 0.0, 0.0), along, total);
  float pitch = 6.5 * uRatio;
  float d = abs(fract((diagonal + uHatchShift) / pitch) - 0.5) * pitch;
  return clamp(0.5 * uRatio * 0.9 + 0.5 - d, 0.0, 1.0);
}
`;

export const ARC_VERTEX = /* glsl */ `${COMMON}
in vec2 strip;   // along 0..1, side 0 inner 1 outer
in vec4 r0;      // centre x, y, radius mm, radius px
in vec4 r1;      // start, sweep, width px, band mm
in vec4 r2;      // owner, pen + 16 type, from, until teeth
out vec2 vLocal;
out float vAlong;
flat out vec4 vInk;
flat out vec4 vRing;  // radius, half width, length, type
out float vDiagonal;
void main() {
  vec4 place = placeOf(r2.x);
  float type = floor(r2.y / 16.0);
  vInk = inkOf(r2.y - 16.0 * type, place.w, r2.z, r2.w);
  float radius = r0.z * uScale + r0.w * uRatio;
  float half_ = 0.5 * max(r1.z * uRatio, 1.0);
  if (r1.w > 0.0) half_ = 0.5 * r1.w * uScale;
  vec2 middle = (place.xy + turned(r0.xy, place.z) - uCentre) * uScale;
  float reach = radius + half_ + 1.0;
  bool unseen = vInk.a <= 0.003 || any(greaterThan(abs(middle) - reach, uHalf));
  if (unseen) { gl_Position = vec4(2.0, 2.0, 2.0, 1.0); return; }
  float cover = cos(r1.y / ${(2 * ARC_PIECES).toFixed(1)});
  float r = strip.y < 0.5 ? max(0.0, radius - half_ - 1.0) : reach / cover;
  float angle = r1.x + place.z + r1.y * strip.x;
  vLocal = r * vec2(cos(angle), sin(angle));
  vRing = vec4(radius, half_, max(1.0, r1.y * radius), type);
  vAlong = strip.x * vRing.z;
  vec2 at = middle + vLocal;
  vDiagonal = (at.x + at.y) * 0.70710678;
  gl_Position = vec4(at / uHalf, 0.0, 1.0);
}`;

export const ARC_FRAGMENT = /* glsl */ `${FRAGMENT_COMMON}
in vec2 vLocal;
in float vAlong;
flat in vec4 vInk;
flat in vec4 vRing;
in float vDiagonal;
void main() {
  float off = abs(length(vLocal) - vRing.x);
  float alpha = clamp(vRing.y + 0.5 - off, 0.0, 1.0) * typed(int(vRing.w), vAlong, vRing.z, vDiagonal) * vInk.a;
  if (alpha < 0.004) discard;
  colour = vec4(vInk.rgb * alpha, alpha);
}`;

export const LINE_VERTEX = /* glsl */ `${COMMON}
in vec2 strip;   // along 0..1, side -1..1
in vec4 r0;      // both ends, mm
in vec4 r1;      // both ends, px
in vec4 r2;      // owner, pen + 16 type, from, until teeth
in vec4 r3;      // width px
out float vAcross;
out float vAlong;
flat out vec4 vInk;
flat out vec3 vLine;  // half width, length, type
void main() {
  vec4 place = placeOf(r2.x);
  float type = floor(r2.y / 16.0);
  vInk = inkOf(r2.y - 16.0 * type, place.w, r2.z, r2.w);
  vec2 a = (place.xy + turned(r0.xy, place.z) - uCentre) * uScale + r1.xy * uRatio;
  vec2 b = (place.xy + turned(r0.zw, place.z) - uCentre) * uScale + r1.zw * uRatio;
  float width = max(r3.x * uRatio, 1.0);
  // Upright and level lines fall on whole pixels, so that they are sharp.
  float shift = mod(floor(width + 0.5), 2.0) * 0.5;
  if (abs(a.x - b.x) < 0.01) { float x = floor(a.x + uHalf.x - shift + 0.5) + shift - uHalf.x; a.x = x; b.x = x; }
  if (abs(a.y - b.y) < 0.01) { float y = floor(a.y + uHalf.y - shift + 0.5) + shift - uHalf.y; a.y = y; b.y = y; }
  float total = length(b - a);
  if (vInk.a <= 0.003 || total < 1e-6) { gl_Position = vec4(2.0, 2.0, 2.0, 1.0); return; }
  vec2 along = (b - a) / total;
  vec2 across = vec2(-along.y, along.x);
  float half_ = 0.5 * width;
  float end = 0.5 * min(width, 1.0) + 0.5;
  vAcross = strip.y * (half_ + 1.0);
  vAlong = mix(-end, total + end, strip.x);
  vLine = vec3(half_, total, type);
  vec2 at = a + along * vAlong + across * vAcross;
  gl_Position = vec4(at / uHalf, 0.0, 1.0);
}`;

export const LINE_FRAGMENT = /* glsl */ `${FRAGMENT_COMMON}
in float vAcross;
in float vAlong;
flat in vec4 vInk;
flat in vec3 vLine;
void main() {
  float side = clamp(vLine.x + 0.5 - abs(vAcross), 0.0, 1.0);
  float ends = clamp(min(vAlong, vLine.y - vAlong) + 1.0, 0.0, 1.0);
  float alpha = side * ends * typed(int(vLine.z), clamp(vAlong, 0.0, vLine.y), vLine.y, 0.0) * vInk.a;
  if (alpha < 0.004) discard;
  colour = vec4(vInk.rgb * alpha, alpha);
}`;

/** One tooth, drawn once for every tooth of every wheel: its profile is a row of a table of points. */
export const TOOTH_VERTEX = /* glsl */ `${COMMON}
uniform sampler2D uProfiles;
uniform int uPoints;     // points of one profile; the last is the first turned by a pitch
in vec2 strip;           // index of the point, side -1..1
in vec4 r0;              // owner, profile row, angle of the tooth, pitch angle
in vec4 r1;              // pen + 16 type, width px, module, 0
out float vAcross;
flat out vec4 vInk;
flat out float vHalf;
vec2 profile(int index, int row, float pitch) {
  int last = uPoints - 1;
  if (index < 0) return turned(texelFetch(uProfiles, ivec2(index + last, row), 0).xy, -pitch);
  if (index > last) return turned(texelFetch(uProfiles, ivec2(index - last, row), 0).xy, pitch);
  return texelFetch(uProfiles, ivec2(index, row), 0).xy;
}
void main() {
  vec4 place = placeOf(r0.x);
  float type = floor(r1.x / 16.0);
  vInk = inkOf(r1.x - 16.0 * type, place.w, 0.0, 0.0);
  vInk.a *= teethShown(r1.z, place.w);
  if (vInk.a <= 0.003) { gl_Position = vec4(2.0, 2.0, 2.0, 1.0); return; }
  int index = int(strip.x + 0.5);
  int row = int(r0.y + 0.5);
  vec2 here = profile(index, row, r0.w);
  vec2 into = here - profile(index - 1, row, r0.w);
  vec2 out_ = profile(index + 1, row, r0.w) - here;
  float a = length(into), b = length(out_);
  into = a > 0.0 ? into / a : out_ / max(b, 1e-9);
  out_ = b > 0.0 ? out_ / b : into;
  vec2 normal = normalize(vec2(-into.y - out_.y, into.x + out_.x) + vec2(1e-9));
  float mitre = 1.0 / max(0.35, dot(normal, vec2(-out_.y, out_.x)));
  vHalf = 0.5 * max(r1.y * uRatio, 1.0);
  vAcross = strip.y * (vHalf + 1.0);
  float angle = place.z + r0.z;
  vec2 at = (place.xy + turned(here, angle) - uCentre) * uScale + turned(normal, angle) * vAcross * mitre;
  gl_Position = vec4(at / uHalf, 0.0, 1.0);
}`;

export const TOOTH_FRAGMENT = /* glsl */ `
precision highp float;
in float vAcross;
flat in vec4 vInk;
flat in float vHalf;
out vec4 colour;
void main() {
  float alpha = clamp(vHalf + 0.5 - abs(vAcross), 0.0, 1.0) * vInk.a;
  if (alpha < 0.004) discard;
  colour = vec4(vInk.rgb * alpha, alpha);
}`;

/** Filled outlines (cut sections of walls with straight sides), hatched at a fixed pitch on the screen. */
export const FILL_VERTEX = /* glsl */ `${COMMON}
in vec2 corner;
in vec3 r0;   // owner, pen + 16 type, from
out float vDiagonal;
flat out vec4 vInk;
flat out float vType;
void main() {
  vec4 place = placeOf(r0.x);
  vType = floor(r0.y / 16.0);
  vInk = inkOf(r0.y - 16.0 * vType, place.w, r0.z, 0.0);
  vec2 at = (place.xy + turned(corner, place.z) - uCentre) * uScale;
  vDiagonal = (at.x + at.y) * 0.70710678;
  gl_Position = vec4(at / uHalf, 0.0, 1.0);
}`;

export const FILL_FRAGMENT = /* glsl */ `${FRAGMENT_COMMON}
in float vDiagonal;
flat in vec4 vInk;
flat in float vType;
void main() {
  float alpha = typed(int(vType), 0.0, 1.0, vDiagonal) * vInk.a;
  if (alpha < 0.004) discard;
  colour = vec4(vInk.rgb * alpha, alpha);
}`;
