/** Commands that look for room: a planting, and whether the train runs. */
import { canSlide, slideToSafe } from '../../solver/clearance/safe/index.ts';
import type { Place } from '../../solver/planting/placed.ts';
import type { Command } from '../commands/command.ts';
import type { Bench } from '../state/bench.svelte.ts';

/** The one place that is chosen, where it can slide: a loose one, or a post on its circle. */
function chosenToSlide(bench: Bench): Place | undefined {
  const [only] = bench.chosen;
  const place =
    bench.chosen.length === 1 ? [...bench.settled.places.values()].find(({ id }) => id === only) : undefined;
  return place && canSlide(bench.settled, place.id) ? place : undefined;
}

export const clearanceCommands = {
  findPlanting: {
    id: 'findPlanting',
    group: 'movement',
    says: 'Find a planting…',
    describes: 'Search places for all that is loose',
    possible: (bench) => bench.clearanceShown !== 'planting',
    run: (bench) => {
      bench.leaveView();
      bench.clearanceShown = 'planting';
    },
  },
  trial: {
    id: 'trial',
    group: 'movement',
    says: 'Does it run…',
    describes: 'Try the train by physics',
    possible: (bench) => bench.clearanceShown !== 'trial' && bench.movement.wheels.length > 1,
    run: (bench) => {
      bench.leaveView();
      bench.clearanceShown = 'trial';
    },
  },
  gaps: {
    id: 'gaps',
    group: 'movement',
    says: 'Gaps and end shake…',
    describes: 'Set least gaps and tolerances; see every stack and the order of taking apart',
    possible: (bench) => bench.clearanceShown !== 'gaps',
    run: (bench) => {
      bench.leaveView();
      bench.clearanceShown = 'gaps';
    },
  },
  slideToSafe: {
    id: 'slideToSafe',
    group: 'change',
    says: 'Slide to a safe place',
    describes: 'Slide the chosen loose part, or post on its circle, to the nearest place that clears everything',
    possible: (bench) => chosenToSlide(bench) !== undefined,
    run: (bench) => {
      const place = chosenToSlide(bench);
      const slide = place && slideToSafe(bench.settled, place.id);
      if (!place) return;
      if (!slide) bench.tell('done', `${bench.nameOf(place.id)} is safe where it stands, or nowhere it can go is.`);
      else bench.change(`slide ${bench.nameOf(place.id)} by ${bench.lengthSays(slide.distance)}`, [slide.edit]);
    },
  },
} satisfies Record<string, Command>;
