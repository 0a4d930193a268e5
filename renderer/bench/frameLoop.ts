/** Frames only when something changed: `ask` any number of times, `draw` once at the next frame. */
export class FrameLoop {
  private asked = 0;
  private readonly draw: () => void;

  constructor(draw: () => void) {
    this.draw = draw;
  }

  ask(): void {
    if (this.asked !== 0) return;
    this.asked = requestAnimationFrame(() => {
      this.asked = 0;
      this.draw();
    });
  }

  stop(): void {
    cancelAnimationFrame(this.asked);
    this.asked = 0;
  }
}
