// Every kind of object with its words, its tab and its fields.
import { areas, sources, surveys } from './place.js';
import { shields } from './stand.js';
import { components, cuts, techniques } from './cutting.js';
import { packages, trials } from './packing.js';
import { options } from './options.js';
import { prices } from './prices.js';
import { factors, overrides, resources, routines, tasks } from './work.js';
import { constraints, roster, targets, workers } from './people.js';

export const kinds = {
  factors, areas, sources, shields, surveys, techniques, trials, routines, packages, components, cuts, tasks, overrides, workers, roster, resources, prices, targets, constraints, options,
};
