import { html, nothing } from '../lib/vendor.js';
import { link, withQuery } from '../lib/route.js';
import { kinds } from '../forms/kinds.js';

/** A plan that is kept but cannot be forecast yet: what it lacks, with a way to each form. */
export function missing(camp) {
  if (!camp.missing) return nothing;
  return html`<section class="panel missing" aria-labelledby="missing-title">
    <h2 id="missing-title">No forecast yet: the plan lacks ${camp.missing.length === 1 ? 'one thing' : `${camp.missing.length} things`}</h2>
    <ul>${camp.missing.map(error => html`<li>${said(error)} ${ways(error, camp)}</li>`)}</ul>
  </section>`;
}

const said = error => error.detail.charAt(0).toUpperCase() + error.detail.slice(1);

function ways({ field }, camp) {
  const found = /^([a-z]+)\[(\d+)\]/.exec(field);
  const object = found && camp.doc[found[1]]?.[Number(found[2])];
  if (!object || !kinds[found[1]]) return nothing;
  const kind = kinds[found[1]];
  return html`${found[1] === 'areas' ? html`<a href=${withQuery(link(camp.id, 'add', 'surveys'), { area: object.code })}>Add a survey</a> or ` : nothing}
    <a href=${link(camp.id, 'edit', found[1], object.code)}>open the ${kind.one} ${object.code}</a>`;
}
