// Dose bands with round edges (1, 2, 5 …) for counting people, at most five.
export function bands(doses) {
  const top = Math.max(0, ...doses);
  if (top <= 0) return [[0, Infinity]];
  const power = 10 ** Math.floor(Math.log10(top / 4));
  const width = [1, 2, 5, 10].map(step => step * power).find(step => top / step <= 4);
  const edges = [];
  for (let low = 0; low <= top && edges.length < 5; low += width) edges.push([low, low + width]);
  return edges;
}

/** At the lower edge counts in, at the upper edge in the next. */
export const countIn = (doses, [low, high]) => doses.filter(dose => dose >= low && dose < high).length;
