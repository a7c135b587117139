// A new campaign: its settings now, everything else after.
import { Session } from '../forms/session.js';
import { announce, formPage } from '../forms/page.js';
import { NEW_SETTINGS, settings } from '../forms/settings.js';
import { link } from '../lib/route.js';

export const title = () => 'Start a campaign';

export const unsaved = session => session.touched && !session.left;

export const load = async () => new Session({ fields: settings.fields, value: NEW_SETTINGS, etag: null, address: '/api/campaigns', method: 'POST' });

export function body({ tables, data: session, redraw }) {
  const submit = async () => {
    const saved = await session.sendAs(value => ({ format: 'kerfbook-campaign-1', settings: value }), 'settings.');
    if (saved) {
      session.left = true;
      location.hash = link(saved.body.id, 'standing');
      return;
    }
    redraw();
    announce();
  };
  return formPage({ session, heading: 'Start a campaign', under: 'All of this can be changed later.', actions: { save: 'Start it', submit, cancel: '#/campaigns', leave: () => { session.left = true; } }, camp: null, tables, redraw });
}
