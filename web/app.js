// Reads the address, fetches what the page needs, draws it. Pages are modules with title(), body() and what they need.
import { html, render } from './lib/vendor.js';
import { campaign, referenceTables } from './lib/campaign.js';
import { parse } from './lib/route.js';
import { leaveFrom, say, settle } from './lib/focus.js';
import { may, who, withhold } from './lib/who.js';
import { goesOn, watch } from './lib/unsaved.js';
import { shell } from './elements/shell.js';
import './elements/sign-in.js';
import { trouble } from './elements/trouble.js';

const PAGES = {
  campaigns: () => import('./views/campaigns.js'), new: () => import('./views/start.js'),
  standing: () => import('./views/standing.js'), options: () => import('./views/options.js'), cuts: () => import('./views/cuts.js'), areas: () => import('./views/areas.js'),
  tasks: () => import('./views/tasks.js'), people: () => import('./views/people.js'), decide: () => import('./views/decide.js'), basis: () => import('./views/basis.js'),
  divide: () => import('./views/divide.js'), compare: () => import('./views/compare.js'), bars: () => import('./views/bars.js'),
  trials: () => import('./views/trials.js'), calculator: () => import('./views/calculator.js'), waste: () => import('./views/waste.js'), library: () => import('./views/library.js'), handbook: () => import('./views/handbook.js'),
  add: () => import('./views/edit.js'), edit: () => import('./views/edit.js'), settings: () => import('./views/edit.js'),
  trail: () => import('./views/trail.js'), lessons: () => import('./views/lessons.js'),
  welcome: () => import('./views/welcome.js'), account: () => import('./views/account.js'), accounts: () => import('./views/accounts.js'), records: () => import('./views/records.js'),
  'dose-rate': () => import('./views/dose-rate.js'),
  aids: () => import('./views/aids.js'), share: () => import('./views/share.js'), order: () => import('./views/order.js'),
  log: () => import('./views/log.js'), import: () => import('./views/import.js'),
  reviews: () => import('./views/reviews.js'), sheet: () => import('./views/sheet.js'),
};
const main = document.getElementById('main');
let shown = 0;
let first = true;

export async function show() {
  const turn = ++shown;
  const route = parse(location.hash);
  shell(route, null);
  const patience = setTimeout(() => {
    if (turn === shown && !main.querySelector('h1')) render(html`<p class="waiting">Reading …</p>`, main);
  }, 300);
  try {
    let lost = null;                // without the network, pages that work alone do
    const session = await who().catch(problem => { lost = problem; return null; });
    const signing = session !== null && !session.signed_in && route.page !== 'welcome';
    if (session?.signed_in && route.id === null && route.page === 'campaigns' && !may('GET', '/api/campaigns')) {
      location.replace('#/accounts');
      return;
    }
    const load = signing ? () => import('./views/sign-in.js') : PAGES[route.page];
    if (!load) throw Object.assign(new Error('There is no such page.'), { status: 404 });
    const page = await load();
    if (!session && !page.alone) throw lost;
    const [camp, tables] = page.alone || signing || route.page === 'welcome' ? [null, null] : await Promise.all([route.id === null ? null : campaign(route.id), referenceTables()]);
    if (turn !== shown) return;
    const data = page.load ? await page.load({ route, camp, tables }) : null;
    if (turn !== shown) return;
    watch(page.unsaved && (() => page.unsaved(data)));
    const redraw = () => {
      if (turn !== shown) return;
      render(page.body({ route, camp, tables, data, redraw, reload: show }), main);
      withhold(main);
    };
    document.title = `${page.title({ route, camp, data })} – Kerfbook`;
    shell(route, camp ?? data?.camp ?? null);
    redraw();
    page.drawn?.({ route, camp, main, data, redraw });
  } catch (problem) {
    if (turn !== shown) return;
    console.warn(problem);
    document.title = 'Not shown – Kerfbook';
    render(trouble(problem, show), main);
  } finally {
    clearTimeout(patience);
  }
  settle(main, first);
  if (!first) say(document.title);
  first = false;
}

document.querySelector('.skip').addEventListener('click', event => {
  event.preventDefault();
  main.focus();
});
document.addEventListener('click', event => {
  const link = event.target.closest?.('a[href^="#/"]');
  if (link && /^#\/(c\/[^/]+\/(add|edit|settings)|new)/.test(link.getAttribute('href'))) leaveFrom(link);
});
window.addEventListener('hashchange', event => {
  if ((location.hash === '' || location.hash.startsWith('#/')) && goesOn(event.oldURL)) show();
});
show();
