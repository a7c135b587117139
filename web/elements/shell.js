import { html, nothing, render, svg } from '../lib/vendor.js';
import { connection, get } from '../lib/api.js';
import { link } from '../lib/route.js';
import { home, known, may, roleWord } from '../lib/who.js';
import { kinds } from '../forms/kinds.js';
import { changed, countUnsent } from '../lib/outbox.js';

const TABS = [['standing', 'Standing'], ['options', 'Options'], ['cuts', 'Cuts'], ['areas', 'Areas'], ['tasks', 'Tasks'], ['people', 'People'], ['log', 'Log'], ['lessons', 'Lessons'], ['basis', 'Basis']];
const bar = document.getElementById('bar');
const state = { route: null, camp: null, others: [], menu: false, kept: 0, word: 'there', at: new Date() };

export function shell(route, camp) {
  if (state.route?.page !== route.page || state.route?.id !== route.id) state.menu = false;
  if (camp || route.id === null || state.camp?.id !== route.id) state.camp = camp;
  state.route = route;
  draw();
}

const mark = svg`<svg viewBox="0 0 32 32" aria-hidden="true">
  <path class="ring" d="M16 5.5a10.5 10.5 0 1 1-7.6 3.25"></path><path class="kerf" d="M12.4 2.4v7"></path>
  <path class="line" d="M1 19.5c2.5-1.6 5-1.6 7.5 0s5 1.6 7.5 0 5-1.6 7.5 0 5 1.6 7.5 0"></path></svg>`;

function draw() {
  const { route, camp } = state;
  render(html`<div class="bar-in">
    <a class="bar-mark" href="#/campaigns" aria-label="Kerfbook, all campaigns">${mark}<span class="word">Kerfbook</span></a>
    ${inside(route) ? switcher(camp) : nothing}
    ${!inside(route) ? nothing : html`
      <button class="bar-button bar-menu" aria-expanded=${state.menu} aria-controls="tabs" @click=${() => { state.menu = !state.menu; draw(); }}>Menu</button>
      <nav id="tabs" aria-label="Pages of the campaign" class=${state.menu ? 'open' : ''}><ul>
        ${TABS.map(([page, word]) => html`<li><a href=${link(route.id, page)} aria-current=${tabOf(route) === page ? 'page' : nothing}>${word}</a></li>`)}
      </ul></nav>`}
    <div class="bar-side">
      ${camp?.doc.settings.invented ? html`<span class="bar-tag">demo · invented</span>` : nothing}
      <div class="bar-states">${word()}<span class="bar-kept ${state.kept > 0 ? 'some' : ''}">Kept on this tablet: ${state.kept}</span></div>
      ${signedIn(route)}
      <button class="bar-button" @click=${turnTheme}>${dark() ? 'Light' : 'Dark'}<span class="spoken"> colours</span></button>
    </div></div>`, bar);
}

const inside = route => route.id !== null && known()?.signed_in !== false;

function signedIn(route) {
  const account = known()?.account;
  if (!account) return nothing;
  return html`${may('GET', '/api/accounts') && route.id === null ? html`<a class="bar-button bar-link" href="#/accounts" aria-current=${route.page === 'accounts' ? 'page' : nothing}>Accounts</a>` : nothing}
    <a class="bar-who" href="#/account" aria-current=${route.page === 'account' ? 'page' : nothing}><span class="spoken">Signed in: </span><span>${account.name}</span><span class="role">${roleWord(account.role)}</span></a>`;
}

function switcher(camp) {
  return html`<details class="bar-campaign" @toggle=${read} @keydown=${escape} @focusout=${leave}>
    <summary><span class="spoken">Campaign: </span><span class="name">${camp?.doc.settings.name ?? '…'}</span></summary>
    <ul class="bar-list" @click=${event => event.currentTarget.parentElement.removeAttribute('open')}>
      ${state.others.map(other => html`<li><a href=${home(other.id)}>${other.name}</a></li>`)}
      <li><a href="#/campaigns">All campaigns</a></li>
    </ul></details>`;
}

async function read(event) {
  if (!event.target.open) return;
  const answer = await get('/api/campaigns?limit=10').catch(() => null);
  state.others = answer?.body.items.filter(item => String(item.id) !== state.route.id) ?? [];
  draw();
}
function escape(event) {
  if (event.key !== 'Escape') return;
  event.currentTarget.removeAttribute('open');
  event.currentTarget.querySelector('summary').focus();
}
function leave(event) {
  if (event.relatedTarget && !event.currentTarget.contains(event.relatedTarget)) event.currentTarget.removeAttribute('open');
}

const UNDER = { import: 'log', aids: 'options', share: 'people', order: 'cuts', divide: 'cuts', compare: 'cuts', trials: 'cuts', calculator: 'cuts', waste: 'cuts', library: 'basis', handbook: 'basis', trail: 'basis', bars: 'tasks', decide: 'standing', reviews: 'standing', sheet: 'standing' };
function tabOf(route) {
  if (UNDER[route.page]) return UNDER[route.page];
  if (route.page === 'settings') return 'basis';
  if (route.page === 'dose-rate') return 'areas';
  return route.page === 'add' || route.page === 'edit' ? kinds[route.rest[0]]?.tab : route.page;
}

function word() {
  const time = `${String(state.at.getHours()).padStart(2, '0')}:${String(state.at.getMinutes()).padStart(2, '0')}`;
  const words = { asking: 'Reading …', there: `Up to date ${time}`, lost: 'No answer from the server', failing: 'The store does not answer' };
  const lost = state.word === 'lost' || state.word === 'failing';
  return html`<span class="bar-state ${lost ? 'lost' : ''}">
    ${svg`<svg viewBox="0 0 10 10" aria-hidden="true">${lost ? svg`<path class="dot" d="M5 0 10 5 5 10 0 5z"></path>`
    : svg`<circle class="dot ${state.word === 'asking' ? 'half' : ''}" cx="5" cy="5" r="4"></circle>`}</svg>`}${words[state.word]}</span>`;
}

function dark() {
  const chosen = document.documentElement.dataset.theme;
  return chosen ? chosen === 'dark' : matchMedia('(prefers-color-scheme: dark)').matches;
}
function turnTheme() {
  const next = dark() ? 'light' : 'dark';
  document.documentElement.dataset.theme = next;
  try {
    localStorage.setItem('theme', next);
  } catch { /* not remembered, but turned */ }
  draw();
}

let calm;
connection.addEventListener('state', ({ detail }) => {
  clearTimeout(calm);
  const set = () => { Object.assign(state, { word: detail.state, at: detail.at }); if (state.route) draw(); };
  if (detail.state === 'asking') calm = setTimeout(set, 300);
  else set();
});
matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => { if (state.route) draw(); });

async function count() {
  const kept = await countUnsent().catch(() => 0);
  if (kept === state.kept) return;
  state.kept = kept;
  if (state.route) draw();
}
changed.addEventListener('change', count);
count();
