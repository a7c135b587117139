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
