// Fields that several questions share.
import { pick } from '../forms/field.js';
import { placedAreas } from '../lib/exposure.js';

export const area = pick('area', 'Area', ({ camp }) => placedAreas(camp).map(each => [each.code, each.name]));
export const withInventory = camp => camp.doc.components.filter(each => each.inventory);
export const component = pick('component', 'Component', ({ camp }) => withInventory(camp).map(each => [each.code, each.name]));
export const firstArea = camp => placedAreas(camp)[0]?.code;
/** The levels and grids that stay inside the pool of the plan. */
export const poolOf = camp => camp.doc.settings.pool;
