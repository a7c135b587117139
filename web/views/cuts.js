// What is cut, how, into how many pieces and packages.
import { html, nothing } from '../lib/vendor.js';
import { outline } from '../elements/outline.js';
import { addLink, editLink, kindPanel } from '../elements/manage.js';
import { askPanel, goToPanel, turnTo } from '../elements/ask-panel.js';
import { missing } from '../elements/missing.js';
import { originMark } from '../elements/marks.js';
import { liftCover } from '../questions/lift-cover.js';
import { loadedPackage } from '../questions/package.js';
import { link } from '../lib/route.js';
import { subnav } from '../elements/subnav.js';
import { speedWords } from '../lib/speed.js';
import { nameOf, plural } from '../lib/words.js';
import { activity, day, duration, msv, percent, plain, sig } from '../lib/units.js';
import '../elements/dot-rows.js';
import '../elements/rate-curve.js';

export const title = ({ camp }) => `Cuts of ${camp.doc.settings.name}`;

export function body({ camp, tables, redraw }) {
  const { components, cuts } = camp.doc;
  const totals = camp.forecast?.totals;
  return html`
    <div class="lead"><div><h1>${totals ? `${plural(components.length, 'component')}, ${sig(totals.metres_cut)} m of cuts, ${sig(totals.tool_on_hours)} h with the tool on` : plural(components.length, 'component')}</h1>
      <p class="under">${total(components, 'pieces')} pieces in ${total(components, 'packages')} packages, ${sig(components.reduce((kg, each) => kg + each.mass_kg, 0))} kg${totals ? `, of which ${sig(totals.kerf_kg)} kg become swarf and dross` : ''}.</p></div>
      <div class="doing">${camp.forecast && camp.doc.components.length > 1 ? html`<a class="button" href=${link(camp.id, 'order')}>Order of removal</a>` : nothing}${addLink(camp, 'components')}</div></div>
    ${subnav(camp, 'cuts', 'cuts')}
    <div class="grid even">
      ${missing(camp)}
      ${components.length === 0 ? html`<section class="panel empty"><h2>No components yet</h2><p>A component is a thing to be taken apart. It needs a routine first.</p>${addLink(camp, 'components', null, 'Add the first component')}</section>` : nothing}
      ${components.map(component => panel(camp, component, cuts.filter(cut => cut.component === component.code), redraw))}
      ${camp.doc.settings.pool && components.some(each => each.inventory) ? askPanel({ camp, tables, redraw, questions: [liftCover, loadedPackage], place: 'cuts', heading: 'Questions about lifting and packing' }) : nothing}
      ${kindPanel(camp, 'techniques', {
    empty: 'No techniques yet. Add the first way of cutting, with its speed and limits.', head: ['Technique', '~Works in', '~#Thickness, mm', 'Speed: low, likely, high', '~#Kerf, mm', 'Known'],
    row: technique => [editLink(camp, 'techniques', technique, technique.name), technique.medium === 'either' ? 'water or air' : technique.medium,
      `${plain(technique.min_thickness_mm)} to ${plain(technique.max_thickness_mm)}`, speedWords(technique), plain(technique.kerf_mm.likely), originMark(technique.origin)],
  })}
      <div class="w6">${kindPanel(camp, 'packages', {
    empty: 'No package types yet.', head: ['Package', '#Inside, mm', '#Content up to, kg', '~Wall'],
    row: each => [editLink(camp, 'packages', each, each.name), `${plain(each.inner_length_mm)} × ${plain(each.inner_width_mm)} × ${plain(each.inner_height_mm)}`, plain(each.payload_kg), `${plain(each.wall_mm)} mm ${each.wall_material}`],
  })}</div>
      <div class="w6">${kindPanel(camp, 'trials', {
    empty: 'No timed trials yet. A trial on cold metal replaces an assumed speed.', head: ['Trial', 'Technique', '~Material', '#mm thick', '#mm/min', '~Done'],
    row: each => [editLink(camp, 'trials', each), nameOf(camp, 'techniques', each.technique), each.material, plain(each.thickness_mm), sig(each.length_mm / each.minutes), day(each.done_on)],
  })}</div>
    </div>`;
}

