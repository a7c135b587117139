// A small drawing of what a component looks like, one for each shape. Drawn to no scale but its own proportions.
import { nothing, svg } from '../lib/vendor.js';

const W = 88;
const H = 72;

export function outline(shape) {
  return svg`<svg class="outline" viewBox="0 0 ${W} ${H}" aria-hidden="true">${(DRAW[shape.kind] ?? block)(shape)}</svg>`;
}

/** Width and height that fit the box, keeping proportions within reason. */
function fit(wide, high) {
  const part = Math.min(2.6, Math.max(0.28, wide / high));
  const w = Math.min(64, 50 * part);
  return [w, Math.max(5, w / part)].map((value, i, both) => value * Math.min(1, (i === 0 ? 64 : 52) / both[i], 52 / both[1]));
}

function ring(shape) {
  const [w, h] = fit(shape.outer_diameter_mm, shape.height_mm * 1.15);
  const hole = Math.max(0.35, Math.min(0.9, shape.inner_diameter_mm / shape.outer_diameter_mm));
  const rx = w / 2;
  const ry = Math.max(4, rx * 0.28);
  const top = Math.max(ry + 2, (H - h) / 2);
  const bottom = Math.min(H - ry - 2, top + h - ry);
  const x = W / 2;
  return svg`<path class="metal" d="M${x - rx} ${top}V${bottom}A${rx} ${ry} 0 0 0 ${x + rx} ${bottom}V${top}"></path>
    <ellipse class="metal" cx=${x} cy=${top} rx=${rx} ry=${ry}></ellipse><ellipse class="hole" cx=${x} cy=${top} rx=${rx * hole} ry=${ry * hole}></ellipse>
    <path class="cut" d="M${x - rx * 0.45} ${top + ry * 0.9}V${bottom + ry * 0.85}"></path>`;
}

function plate(shape) {
  return svg`<path class="metal" d="M10 44 34 22H78L54 44z"></path><path class="metal" d="M10 44V50L54 50V44M54 50 78 28V22"></path><path class="cut" d="M32 44 56 22"></path>${nothing}`;
}

function roundPlate() {
  return svg`<path class="metal" d="M10 36V42A34 14 0 0 0 78 42V36"></path><ellipse class="metal" cx="44" cy="36" rx="34" ry="14"></ellipse><path class="cut" d="M44 22V50"></path>`;
}

function grid() {
  const lines = [0.2, 0.4, 0.6, 0.8];
  return svg`${plateGround()}<path class="outline-grid hole" fill="none" d=${lines.map(t => `M${10 + 44 * t} 46L${34 + 44 * t} 24M${10 + 24 * t} ${46 - 22 * t}H${54 + 24 * t}`).join('')}></path><path class="cut" d="M32 46 56 24"></path>`;
}
const plateGround = () => svg`<path class="metal" d="M10 46 34 24H78L54 46z"></path><path class="metal" d="M10 46V52H54V46M54 52 78 30V24"></path>`;

function roundGrid() {
  const holes = [[30, 34], [44, 30], [58, 34], [37, 38], [51, 38], [44, 44]];
  return svg`<path class="metal" d="M10 36V42A34 14 0 0 0 78 42V36"></path><ellipse class="metal" cx="44" cy="36" rx="34" ry="14"></ellipse>
    ${holes.map(([x, y]) => svg`<ellipse class="hole" cx=${x} cy=${y} rx="4.5" ry="2"></ellipse>`)}<path class="cut" d="M20 26 68 47"></path>`;
}

const tubes = hole => () => svg`${[22, 34, 46, 58].map(x => svg`<path class="metal" d="M${x} 14V58A5 2.2 0 0 0 ${x + 10} 58V14"></path>
    <ellipse class=${hole ? 'hole' : 'metal'} cx=${x + 5} cy="14" rx="5" ry="2.2"></ellipse>`)}<path class="cut" d="M14 38H76"></path>`;

function block(shape) {
  const [w, h] = fit(shape.length_mm ?? 1, shape.height_mm ?? 1);
  const d = 12;
  const x = (W - w - d) / 2;
  const y = Math.min(H - h - 3, (H - h + d) / 2);
  return svg`<path class="metal" d="M${x} ${y}H${x + w}V${y + h}H${x}z"></path><path class="metal" d="M${x} ${y}l${d} ${-d}h${w}l${-d} ${d}M${x + w} ${y + h}l${d} ${-d}v${-h}"></path>
    <path class="cut" d="M${x + w / 2} ${y}V${y + h}"></path>`;
}

function bolts() {
  return svg`${[18, 38, 58].map(x => svg`<path class="metal" d="M${x} 16h14v8h-3.5v32h-7v-32h-3.5z"></path>`)}<path class="cut" d="M12 27H78"></path>`;
}

const DRAW = { ring, 'cylinder-shell': ring, plate, 'round-plate': roundPlate, grid, 'round-grid': roundGrid, 'tube-bundle': tubes(true), 'rod-bundle': tubes(false), block, bolts };
