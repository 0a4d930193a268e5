/** Commands that look for room: a planting, and whether the train runs. */
import type { Command } from '../state/commands/command.ts';

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
} satisfies Record<string, Command>;