const total = (components, what) => components.reduce((sum, each) => sum + each[what], 0);
function panel(camp, component, cuts, redraw) {
  const dose = camp.forecast?.components.find(each => each.component === component.code);
  const bq = component.inventory?.activities.reduce((sum, each) => sum + each.becquerel, 0);
  return html`<section class="panel w6 component">
    <div class="head"><h2>${component.name}</h2><div class="doing"><a class="button little" href=${link(camp.id, 'divide', component.code)}>Divide<span class="spoken"> ${component.name}</span></a><a class="button little" href=${link(camp.id, 'compare', component.code)}>Compare techniques<span class="spoken"> for ${component.name}</span></a>${addLink(camp, 'cuts', { component: component.code })}<a class="button little" href=${link(camp.id, 'edit', 'components', component.code)}>Edit<span class="spoken"> ${component.name}</span></a></div></div>
    <div class="with-outline">${outline(component.shape)}
      <dl class="facts"><div><dt>Shape</dt><dd>${size(component.shape)}</dd></div><div><dt>Material</dt><dd>${component.material}</dd></div>
        <div><dt>Mass</dt><dd>${plain(component.mass_kg)} kg</dd></div><div><dt>Water above</dt><dd>${plain(component.top_depth_mm / 1000)} m</dd></div>
        <div><dt>Pieces, packages</dt><dd>${component.pieces} in ${component.packages}</dd></div>
        <div><dt>Activity</dt><dd>${component.inventory ? html`${activity(bq)} <span class="sub">on ${day(component.inventory.reference_on)}</span>` : 'not given'}</dd></div></dl></div>
    ${cuts.length === 0 ? html`<p class="muted">No cuts.</p>` : html`<div class="table" tabindex="0" role="region" aria-label=${`Cuts of ${component.name}`}><table><thead><tr><th scope="col">Cut</th><th scope="col">Technique</th><th scope="col" class="n">×</th><th scope="col" class="n">mm long</th><th scope="col" class="n">mm thick</th></tr></thead>
      <tbody>${cuts.map(cut => html`<tr><th scope="row">${editLink(camp, 'cuts', cut, cut.name)}</th><td>${nameOf(camp, 'techniques', cut.technique)}</td><td class="n">${cut.count}</td><td class="n">${plain(cut.length_mm)}</td><td class="n">${plain(cut.thickness_mm)}</td></tr>`)}</tbody></table></div>`}
    ${dose ? html`<p class="small muted">${duration(dose.tool_on_hours)} with the tool on, ${sig(dose.metres_cut)} m. All its tasks: ${sig(dose.person_hours)} person-hours, ${msv(dose.person_usv)} person-mSv, ${day(dose.start)} to ${day(dose.finish)}${dose.packed_on ? '' : '; no task packs it'}.
      <a href="${link(camp.id, 'tasks')}?component=${component.code}">Its tasks</a></p>` : nothing}
    ${camp.doc.settings.pool && component.inventory ? html`<p class="small asks"><button type="button" class="button little" @click=${() => ask(camp, 'least-cover', component, redraw)}>Water to keep while lifting<span class="spoken"> ${component.name}</span></button>
      <button type="button" class="button little" @click=${() => ask(camp, 'package', component, redraw)}>Loaded package<span class="spoken"> of ${component.name}</span></button></p>` : nothing}
  </section>`;
}

/** Turns the questions below to this component and goes there. */
function ask(camp, key, component, redraw) {
  turnTo(camp, 'cuts', key, { component: component.code });
  redraw();
  goToPanel('cuts');
}

function size(shape) {
  const mm = plain;
  const hole = shape.inner_diameter_mm ? `, bore ${mm(shape.inner_diameter_mm)}` : '';
  const across = shape.outer_diameter_mm ? `Ø ${mm(shape.outer_diameter_mm)}${hole}` : '';
  const sides = [shape.length_mm, shape.width_mm, shape.thickness_mm, shape.height_mm].filter(Boolean).map(mm).join(' × ');
  const count = shape.count ? `${shape.count} of ` : '';
  const kind = shape.kind.replace('-', ' ');
  return `${kind}: ${count}${[across, sides].filter(Boolean).join(' × ')} mm${shape.open_fraction ? `, ${percent(shape.open_fraction)} open` : ''}`;
}
