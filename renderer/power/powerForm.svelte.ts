/** What was typed about weight, spring, losses, pendulum and pallets; it stays while the window is open. */
import type { PowerForm } from './powerNumbers.ts';

export const powerForm = $state<PowerForm>({ kind: 'weight', power: '', escape: '', numbers: {} });
