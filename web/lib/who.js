// Who is signed in, and what the role may do: the server says it, the pages offer only that.
import { get } from './api.js';
import { link } from './route.js';

const WORDS = {
  'radiation-protection-officer': 'Radiation protection officer', 'project-manager': 'Project manager', 'team-member': 'Team member', reader: 'Reader', administrator: 'Administrator',
};
const HOME = { 'project-manager': 'options', 'team-member': 'log' };
let now = null;

/** @returns {Promise<{signed_in, first, account, may}>} */
export async function who() {
  now ??= (await get('/api/session')).body;
  return now;
}

export const known = () => now;
/** Whether something kept on this tablet is of whoever is signed in; what was kept before that was noted is everybody's. */
export const mine = record => record.by === undefined || !now?.account || record.by.id === now.account.id;
export const set = answer => { now = answer; };
export const roleWord = role => WORDS[role] ?? role;
export const roles = Object.entries(WORDS);
export const may = (method, route) => now?.may.includes(`${method} ${route}`) ?? false;
export const seesPeople = () => now?.account?.sees_people ?? false;

/** Whether objects of a kind may be added and changed. */
export const mayChange = kind => (kind === 'settings' ? may('PUT', '/api/campaigns/{id}/settings')
  : may('PUT', `/api/campaigns/{id}/${kind}/{code}`) && (kind !== 'workers' || seesPeople()));

/** The page of a campaign that a role looks at first. */
export const home = id => link(id, HOME[now?.account?.role] ?? 'standing');

export const NAMES = 'Names are shown only to the radiation protection officer and to the person. You see role codes.';

/** Takes away what the role may not do: links to add something, buttons to edit it, and whatever says in data-may which route it uses. */
export function withhold(main) {
  for (const element of main.querySelectorAll('a[href*="/add/"], a.button[href*="/edit/"], a.button[href$="/settings"], [data-may]')) {
    const kind = /^#\/c\/[^/]+\/(?:add\/|edit\/|)([a-z]+)/.exec(element.getAttribute('href') ?? '')?.[1];
    const [method, route] = (element.dataset.may ?? '').split(' ');
    element.hidden = (kind !== undefined && !mayChange(kind)) || (route !== undefined && !may(method, route));
  }
}
