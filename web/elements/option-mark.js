// The mark of an option: a shape and a colour of its own, and its letter beside it. Hollow where it is dominated.
import { svg } from '../lib/vendor.js';

const SHAPES = {
  dot: r => `M${-r} 0a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`,
  square: r => `M${-r * 0.9} ${-r * 0.9}h${r * 1.8}v${r * 1.8}h${-r * 1.8}z`,
  triangle: r => `M0 ${-r * 1.15}L${r * 1.1} ${r * 0.85}H${-r * 1.1}z`,
  diamond: r => `M0 ${-r * 1.25}L${r * 1.25} 0L0 ${r * 1.25}L${-r * 1.25} 0z`,
  cross: r => `M${-r * 0.4} ${-r * 1.1}h${r * 0.8}v${r * 0.7}h${r * 0.7}v${r * 0.8}h${-r * 0.7}v${r * 0.7}h${-r * 0.8}v${-r * 0.7}h${-r * 0.7}v${-r * 0.8}h${r * 0.7}z`,
};
const ORDER = ['dot', 'square', 'triangle', 'diamond', 'cross'];
const place = letter => letter.charCodeAt(0) - 65;

export const shapeOf = (letter, radius) => SHAPES[ORDER[place(letter) % ORDER.length]](radius);
/** Five colours; from F on all are grey, and the letter tells them apart. */
export const classOf = letter => `option-${place(letter) < ORDER.length ? letter.toLowerCase() : 'more'}`;

export const optionMark = (letter, hollow = false) => svg`<svg class="option-mark" viewBox="-8 -8 16 16" width="16" height="16" aria-hidden="true">
  <path class="${classOf(letter)}${hollow ? ' hollow' : ''}" d=${shapeOf(letter, 5.5)}></path></svg>`;
