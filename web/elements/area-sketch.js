import { html } from '../lib/vendor.js';
import { figureFrame } from './figure-frame.js';
import { heatKey } from './heat-key.js';
import { rate as rateOf } from '../lib/units.js';
import './section-sketch.js';

/** The section sketch of a campaign with today's list of rates as its table. */
export function areaSketch(camp, { title, level, id }) {
  const rates = startRates(camp);
  const spots = camp.doc.areas.filter(area => area.sketch && rates.has(area.code))
    .map(area => ({ name: area.name, rightM: area.sketch.right_m, upM: area.sketch.up_m, usvPerH: rates.get(area.code) }));
  const data = {
    id, spots, parts: camp.doc.components.map(part), title,
    pool: camp.doc.settings.pool && { width: camp.doc.settings.pool.length_m, depth: camp.doc.settings.pool.depth_m },
    desc: `Sketch, not to scale: ${spots.map(spot => `${spot.name} ${rateOf(spot.usvPerH)} µSv/h`).join(', ')}.`,
  };
  return figureFrame({
    title, level, picture: html`<section-sketch .data=${data}></section-sketch>${heatKey()}`,
    caption: 'Dose rate at the start', head: ['Area', 'µSv/h'], rows: [...rates].map(([code, rate]) => [camp.byCode.areas.get(code).name, rateOf(rate)]),
  });
}

/** Rates on the first day, by area. */
export const startRates = camp => new Map((camp.forecast?.areas ?? []).filter(area => area.history.length > 0).map(area => [area.area, area.history[0].usv_per_h]));

function part(component) {
  const shape = component.shape;
  const flat = ['plate', 'round-plate', 'grid', 'round-grid'].includes(shape.kind);
  const bundle = ['tube-bundle', 'rod-bundle', 'bolts'].includes(shape.kind);
  const width = bundle ? Math.sqrt(shape.count) * shape.outer_diameter_mm * 1.6 : shape.outer_diameter_mm ?? shape.length_mm;
  const height = flat ? shape.thickness_mm : shape.height_mm ?? shape.length_mm;
  return { topM: component.top_depth_mm / 1000, heightM: height / 1000, widthM: width / 1000, rightM: component.place?.right_m, hollow: shape.kind === 'ring' || shape.kind === 'cylinder-shell' };
}
