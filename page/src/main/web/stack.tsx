// SPDX-License-Identifier: Apache-2.0
import type { LayerView, StackView } from "./ask";

/** Heights of layers as drawn, pixels: what matters is which, not to scale. */
export function drawnHeight(layer: LayerView, roomy: boolean): number {
  switch (layer.kind) {
    case "HONEYCOMB":
    case "FOAM":
      return roomy ? 40 : 26;
    case "FILM":
      return roomy ? 8 : 3;
    default:
      return roomy ? 22 : 8;
  }
}

/** The name of the hatching of a layer. */
function pattern(layer: LayerView): string | undefined {
  const nearest = ((Math.round(layer.degrees / 15) * 15 + 90 + 179) % 180) - 89;
  const angle = nearest === -90 ? 90 : nearest;
  switch (layer.kind) {
    case "CLOTH":
      return `url(#cloth${angle})`;
    case "TAPE":
      return `url(#tape${angle})`;
    case "HONEYCOMB":
      return "url(#cells)";
    case "FOAM":
      return "url(#foam)";
    default:
      return undefined;
  }
}

const ANGLES = [-75, -60, -45, -30, -15, 0, 15, 30, 45, 60, 75, 90];

/** The hatchings that drawn stacks refer to; once on the page. */
export function Hatchings() {
  return (
    <svg width="0" height="0" class="defs" aria-hidden="true">
      <defs>
        {ANGLES.map((a) => (
          <pattern key={`t${a}`} id={`tape${a}`} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform={`rotate(${-a})`}>
            <path class="hatch" d="M0 2.5H5" />
          </pattern>
        ))}
        {ANGLES.map((a) => (
          <pattern key={`c${a}`} id={`cloth${a}`} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform={`rotate(${-a})`}>
            <path class="hatch" d="M0 2.5H5M2.5 0V5" />
          </pattern>
        ))}
        <pattern id="cells" width="6" height="10" patternUnits="userSpaceOnUse">
          <path class="hatch" d="M3 0V10" />
        </pattern>
        <pattern id="foam" width="6" height="6" patternUnits="userSpaceOnUse">
          <circle class="grain" cx="1.5" cy="1.5" r="0.7" />
          <circle class="grain" cx="4.5" cy="4.5" r="0.7" />
        </pattern>
      </defs>
    </svg>
  );
}

/** One layer, drawn. */
export function LayerDrawing({ layer, width, height, y = 0 }: { layer: LayerView; width: number; height: number; y?: number }) {
  const fill = pattern(layer);
  return (
    <>
      <rect class={`layer ${layer.kind.toLowerCase()}`} x={0} y={y} width={width} height={height} />
      {fill && <rect x={0} y={y} width={width} height={height} fill={fill} />}
    </>
  );
}

/** A whole stack in section, outer surface on top. */
export function Stack({ stack, label }: { stack: StackView; label: string }) {
  let y = 0;
  const placed = stack.layers.map((layer) => {
    const height = drawnHeight(layer, false);
    const at = y;
    y += height;
    return { layer, at, height };
  });
  return (
    <svg class="section" viewBox={`0 0 180 ${y}`} width="180" height={y} role="img" aria-label={label}>
      {placed.map(({ layer, at, height }, i) => (
        <LayerDrawing key={i} layer={layer} width={180} height={height} y={at} />
      ))}
    </svg>
  );
}

/** A layer in words. */
export function layerName(layer: LayerView): string {
  const angle = `${Math.round(layer.degrees)}°`.replace("-", "−");
  switch (layer.kind) {
    case "CLOTH":
      return `${angle} cloth`;
    case "TAPE":
      return `${angle} tape`;
    case "HONEYCOMB":
      return "honeycomb core";
    case "FOAM":
      return "foam core";
    case "FILM":
      return "adhesive film";
    case "SHEET":
      return "sheet";
  }
}
