// How near each person is to what bounds them most: a constraint of the campaign's work or a period of the law.

/** @returns rows {person, usv, before, bound, what, part} with the nearest first; part is dose ÷ bound */
export function byNearness({ people }) {
  return people.map(nearest).sort((a, b) => b.part - a.part || b.person.usv - a.person.usv);
}

export function nearest(person) {
  const bounds = [
    ...person.constraints.map(bound => ({ usv: bound.planned_usv, before: 0, bound: bound.constraint_usv, what: `constraint ${bound.constraint}` })),
    ...person.periods.map(({ period, worst }) => ({ usv: worst.total_usv, before: worst.before_usv, bound: worst.limit_usv, what: `limit, ${period.replace(/-/g, ' ')} ${worst.label}` })),
  ].map(bound => ({ ...bound, part: bound.usv / bound.bound }));
  const top = bounds.sort((a, b) => b.part - a.part)[0];
  return { person, ...(top ?? { usv: person.usv, before: 0, bound: undefined, what: '', part: 0 }) };
}

/** Whether the caller may see the outcomes of everybody: once work has begun they hold what each received. */
export const seesOutcomes = ({ people }) => people.every(person => person.usv);

/**
 * Each person with the bound that most outcomes are above; without one, with the whole dose. The counts are the server's.
 *
 * @returns rows {worker, name, usv: spread, bound, constraint, above, received}, most often above first, then the nearest
 */
export function nearestBounds({ people }) {
  return people.map(person => {
    const bounds = person.bounds.map(each => ({ worker: person.worker, name: person.name, usv: each.usv, bound: each.individual_usv, constraint: each.constraint, above: 20 - each.kept.of20, part: each.usv.p50 / each.individual_usv }));
    return bounds.sort((a, b) => b.above - a.above || b.part - a.part)[0] ?? { worker: person.worker, name: person.name, usv: person.usv, above: 0, part: 0 };
  }).sort((a, b) => b.above - a.above || b.part - a.part || b.usv.p50 - a.usv.p50);
}
