/**
 * Mean speeds in a rehearsal: of each body against the input, from where both have taken up their play.
 *
 * A body that has turned by one of its teeth has taken its play up; from there its turning and that of the input are
 * counted. Teeth may stand anywhere in their play at both ends, so that a short count is only so good: its error is
 * told as that of the ratio.
 */
export interface MeanSpeed {
  /** Turns for one of the input, by the counts. */
  readonly exact: number;
  /** As it turned, and the difference as a share; absent until it has passed by a whole tooth. */
  readonly turned?: number;
  readonly error?: number;
}

/** What of a body decides when its play is taken up. */
interface Watched {
  readonly ratio: number;
  readonly mostTeeth: number;
}

/** Follows the angles of bodies and gives their mean speeds. */
export class SpeedWatch {
  /** Angles of the body and of the input where the body had taken up its play. */
  private readonly from: ({ readonly own: number; readonly input: number } | undefined)[];
  private readonly bodies: readonly Watched[];

  constructor(bodies: readonly Watched[]) {
    this.bodies = bodies;
    this.from = bodies.map(() => undefined);
  }

  /** @param turned angle of each body since the drive began, radians */
  watch(turned: (body: number) => number): void {
    this.bodies.forEach(({ mostTeeth }, i) => {
      if (this.from[i] || Math.abs(turned(i)) * mostTeeth <= 2 * Math.PI) return;
      this.from[i] = { own: turned(i), input: turned(0) };
    });
  }

  speedOf(body: number, turned: (body: number) => number): MeanSpeed {
    const { ratio: exact = 0, mostTeeth = 1 } = this.bodies[body] ?? {};
    const from = this.from[body];
    const own = from ? turned(body) - from.own : 0;
    const input = from ? turned(0) - from.input : 0;
    // At least a tooth more: before that the play is all that is measured.
    if (exact === 0 || input === 0 || Math.abs(own) * mostTeeth < 2 * Math.PI) return { exact };
    return { exact, turned: own / input, error: own / input / exact - 1 };
  }
}
