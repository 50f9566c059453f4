// SPDX-License-Identifier: Apache-2.0

/** Red, green, blue, 0 to 255. */
export type Rgb = readonly [number, number, number];

/** A colour of OKLab lightness, chroma and hue in degrees (Ottosson 2020), chroma lowered until a screen can show it. */
export function oklch(lightness: number, chroma: number, hue: number): Rgb {
  let c = chroma;
  for (let i = 0; i < 24; i++) {
    const linear = toLinear(lightness, c * Math.cos((hue * Math.PI) / 180), c * Math.sin((hue * Math.PI) / 180));
    if (linear.every((v) => v >= -1e-4 && v <= 1 + 1e-4)) break;
    c *= 0.94;
  }
  const linear = toLinear(lightness, c * Math.cos((hue * Math.PI) / 180), c * Math.sin((hue * Math.PI) / 180));
  return linear.map((v) => {
    const x = Math.min(1, Math.max(0, v));
    return Math.round(255 * (x <= 0.0031308 ? 12.92 * x : 1.055 * x ** (1 / 2.4) - 0.055));
  }) as unknown as Rgb;
}

function toLinear(lightness: number, a: number, b: number): number[] {
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [
    4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
    -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
    -0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s,
  ];
}

/** OKLab lightness of a colour, 0 to 1. */
export function lightness([r, g, b]: Rgb): number {
  const [lr, lg, lb] = [r, g, b].map((v) => {
    const x = v / 255;
    return x <= 0.04045 ? x / 12.92 : ((x + 0.055) / 1.055) ** 2.4;
  });
  const l = Math.cbrt(0.4122214708 * lr + 0.5363325363 * lg + 0.0514459929 * lb);
  const m = Math.cbrt(0.2119034982 * lr + 0.6806995451 * lg + 0.1073969566 * lb);
  const s = Math.cbrt(0.0883024619 * lr + 0.2817188376 * lg + 0.6299787005 * lb);
  return 0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s;
}

const STEPS = 256;

/**
 * From quiet to hot: pale blue-grey through sand and terracotta to deep plum. Lightness falls evenly, so that it reads
 * with any colour vision and in print; hue only helps. The same as in the report's pictures.
 */
export const EMBER: readonly Rgb[] = ember();

/** The ramp's colour at 0 to 1. */
export function ramp(t: number): Rgb {
  return EMBER[Math.round(Math.min(1, Math.max(0, t)) * (STEPS - 1))];
}

/**
 * A change, from −1 through 0 to 1: clay where there is less, pale where nothing changes, slate blue where there is more.
 * Both ends are equally dark; orange and blue stay apart for every common kind of colour vision.
 */
export function balance(t: number): Rgb {
  const s = Math.min(1, Math.abs(t));
  return oklch(mix(0.93, 0.47, s), mix(0.008, 0.14, Math.sqrt(s)), t < 0 ? 45 : 255);
}

function ember(): Rgb[] {
  const at = [0, 0.25, 0.5, 0.75, 1];
  const chroma = [0.02, 0.06, 0.135, 0.175, 0.115];
  const hue = [240, 85, 50, 18, -30];
  const radians = (h: number) => (h * Math.PI) / 180;
  return Array.from({ length: STEPS }, (_, i) => {
    const t = i / (STEPS - 1);
    let c: number;
    let h: number;
    if (t < at[1]) {
      // Cool to warm through grey, not round the wheel by way of green.
      const s = t / at[1];
      const a = mix(chroma[0] * Math.cos(radians(hue[0])), chroma[1] * Math.cos(radians(hue[1])), s);
      const b = mix(chroma[0] * Math.sin(radians(hue[0])), chroma[1] * Math.sin(radians(hue[1])), s);
      c = Math.hypot(a, b);
      h = (Math.atan2(b, a) * 180) / Math.PI;
    } else {
      let k = 1;
      while (k < at.length - 2 && t > at[k + 1]) k++;
      const s = (t - at[k]) / (at[k + 1] - at[k]);
      c = mix(chroma[k], chroma[k + 1], s);
      h = mix(hue[k], hue[k + 1], s);
    }
    return oklch(mix(0.94, 0.27, t), c, h);
  });
}

function mix(from: number, to: number, s: number): number {
  return from + (to - from) * s;
}

/** Colour of one of several kinds: neighbours differ in hue and in lightness. */
export function kindColour(index: number): Rgb {
  const hue = (250 + 137.508 * index) % 360;
  return oklch([0.8, 0.68, 0.88][index % 3], [0.085, 0.095, 0.075][index % 3], hue);
}

/** As CSS wants it. */
export function css([r, g, b]: Rgb): string {
  return `rgb(${r} ${g} ${b})`;
}
