/** Who works here: kept on this computer, so that a name is typed once. */
const KEPT = 'depthwright.maker';

/** The maker's name. */
class Maker {
  name = $state(kept());

  set(name: string): void {
    this.name = name;
    try {
      localStorage.setItem(KEPT, name);
    } catch {
      // A page without storage asks again.
    }
  }
}

function kept(): string {
  try {
    return localStorage.getItem(KEPT) ?? '';
  } catch {
    return '';
  }
}

export const maker = new Maker();
