import { html, svg } from '../lib/vendor.js';
import { link, withQuery } from '../lib/route.js';
import { kinds } from '../forms/kinds.js';

const SIGNS = { decide: 'M7 1 13 7 7 13 1 7z', check: 'M7 1.5A5.5 5.5 0 1 1 6.99 1.5z', note: 'M2 7h10' };

/** One finding: what is so, what follows, one way on. */
export function finding(found, camp) {
  const [words, address] = way(found, camp);
  return html`<li>
    ${svg`<svg class="sign ${found.weight}" viewBox="0 0 14 14" aria-hidden="true"><path d=${SIGNS[found.weight]}></path></svg>`}
    <div><p class="fact">${found.fact}</p><p class="means">${found.means}</p></div>
    <a class="button little" href=${address}>${words}<span class="spoken">: ${found.fact}</span></a></li>`;
}

export const findings = (list, camp) => html`<ul class="findings">${list.map(found => finding(found, camp))}</ul>`;

function way({ about, code }, camp) {
  const id = camp.id;
  if (about === 'workers') return ['Open', link(id, 'people', code)];
  if (about === 'log' && code) return ['Say how far', withQuery(link(id, 'log'), { task: code })];
  if (about === 'lessons' || about === 'log' || about === 'reviews') return ['Open', link(id, about)];
  if (about === 'areas') return ['Open', link(id, 'areas', code)];
  if (about === 'surveys') return ['Measure', withQuery(link(id, 'add', 'surveys'), { area: camp.byCode.surveys.get(code)?.area })];
  if (about === 'targets') {
    const target = camp.byCode.targets.get(code);
    return ['Tasks', withQuery(link(id, 'tasks'), { sort: 'dose', [target?.scope ?? 'all']: target?.of })];
  }
  if (about === 'overrides' || code === '') return ['Open', link(id, kinds[about]?.tab ?? 'basis')];
  return kinds[about] ? ['Open', link(id, 'edit', about, code)] : ['Open', link(id, 'areas')];
}
