import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

type Three = [number, number, number];

const text = readFileSync(fileURLToPath(new URL('./tokens.css', import.meta.url)), 'utf8');
const blockAfter = (selector: string): Record<string, string> => {
  const start = text.indexOf(selector);
  const block = text.slice(start, text.indexOf('}', start));
  const tokens: Record<string, string> = {};
  for (const [, name = '', hex = ''] of block.matchAll(/--([a-z0-9-]+): (#[0-9a-f]{6});/g)) tokens[name] = hex;
  return tokens;
};
const LIGHT = blockAfter(':root {');
const DARK = blockAfter(":root[data-mantine-color-scheme='dark']");
const DARK_BY_SYSTEM = blockAfter(":root:not([data-mantine-color-scheme='light'])");

/**
 * What is left of linear RGB under a complete deficiency.
 * Source: Machado, Oliveira, Fernandes, A Physiologically-based Model for Simulation of Color Vision Deficiency,
 * IEEE TVCG 15 (2009), the matrices for severity 1.0; entered from memory.
 */
const SEEN: Record<string, [Three, Three, Three]> = {
  'full colour vision': [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

/** IEC 61966-2-1. */
const linear = (hex: string): Three =>
  [1, 3, 5]
    .map((at) => parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)) as Three;

const dot = (a: Three, b: Three): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const luminance = (rgb: Three): number => dot([0.2126, 0.7152, 0.0722], rgb);

/** CIE 1976 L*a*b* with the white of D65. */
function lab(rgb: Three): Three {
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const x = f(dot([0.4124, 0.3576, 0.1805], rgb) / 0.95047);
  const y = f(luminance(rgb));
  const z = f(dot([0.0193, 0.1192, 0.9505], rgb) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

function difference(a: string, b: string, seen: [Three, Three, Three]): number {
  const [p, q] = [a, b].map((hex) => {
    const rgb = linear(hex);
    return lab(seen.map((row) => Math.min(1, Math.max(0, dot(row, rgb)))) as Three);
  }) as [Three, Three];
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}

const inGrey = (a: string, b: string): number => Math.abs(lab(linear(a))[0] - lab(linear(b))[0]);

/** WCAG 2.2, contrast ratio. */
function contrast(a: string, b: string): number {
  const [low, high] = [luminance(linear(a)), luminance(linear(b))].sort((p, q) => p - q) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

const pairsOf = (names: readonly string[]): [string, string][] =>
  names.flatMap((a, index) => names.slice(index + 1).map((b): [string, string] => [a, b]));
const neighbours = (names: readonly string[]): [string, string][] =>
  names.slice(1).map((b, index): [string, string] => [names[index] ?? '', b]);

describe.each([
  ['light', LIGHT],
  ['dark', DARK],
])('the colours in %s', (_, tokens) => {
  const colour = (name: string): string => tokens[name] ?? '';

  it.each(pairsOf(['go', 'caution', 'stop']))('tell %s from %s under every deficiency and in grey', (a, b) => {
    for (const [name, seen] of Object.entries(SEEN)) {
      expect({ name, far: difference(colour(a), colour(b), seen) >= 15 }).toEqual({ name, far: true });
    }
    expect(inGrey(colour(a), colour(b))).toBeGreaterThanOrEqual(7);
  });

  it.each([
    ...neighbours(['load-0', 'load-1', 'load-2', 'load-3', 'load-4']),
    ...neighbours(['bar-0', 'bar-1', 'bar-2']),
  ])('step from %s to %s so that grey shows it', (a, b) => {
    expect(inGrey(colour(a), colour(b))).toBeGreaterThanOrEqual(6);
  });

  it.each(['ink', 'soft', 'accent', 'go', 'caution', 'stop'])('let %s be read on every ground', (ink) => {
    for (const ground of ['paper', 'surface', 'shade', 'quiet-soft']) {
      expect({ ground, read: contrast(colour(ink), colour(ground)) >= 4.5 }).toEqual({ ground, read: true });
    }
  });

  it.each(['accent', 'go', 'caution', 'stop'])('let %s be read on its own soft ground', (ink) => {
    expect(contrast(colour(ink), colour(`${ink}-soft`))).toBeGreaterThanOrEqual(4.5);
  });
});

it('is as dark by choice as it is by the system', () => {
  expect(DARK).toEqual(DARK_BY_SYSTEM);
  expect(Object.keys(DARK)).toEqual(Object.keys(LIGHT));
});
