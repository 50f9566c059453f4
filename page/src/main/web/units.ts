// SPDX-License-Identifier: Apache-2.0

/** In which units values are shown. What is stored stays as it is. */
export type Units = "SI" | "inch-pound";

const INCH = 0.0254; // m, exact (NIST SP 811, 2008, App. B)
const POUND = 0.45359237; // kg, exact (ibid.)
const POUND_FORCE = POUND * 9.80665; // N, exact (ibid.)
const FOOT = 12 * INCH;

interface Unit {
  text: string;
  /** SI value of one. */
  si: number;
}

const UNITS = {
  twist: { SI: { text: "N·m/deg", si: 180 / Math.PI }, "inch-pound": { text: "lbf·ft/deg", si: (POUND_FORCE * FOOT * 180) / Math.PI } },
  bend: { SI: { text: "N/mm", si: 1e3 }, "inch-pound": { text: "lbf/in", si: POUND_FORCE / INCH } },
  mass: { SI: { text: "kg", si: 1 }, "inch-pound": { text: "lb", si: POUND } },
  length: { SI: { text: "mm", si: 1e-3 }, "inch-pound": { text: "in", si: INCH } },
  area: { SI: { text: "m²", si: 1 }, "inch-pound": { text: "ft²", si: FOOT * FOOT } },
  arealMass: { SI: { text: "kg/m²", si: 1 }, "inch-pound": { text: "lb/ft²", si: POUND / (FOOT * FOOT) } },
  volumeMass: { SI: { text: "kg/m³", si: 1 }, "inch-pound": { text: "lb/ft³", si: POUND / FOOT ** 3 } },
  density: { SI: { text: "J/m²", si: 1 }, "inch-pound": { text: "ft·lbf/ft²", si: (POUND_FORCE * FOOT) / (FOOT * FOOT) } },
  torque: { SI: { text: "N·m", si: 1 }, "inch-pound": { text: "lbf·ft", si: POUND_FORCE * FOOT } },
  work: { SI: { text: "J", si: 1 }, "inch-pound": { text: "ft·lbf", si: POUND_FORCE * FOOT } },
  twistWorth: {
    SI: { text: "N·m/deg/kg", si: 180 / Math.PI },
    "inch-pound": { text: "lbf·ft/deg/lb", si: (POUND_FORCE * FOOT * 180) / Math.PI / POUND },
  },
  bendWorth: { SI: { text: "N/mm/kg", si: 1e3 }, "inch-pound": { text: "lbf/in/lb", si: POUND_FORCE / INCH / POUND } },
} satisfies Record<string, Record<Units, Unit>>;

/** A kind of value with a unit. */
export type Kind = keyof typeof UNITS;

/** The unit's text. */
export function unit(kind: Kind, units: Units): string {
  return UNITS[kind][units].text;
}

/** An SI value in the unit shown. */
export function shown(si: number, kind: Kind, units: Units): number {
  return si / UNITS[kind][units].si;
}

/** A value typed in the unit shown, in SI. */
export function typed(value: number, kind: Kind, units: Units): number {
  return value * UNITS[kind][units].si;
}

/** An SI value as text, to so many significant digits, whole digits never cut. */
export function text(si: number, kind: Kind, units: Units, digits = 4): string {
  return figure(shown(si, kind, units), digits);
}

/** The same with its unit. */
export function full(si: number, kind: Kind, units: Units, digits = 4): string {
  return `${text(si, kind, units, digits)} ${unit(kind, units)}`;
}

/** A number to so many significant digits; groups of three parted by a narrow space from five digits on (ISO 80000-1). */
export function figure(value: number, digits = 4): string {
  if (!Number.isFinite(value)) return "–";
  const magnitude = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.min(12, Math.max(0, digits - 1 - magnitude));
  const [whole, rest] = Math.abs(value).toFixed(decimals).split(".");
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, "\u202f") : whole;
  const zero = Number(whole) === 0 && Number(rest ?? 0) === 0;
  return (value < 0 && !zero ? "−" : "") + grouped + (rest ? `.${rest}` : "");
}

/** A value between bounds: digits as far as they agree, and half the gap. */
export function between(low: number, high: number, kind: Kind, units: Units): string {
  const a = shown(low, kind, units);
  const b = shown(high, kind, units);
  const half = Math.abs(b - a) / 2;
  const middle = (a + b) / 2;
  const magnitude = Math.floor(Math.log10(Math.max(Math.abs(middle), 1e-30)));
  const wanted = half > 0 ? magnitude - Math.floor(Math.log10(half)) + 2 : 6;
  const digits = Math.min(6, Math.max(3, wanted));
  const least = 0.5 * 10 ** (magnitude - digits + 1);
  return figure(middle, digits) + (half > least ? ` ± ${figure(half, 2)}` : "");
}
