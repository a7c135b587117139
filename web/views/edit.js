// Forms for every kind of object and for the settings.
import { html } from '../lib/vendor.js';
import { ask, get } from '../lib/api.js';
import { forget } from '../lib/campaign.js';
import { confirm } from '../lib/confirm.js';
import { cameFrom, say } from '../lib/focus.js';
import { link } from '../lib/route.js';
import { sentence } from '../lib/words.js';
import '../elements/try-out.js';
import { NAMES, may, mayChange } from '../lib/who.js';
import { Session } from '../forms/session.js';
import { announce, formPage } from '../forms/page.js';
import { kinds } from '../forms/kinds.js';
import { preset } from '../forms/preset.js';
import { settings } from '../forms/settings.js';

export async function load({ route, camp }) {
  const name = route.page === 'settings' ? 'settings' : route.rest[0];
  const kind = name === 'settings' ? settings : kinds[name];
  if (!kind) throw Object.assign(new Error('There is no such form.'), { status: 404 });
  const base = `/api/campaigns/${encodeURIComponent(camp.id)}/${name}`;
  if (route.page === 'add') {
    const session = new Session({ fields: kind.fields, value: preset(name, kind, camp, route.search), etag: null, address: base, method: 'POST' });
    return { name, kind, session };
  }
  const address = route.page === 'settings' ? base : `${base}/${encodeURIComponent(route.rest[1] ?? '')}`;
  const answer = await get(address);
  return { name, kind, code: route.rest[1], session: new Session({ fields: kind.fields, value: answer.body, etag: answer.etag, address, method: 'PUT' }) };
}

/** Whether leaving would lose what was typed. */
export const unsaved = ({ session }) => session.touched && !session.left;

export const title = ({ route, camp, data }) => `${words(route, data)}, ${camp.doc.settings.name}`;

const words = (route, { kind, code, session }) => (route.page === 'settings' ? 'Settings' : route.page === 'add' ? `Add ${kind.article} ${kind.one}`
  : `${sentence(kind.one)} ${session.base.name ?? code}`);

export function body({ route, camp, tables, data, redraw, reload }) {
  const { kind, session, code } = data;
  const back = cameFrom(link(camp.id, kind.tab));
  const done = saved => {
    if (!saved) {
      redraw();
      announce();
      return;
    }
    forget(camp.id);
    session.left = true;
    say('Saved.');
    location.hash = back;
  };
  session.named ??= session.method === 'POST' ? nameToCode(session, redraw) : undefined;
  const actions = {
    save: route.page === 'add' ? 'Add' : 'Save', cancel: back, leave: () => { session.left = true; },
    submit: async () => done(await session.send()),
    settle: async value => { session.etag = session.clash.etag; session.clash = null; done(await session.sendValue(value)); },
    remove: route.page !== 'edit' ? null : async () => {
      if (!await confirm({ title: `Delete the ${kind.one} ${session.base.name ?? code}?`, text: 'What refers to it must be changed first. The change stays in the list of changes.', verb: 'Delete it' })) return;
      try {
        await ask('DELETE', session.address, { etag: session.etag });
        done(true);
      } catch (problem) {
        session.refuse(problem.errors?.length ? problem.errors.map(error => ({ ...error, field: `/${error.field}` })) : [{ field: '', detail: problem.message }]);
        done(null);
      }
    },
  };
  const closed = mayChange(data.name) ? null : data.name === 'workers' ? `${NAMES} Who does not see them cannot change people.` : 'Your role looks at this and does not change it.';
  const tries = !closed && camp.forecast && data.name !== 'options' && may('POST', '/api/campaigns/{id}/what-if');
  const form = formPage({ session, heading: words(route, data), actions, camp, tables, redraw, reload, self: code, closed });
  return tries ? html`<div class="trying">${form}<try-out .form=${{ camp, kind: data.name, session }}></try-out></div>` : form;
}

/** A new object's code follows its name until somebody types one. */
function nameToCode(session, redraw) {
  const { code } = session.draft;
  let made = code?.text;
  return name => {
    if (!code || code.text !== made) return;
    made = name.toLowerCase().normalize('NFKD').replace(/[^a-z0-9]+/g, '-').replace(/^-+|-+$/g, '').slice(0, 40);
    code.text = made;
    redraw();
  };
}
