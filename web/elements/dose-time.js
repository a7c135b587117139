// Dose against time: twenty outcomes of each option as small marks, the medians as large ones with their letter.
import { d3 } from '../lib/vendor.js';
import { Drawn } from '../lib/draw.js';
import { digits, msv, msvTyped, sig } from '../lib/units.js';
import { classOf, shapeOf } from './option-mark.js';

class DoseTime extends Drawn {
  #input;
  #output;
  #here;
  #x;

  /** data: {options: [{letter, outcomes: [{person_usv, hours}], usv, hours, hollow, quiet}], targetUsv, title, desc} */
  draw(data, width) {
    const narrow = width < 480;
    const height = narrow ? 300 : Math.min(440, Math.max(320, width * 0.46));
    const margin = { top: 22, right: 18, bottom: 38, left: 44 };
    const points = data.options.flatMap(option => option.outcomes);
    const x = d3.scaleLinear(d3.extent(points, point => point.hours), [margin.left + 8, width - margin.right - 8]).nice(narrow ? 4 : 8);
    const y = d3.scaleLinear(d3.extent([...points.map(point => point.person_usv / 1000), ...(data.targetUsv ? [data.targetUsv / 1000] : [])]), [height - margin.bottom - 6, margin.top + 8]).nice(6);
    const svg = d3.create('svg').attr('width', width).attr('height', height).attr('role', 'img').attr('aria-labelledby', 'dose-time-t dose-time-d');
    svg.append('title').attr('id', 'dose-time-t').text(data.title);
    svg.append('desc').attr('id', 'dose-time-d').text(data.desc);
    this.#axes(svg, x, y, { width, height, margin, narrow });
    if (data.targetUsv) this.#target(svg, data.targetUsv, y, { width, margin });
    const clouds = [...data.options].sort((a, b) => Number(b.quiet) - Number(a.quiet));
    for (const option of clouds) {
      const cloud = svg.append('g').attr('class', `cloud ${classOf(option.letter)}${option.hollow ? ' hollow' : ''}${option.quiet ? ' quiet' : ''}`).attr('data-option', option.letter);
      for (const point of option.outcomes) {
        cloud.append('path').attr('d', shapeOf(option.letter, narrow ? 3 : 3.6)).attr('transform', `translate(${x(point.hours).toFixed(1)},${y(point.person_usv / 1000).toFixed(1)})`);
      }
    }
    this.#medians(svg, data.options, x, y);
    this.#here = svg.append('line').attr('class', 'here').attr('aria-hidden', 'true').attr('y1', margin.top).attr('y2', height - margin.bottom);
    this.#x = x;
    if (!this.#input) this.#build();
    this.querySelector('svg')?.remove();
    this.prepend(svg.node());
    const [from, to] = x.domain();
    Object.assign(this.#input, { min: from, max: to, step: (to - from) / 100 || 1 });
    if (this.#input.dataset.moved !== 'yes') this.#input.value = to;
    this.#read();
  }

  #build() {
    const reader = document.createElement('div');
    reader.className = 'reader';
    this.#input = Object.assign(document.createElement('input'), { type: 'range', id: 'dose-time-at' });
    this.#input.setAttribute('aria-label', 'Working hours to read off');
    this.#output = document.createElement('output');
    this.#output.htmlFor = 'dose-time-at';
    this.#input.addEventListener('input', () => { this.#input.dataset.moved = 'yes'; this.#read(); });
    reader.append(this.#input, this.#output);
    this.append(reader);
  }

  /** Which options have half of their outcomes done by the hours under the line, with the median dose of each. */
  #read() {
    const hours = Number(this.#input.value);
    const [done, late] = [true, false].map(by => this.data.options.filter(option => (option.hours <= hours) === by));
    const words = `By ${sig(hours, 4)} h half of the outcomes are done of ${done.length === 0 ? 'no option' : done.map(option => `${option.letter} (${msv(option.usv)} person-mSv)`).join(', ')}${late.length === 0 ? '' : `; later of ${late.map(option => option.letter).join(', ')}`}.`;
    this.#here.attr('x1', this.#x(hours)).attr('x2', this.#x(hours));
    this.#output.value = words;
    this.#input.setAttribute('aria-valuetext', words);
  }

  #axes(svg, x, y, { width, height, margin, narrow }) {
    const rows = svg.append('g').attr('class', 'axis soft');
    for (const tick of y.ticks(6)) {
      rows.append('line').attr('x1', margin.left).attr('x2', width - margin.right).attr('y1', y(tick)).attr('y2', y(tick));
      rows.append('text').attr('x', margin.left - 6).attr('y', y(tick) + 4).attr('text-anchor', 'end').text(digits(tick));
    }
    const axis = svg.append('g').attr('class', 'axis').attr('transform', `translate(0,${height - margin.bottom})`);
    axis.append('path').attr('d', `M${margin.left} 0H${width - margin.right}`);
    for (const tick of x.ticks(narrow ? 4 : 8)) {
      axis.append('line').attr('x1', x(tick)).attr('x2', x(tick)).attr('y2', 5);
      axis.append('text').attr('x', x(tick)).attr('y', 18).attr('text-anchor', 'middle').text(digits(tick));
    }
    axis.append('text').attr('x', width - margin.right).attr('y', 34).attr('text-anchor', 'end').text('working hours from start to finish');
    svg.append('text').attr('x', 0).attr('y', 12).text('person-mSv');
  }

  #target(svg, targetUsv, y, { width, margin }) {
    const at = y(targetUsv / 1000);
    svg.append('line').attr('class', 'target-line').attr('x1', margin.left).attr('x2', width - margin.right).attr('y1', at).attr('y2', at);
    svg.append('text').attr('class', 'strong halo').attr('x', width - margin.right).attr('y', at - 5).attr('text-anchor', 'end').text(`target ${msvTyped(targetUsv)}`);
  }

  /** Letters stand where nothing else does, as near as can be: right above first. Dominated ones lie beneath. */
  #medians(svg, options, x, y) {
    const places = options.map(option => ({ option, x: x(option.hours), y: y(option.usv / 1000) }));
    const taken = places.map(place => ({ x: place.x, y: place.y + 5 }));
    for (const { option, x: left, y: top } of [...places].sort((a, b) => Number(b.option.hollow) - Number(a.option.hollow))) {
      const mark = svg.append('g').attr('class', `median ${classOf(option.letter)}${option.hollow ? ' hollow' : ''}`).attr('data-option', option.letter);
      mark.append('path').attr('class', 'arms').attr('d', `M${left - 15} ${top}h30M${left} ${top - 15}v30`);
      mark.append('path').attr('class', 'body').attr('d', shapeOf(option.letter, 7)).attr('transform', `translate(${left},${top})`);
    }
    for (const { option, x: left, y: top } of places) {
      const free = [[14, -6], [14, 15], [-14, -6], [-14, 15], [28, 4], [-28, 4], [14, -20], [14, 30]].map(([dx, dy]) => ({ x: left + dx, y: top + dy }))
        .find(spot => taken.every(other => Math.abs(other.x - spot.x) >= 13 || Math.abs(other.y - spot.y) >= 13)) ?? { x: left + 14, y: top - 34 };
      taken.push(free);
      svg.append('text').attr('class', 'strong halo letter').attr('data-option', option.letter).attr('x', free.x).attr('y', free.y).attr('text-anchor', 'middle').text(option.letter);
    }
  }
}

customElements.define('dose-time', DoseTime);
