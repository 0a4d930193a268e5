/** Cautions that go with every output about weights and springs. Common practice of the trade. */

export const WEIGHT_CAUTIONS: readonly string[] = [
  'A falling weight can hurt and break: check cord, hooks and knots, give the cord a stated safe load of several times the weight, and keep feet and children away from the path of the fall.',
  'Hold the train (click, fly or a wedge) before taking the weight off or on: a train let go runs down at speed.',
  'These numbers are aids to design. Local rules, and the advice of a qualified person where people could be hurt, come first.',
];

export const SPRING_CAUTIONS: readonly string[] = [
  'A wound mainspring holds enough energy to injure hands and eyes: let it down fully through the click with a let-down key before any work, and wear eye protection and gloves.',
  'Use a mainspring winder with a barrel sleeve; never take a spring out by hand. Check hooks, barrel cap and click for cracks before winding.',
  'These numbers are aids to design. Local rules, and the advice of a qualified person where people could be hurt, come first.',
];
/** Standard acceleration of free fall, m/s² (exact by convention, CGPM 1901). */
export const STANDARD_GRAVITY = 9.80665;
