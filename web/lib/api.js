// The only fetch. Answers are {body, etag, location}; anything but success is thrown as a Problem.
export const connection = new EventTarget();

export class Problem extends Error {
  constructor(status, body, etag) {
    super(body.detail || body.title || `The server answered ${status}.`);
    this.status = status;
    this.title = body.title ?? '';
    this.errors = body.errors ?? [];
    this.needs = body.needs ?? [];
    this.current = body.current;
    this.currentEtag = body.current_etag ?? etag;
  }
}

let signInAgain = async () => false;

/** Says what to do when nobody is signed in any more; if it answers true, the question is asked again. */
export const whenSignedOut = handler => { signInAgain = handler; };

/** @param options.quiet where nobody is at hand to sign in again */
export async function ask(method, path, options = {}) {
  const { body, etag, none, plain, headers: more, signal, quiet } = options;
  const headers = { Accept: 'application/json, application/problem+json', 'X-Kerfbook': 'page', ...more };
  if (body !== undefined) headers['Content-Type'] = 'application/json';
  if (etag) headers['If-Match'] = etag;
  if (none) headers['If-None-Match'] = none;
  tell('asking');
  let answer;
  try {
    answer = await fetch(path, { method, headers, body: body === undefined || plain ? body : JSON.stringify(body), cache: 'no-store', signal });
  } catch {
    tell('lost');
    throw new Problem(0, { title: 'No answer', detail: `The server does not answer. ${method === 'GET' ? 'Try again when the network is back.' : 'Whether it took what you sent is not known: look first, before you send it again.'}` });
  }
  tell(answer.status === 503 ? 'failing' : 'there');
  const text = await answer.text();
  const read = parsed(text);
  if (answer.status === 304 || answer.ok) {
    return { status: answer.status, body: read, etag: answer.headers.get('ETag'), location: answer.headers.get('Location') };
  }
  if (answer.status === 401 && path !== '/api/session' && !quiet && await signInAgain()) return ask(method, path, options);
  throw new Problem(answer.status, typeof read === 'object' && read ? read : {}, answer.headers.get('ETag'));
}

export const get = (path, options) => ask('GET', path, options);

function parsed(text) {
  try {
    return text === '' ? null : JSON.parse(text);
  } catch {
    return null;
  }
}

function tell(state) {
  connection.dispatchEvent(new CustomEvent('state', { detail: { state, at: new Date() } }));
}
