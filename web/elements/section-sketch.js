// A section through pool and work areas: where people stand, and how hot it is there. The list beside it answers, the sketch locates.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { heat, sig } from '../lib/units.js';

class SectionSketch extends Drawn {
  /** data: {spots: [{name, rightM, upM, usvPerH}], parts: [{topM, heightM, widthM, rightM, hollow}], pool: {width, depth} if it is known, title, desc, id} */
  draw(data, width) {
    const pool = data.pool ?? { width: Math.max(4, ...data.parts.map(part => part.widthM + 1.2)), depth: Math.max(3, ...data.parts.map(part => part.topM + part.heightM + 0.8)) };
    const left = Math.min(-1.5, ...data.spots.map(spot => spot.rightM - 0.5));
    const right = Math.max(pool.width + 1, ...data.spots.map(spot => spot.rightM + 0.5));
    const pad = Math.min(60, width * 0.12);
    const x = d3.scaleLinear([left, right], [pad, width - pad]);
    const placed = tiers(data.spots.filter(spot => spot.upM >= 0), x, width);
    const deep = tiers(data.spots.filter(spot => spot.upM < 0), x, width);
    const above = (Math.max(0, ...placed.map(spot => spot.tier)) + 1) * 44 + 34;
    const lowest = Math.max(0, ...deep.map(spot => spot.tier));
    const below = 170 + lowest * 48;
    const y = d3.scaleLinear([0, pool.depth], [above, above + below]);
    const height = above + below + 14;
    const svg = d3.create('svg').attr('width', width).attr('height', height).attr('role', 'img').attr('aria-labelledby', `${data.id}-t ${data.id}-d`);
    svg.append('title').attr('id', `${data.id}-t`).text(data.title);
    svg.append('desc').attr('id', `${data.id}-d`).text(data.desc);
    this.#pool(svg, x, y, pool, width);
    this.#parts(svg, x, y, pool, data.parts);
    const up = spot => above - 30 - spot.tier * 44;
    for (const spot of placed) leader(svg, spot, x(spot.rightM), above - 12, up(spot));
    for (const spot of placed) badge(svg, spot, up(spot));
    for (const spot of deep) {
      const floor = Math.max(above + 66, Math.min(y(-spot.upM), above + below - 10 - lowest * 48)) + spot.tier * 48;
      svg.append('path').attr('class', 'floor-line').attr('d', `M${x(spot.rightM) - 44} ${floor + 3.5}h88`);
      leader(svg, spot, x(spot.rightM), floor, floor - 18);
      badge(svg, spot, floor - 18);
    }
    this.replaceChildren(svg.node());
  }

  #pool(svg, x, y, pool, width) {
    const [l, r, top, bottom] = [x(0), x(pool.width), y(0), y(pool.depth)];
    svg.append('rect').attr('class', 'pool-water').attr('x', l).attr('width', r - l).attr('y', top).attr('height', bottom - top);
    svg.append('path').attr('class', 'pool-wall').attr('d', `M${l - 1.5} ${top - 10}V${bottom + 1.5}H${r + 1.5}V${top - 10}`);
    svg.append('path').attr('class', 'waterline').attr('d', `M${l} ${top}H${r}`);
    svg.append('path').attr('class', 'floor-line').attr('d', `M4 ${top - 10}H${l - 3}M${r + 3} ${top - 10}H${width - 4}`);
    svg.append('text').attr('x', r + 8).attr('y', bottom - 2).text('pool');
  }

  #parts(svg, x, y, pool, parts) {
    for (const part of parts) {
      const middle = part.rightM ?? pool.width / 2;
      const [l, r, top, bottom] = [x(middle - part.widthM / 2), x(middle + part.widthM / 2), y(part.topM), y(part.topM + part.heightM)];
      svg.append('path').attr('class', 'part').attr('d', part.hollow ? `M${l} ${top}V${bottom}M${r} ${top}V${bottom}` : `M${l} ${top}H${r}V${Math.max(bottom, top + 2)}H${l}Z`);
    }
  }
}

/** Badges that would lie on one another go up a tier. */
export function tiers(spots, x, width) {
  const ends = [];
  return [...spots].sort((a, b) => a.rightM - b.rightM).map(spot => {
    const half = Math.max(spot.name.length * 6.4, 72) / 2 + 5;
    const centre = Math.min(width - half, Math.max(half, x(spot.rightM)));
    let tier = 0;
    while ((ends[tier] ?? -Infinity) > centre - half) tier += 1;
    ends[tier] = centre + half;
    return { ...spot, tier, centre };
  });
}

/** Leaders lie under all badges. */
export function leader(svg, spot, foot, ground, y) {
  svg.append('path').attr('class', 'leader').attr('d', `M${foot} ${ground}L${spot.centre} ${y + 2}`);
  svg.append('circle').attr('class', 'spot').attr('cx', foot).attr('cy', ground).attr('r', 3);
}

export function badge(svg, spot, y) {
  const step = heat(spot.usvPerH);
  const g = svg.append('g').attr('class', 'badge');
  g.append('rect').attr('class', `heat-${step}`).attr('x', spot.centre - 36).attr('y', y - 18).attr('width', 72).attr('height', 20).attr('rx', 4);
  g.append('text').attr('class', `on-${step}`).attr('x', spot.centre).attr('y', y - 4).text(`${sig(spot.usvPerH, 2)} µSv/h`);
  g.append('text').attr('class', 'area-name halo').attr('x', spot.centre).attr('y', y - 23).text(spot.name);
}

customElements.define('section-sketch', SectionSketch);
