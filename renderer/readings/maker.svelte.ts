/** Who works here: kept on this computer, so that a name is typed once. */
import { keepHere, keptHere } from '../shell/keptHere.ts';

/** The name under which readings are signed. */
class Maker {
  name = $state(keptHere('maker') ?? '');

  /** While it is being typed: not kept yet. */
  type(name: string): void {
    this.name = name;
  }

  set(name: string): void {
    this.name = name;
    keepHere('maker', name);
  }
}

export const maker = new Maker();
