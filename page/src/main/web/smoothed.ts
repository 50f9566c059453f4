// SPDX-License-Identifier: Apache-2.0

/** Samples a pixel: as many as browsers take by themselves. */
const SAMPLES = 4;

/**
 * Draws with several samples a pixel and lays the result on the canvas, so that slanting edges have no steps. The canvas
 * itself has one sample, because without a graphics processor the others take more than half of the time, and while
 * something moves nobody sees the steps.
 */
export class Smoothed {
  private made: { frame: WebGLFramebuffer; buffers: WebGLRenderbuffer[]; width: number; height: number } | undefined;

  constructor(private readonly gl: WebGL2RenderingContext) {}

  /** Calls "render" with the samples in place and brings the picture to the canvas. */
  draw(width: number, height: number, render: () => void): void {
    const { gl } = this;
    if (this.made?.width !== width || this.made.height !== height) this.make(width, height);
    const { frame } = this.made!;
    gl.bindFramebuffer(gl.FRAMEBUFFER, frame);
    try {
      render();
    } finally {
      gl.disable(gl.SCISSOR_TEST);
      gl.bindFramebuffer(gl.READ_FRAMEBUFFER, frame);
      gl.bindFramebuffer(gl.DRAW_FRAMEBUFFER, null);
      gl.blitFramebuffer(0, 0, width, height, 0, 0, width, height, gl.COLOR_BUFFER_BIT, gl.NEAREST);
      gl.invalidateFramebuffer(gl.READ_FRAMEBUFFER, [gl.COLOR_ATTACHMENT0, gl.DEPTH_ATTACHMENT]);
      gl.bindFramebuffer(gl.FRAMEBUFFER, null);
    }
  }

  /** Forgets what is gone with the context, or gives it back. */
  release(): void {
    if (!this.made) return;
    this.gl.deleteFramebuffer(this.made.frame);
    this.made.buffers.forEach((b) => this.gl.deleteRenderbuffer(b));
    this.made = undefined;
  }

  private make(width: number, height: number): void {
    this.release();
    const { gl } = this;
    const samples = Math.min(SAMPLES, gl.getParameter(gl.MAX_SAMPLES) as number);
    const frame = gl.createFramebuffer();
    gl.bindFramebuffer(gl.FRAMEBUFFER, frame);
    const buffer = (format: number, attachment: number) => {
      const made = gl.createRenderbuffer();
      gl.bindRenderbuffer(gl.RENDERBUFFER, made);
      gl.renderbufferStorageMultisample(gl.RENDERBUFFER, samples, format, width, height);
      gl.framebufferRenderbuffer(gl.FRAMEBUFFER, attachment, gl.RENDERBUFFER, made);
      return made;
    };
    const buffers = [buffer(gl.RGBA8, gl.COLOR_ATTACHMENT0), buffer(gl.DEPTH_COMPONENT24, gl.DEPTH_ATTACHMENT)];
    this.made = { frame, buffers, width, height };
  }
}
