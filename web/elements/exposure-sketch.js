// A section through the pool fed by the calculation: water level, what stands at its depth and place, and the rate where people are.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { badge, leader, tiers } from './section-sketch.js';

const LABEL = 17;

class ExposureSketch extends Drawn {
  /** data: {id, pool, sources: [{number, name, rightM, upM, wideM, highM, hollow, state}], shields, spots: [{name, rightM, upM, usvPerH}], title, desc} */
  draw(data, width) {
    const { pool } = data;
    const names = width >= 440 ? 190 : 34;
    const lefts = Math.min(-0.8, ...data.spots.map(spot => spot.rightM - 0.3));
    const rights = Math.max(pool.lengthM + 0.8, ...data.spots.map(spot => spot.rightM + 0.3));
    const wallLeft = Math.min(70, width * 0.16);
    const wallRight = Math.max(wallLeft + 120, width - names - 26);
    const x = d3.scaleLinear([lefts, 0, pool.lengthM, rights], [8, wallLeft, wallRight, width - 8]).clamp(true);
    const placed = tiers(data.spots.filter(spot => spot.upM >= 0), x, width);
    const above = (Math.max(0, ...placed.map(spot => spot.tier)) + 1) * 44 + 46;
    const below = Math.max(240, data.sources.length * LABEL + 20);
    const y = d3.scaleLinear([0, -pool.depthM], [above, above + below]);
    const deep = tiers(data.spots.filter(spot => spot.upM < 0), x, width);
    const under = deep.length === 0 ? 16 : 70 + Math.max(...deep.map(spot => spot.tier)) * 58;
    const svg = d3.create('svg').attr('width', width).attr('height', above + below + under).attr('role', 'img').attr('aria-labelledby', `${data.id}-t ${data.id}-d`);
    svg.append('title').attr('id', `${data.id}-t`).text(data.title);
    svg.append('desc').attr('id', `${data.id}-d`).text(data.desc);
    this.#pool(svg, pool, x, y, width);
    this.#stands(svg, data, x, y, wallRight, names);
    for (const spot of placed) leader(svg, spot, x(spot.rightM), y(Math.min(spot.upM, 1.5) * 0.35), above - 40 - spot.tier * 44);
    for (const spot of placed) badge(svg, spot, above - 40 - spot.tier * 44);
    for (const spot of deep) {
      const floor = above + below + 58 + spot.tier * 58;
      svg.append('path').attr('class', 'floor-line').attr('d', `M${spot.centre - 44} ${floor + 3.5}h88`);
      leader(svg, { ...spot }, spot.centre, floor, floor - 12);
      badge(svg, spot, floor - 12);
    }
    this.replaceChildren(svg.node());
  }

  #pool(svg, pool, x, y, width) {
    const [left, right, floor] = [x(0), x(pool.lengthM), y(-pool.depthM)];
    const level = y(pool.waterLevelM);
    const deck = y(0) - Math.max(8, Math.min(20, pool.deckM * 30));
    svg.append('rect').attr('class', 'pool-water').attr('x', left).attr('width', right - left).attr('y', level).attr('height', floor - level);
    svg.append('path').attr('class', 'pool-wall').attr('d', `M${left - 1.5} ${deck}V${floor + 1.5}H${right + 1.5}V${deck}`);
    svg.append('path').attr('class', 'floor-line').attr('d', `M4 ${deck}H${left - 3}M${right + 3} ${deck}H${width - 4}`);
    svg.append('path').attr('class', 'waterline').attr('d', `M${left} ${level}H${right}`);
    svg.append('text').attr('class', 'water').attr('x', left + 5).attr('y', level + 14).text(pool.levelWords);
    if (pool.basket) {
      const [at, top] = [x(pool.basket.rightM), y(-pool.basket.topM)];
      svg.append('path').attr('class', 'basket').attr('d', `M${at - 18} ${top}v26h36v-26`);
      svg.append('text').attr('class', 'halo').attr('x', at).attr('y', top + 39).attr('text-anchor', 'middle').text('basket');
    }
    if (pool.hook) {
      const at = x(pool.hook.rightM);
      svg.append('path').attr('class', 'hook').attr('d', `M${at} ${deck - 22}V${level + 14}q0 8 6 8q6 0 6 -6`);
    }
  }

  #stands(svg, data, x, y, wallRight, names) {
    for (const shield of data.shields) {
      svg.append('rect').attr('class', 'shield-mark').attr('x', x(shield.leftM)).attr('width', Math.max(2, x(shield.rightM) - x(shield.leftM))).attr('y', y(shield.topM)).attr('height', Math.max(2, y(shield.lowM) - y(shield.topM)));
    }
    const top = y(0) + 14;
    data.sources.forEach((source, i) => {
      const [l, r, up, low] = [x(source.rightM - source.wideM / 2), x(source.rightM + source.wideM / 2), y(source.upM + source.highM / 2), y(source.upM - source.highM / 2)];
      const bottom = Math.max(low, up + 2);
      const outline = source.hollow ? `M${l} ${up}V${bottom}M${r} ${up}V${bottom}M${l} ${up}H${r}M${l} ${bottom}H${r}` : `M${l} ${up}H${r}V${bottom}H${l}Z`;
      svg.append('path').attr('class', `stands ${source.state} ${source.whole ? 'whole' : ''}`).attr('d', outline);
      const label = top + i * LABEL;
      if (!source.whole) svg.append('path').attr('class', 'leader thin').attr('d', `M${r} ${(up + bottom) / 2}L${wallRight + 6} ${label}H${wallRight + 10}`);
      svg.append('text').attr('class', 'halo').attr('x', wallRight + 12).attr('y', label + 4).text(names > 100 ? `${source.number} ${source.name}` : source.number);
    });
  }
}

customElements.define('exposure-sketch', ExposureSketch);
