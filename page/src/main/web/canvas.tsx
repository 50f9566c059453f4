// SPDX-License-Identifier: Apache-2.0
import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";

interface CanvasProps {
  label: string;
  children: ComponentChildren;
  onTurn(dx: number, dy: number): void;
  onMove(dx: number, dy: number): void;
  onNear(factor: number): void;
  onPick(x: number, y: number): void;
  onPickMiddle(): void;
  onAway(): void;
}

/** Hand and keys on the tub. */
export function Canvas(props: CanvasProps) {
  const grip = useRef<{ x: number; y: number; far: number; pan: boolean }>(undefined);
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = box.current!;
    const wheel = (e: WheelEvent) => {
      e.preventDefault();
      props.onNear(Math.exp(-0.0012 * e.deltaY));
    };
    element.addEventListener("wheel", wheel, { passive: false });
    return () => element.removeEventListener("wheel", wheel);
  });
  const keys: Record<string, [number, number]> = {
    ArrowLeft: [-15, 0],
    ArrowRight: [15, 0],
    ArrowUp: [0, -15],
    ArrowDown: [0, 15],
  };
  return (
    <div
      class="canvas"
      ref={box}
      tabIndex={0}
      role="application"
      aria-label={props.label}
      data-test="canvas"
      onContextMenu={(e) => e.preventDefault()}
      onPointerDown={(e) => {
        e.currentTarget.setPointerCapture(e.pointerId);
        grip.current = { x: e.clientX, y: e.clientY, far: 0, pan: e.shiftKey || e.button !== 0 };
      }}
      onPointerMove={(e) => {
        const held = grip.current;
        if (!held) return;
        const [dx, dy] = [e.clientX - held.x, e.clientY - held.y];
        held.far += Math.abs(dx) + Math.abs(dy);
        held.x = e.clientX;
        held.y = e.clientY;
        if (held.far > 4) (held.pan ? props.onMove : props.onTurn)(dx, dy);
      }}
      onPointerUp={(e) => {
        const held = grip.current;
        grip.current = undefined;
        if (held && held.far <= 4) {
          const frame = e.currentTarget.getBoundingClientRect();
          props.onPick(e.clientX - frame.left, e.clientY - frame.top);
        }
      }}
      onKeyDown={(e) => {
        const way = keys[e.key];
        if (way && !e.ctrlKey && !e.metaKey) {
          e.preventDefault();
          (e.shiftKey ? props.onMove : props.onTurn)(way[0], way[1]);
        } else if (e.key === "+" || e.key === "=") props.onNear(1.15);
        else if (e.key === "-") props.onNear(1 / 1.15);
        else if (e.key === "Enter") props.onPickMiddle();
        else if (e.key === "Escape") props.onAway();
      }}
    >
      {props.children}
    </div>
  );
}
