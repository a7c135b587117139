// Two people changed the same object: both versions side by side, nothing lost, each field chosen.
import { html } from '../lib/vendor.js';

export function clashPanel(session, actions, redraw) {
  const { now, mine } = session.clash;
  const rows = session.fields.map(field => ({ ...field, mine: mine[field.name], now: now[field.name], base: session.base[field.name] }))
    .filter((field, i, all) => !same(field.mine, field.now) && all.findIndex(other => other.name === field.name) === i);
  session.clash.keep ??= new Map(rows.map(row => [row.name, same(row.mine, row.base) ? 'now' : 'mine']));
  const { keep } = session.clash;
  const choice = (row, which) => html`<input type="radio" name="keep-${row.name}" id="keep-${row.name}-${which}" .checked=${keep.get(row.name) === which}
    @change=${() => { keep.set(row.name, which); redraw(); }}>`;
  return html`<section class="panel clash" aria-labelledby="clash-title"><h2 id="clash-title">Your changes are not lost. Choose what to keep.</h2>
    <div class="table" tabindex="0" role="region" aria-label="Yours and now"><table><thead><tr><th scope="col">Field</th><th scope="col">Yours</th><th scope="col">Now stored</th></tr></thead>
      <tbody>${rows.map(row => html`<tr><th scope="row">${row.label}</th>
        <td><div class="tick">${choice(row, 'mine')}<label for="keep-${row.name}-mine"><span class="spoken">Keep yours: </span>${shown(row.mine)}</label></div></td>
        <td><div class="tick">${choice(row, 'now')}<label for="keep-${row.name}-now"><span class="spoken">Keep what is stored: </span>${shown(row.now)}</label></div></td></tr>`)}</tbody></table></div>
    ${rows.length === 0 ? html`<p>Both are the same now.</p>` : ''}
    <div class="form-foot"><button class="button main" type="button" @click=${() => actions.settle(merged(session))}>Save what is chosen</button></div></section>`;
}

export function merged({ clash, fields }) {
  const value = { ...clash.mine };
  for (const { name } of fields) {
    if (!clash.keep.has(name) || clash.keep.get(name) !== 'now') continue;
    if (clash.now[name] === undefined) delete value[name];
    else value[name] = clash.now[name];
  }
  return value;
}

const same = (one, other) => JSON.stringify(one) === JSON.stringify(other);

/** A value in words: lists and objects as their own short text. */
function shown(value) {
  if (value === undefined || value === '') return 'nothing';
  if (typeof value !== 'object') return String(value);
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map(shown).join('; ');
  return Object.entries(value).map(([name, inside]) => `${name.replace(/_/g, ' ')} ${shown(inside)}`).join(', ');
}
