/** What was typed about weight, spring, losses, pendulum and pallets; it stays while the window is open. */
import { NUMBERS, type NumberName, type PowerForm } from './powerNumbers.ts';

export const powerForm = $state<PowerForm>({
  kind: 'weight',
  power: '',
  escape: '',
  numbers: Object.fromEntries(Object.entries(NUMBERS).map(([name, { first }]) => [name, first])) as Record<
    NumberName,
    string
  >, // one entry for each name
});
