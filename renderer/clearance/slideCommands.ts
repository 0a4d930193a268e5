/** The command that slides what is chosen to a place where it fouls nothing. */
import { canSlide, slideToSafe } from '../../solver/clearance/safe/index.ts';
import type { Place } from '../../solver/planting/placed.ts';
import type { Command } from '../commands/command.ts';
import type { Bench } from '../state/bench.ts';

/** The one place that is chosen, where it can slide: a loose one, or a post on its circle. */
function chosenToSlide(bench: Bench): Place | undefined {
  const [only] = bench.looking.chosen;
  const place =
    bench.looking.chosen.length === 1
      ? [...bench.derived.settled.places.values()].find(({ id }) => id === only)
      : undefined;
  return place && canSlide(bench.derived.settled, place.id) ? place : undefined;
}

export const slideCommands = {
  slideToSafe: {
    id: 'slideToSafe',
    group: 'change',
    says: 'Slide to a safe place',
    describes: 'Slide the chosen loose part, or post on its circle, to the nearest place that clears everything',
    possible: (bench) => chosenToSlide(bench) !== undefined,
    run: (bench) => {
      const place = chosenToSlide(bench);
      const slide = place && slideToSafe(bench.derived.settled, place.id);
      if (!place) return;
      const name = bench.nameOf(place.id);
      if (!slide) bench.looking.tell('done', `${name} is safe where it stands, or nowhere it can go is.`);
      else bench.change(`slide ${bench.nameOf(place.id)} by ${bench.lengthSays(slide.distance)}`, [slide.edit]);
    },
  },
} satisfies Record<string, Command>;
