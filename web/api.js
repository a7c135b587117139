// Writes openapi.json out as a page: one section a call, one table a shape.

function el(name, content = [], attributes = {}) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  made.append(...[content].flat());
  return made;
}

const last = (ref) => ref.split('/').pop();

/** What a schema is, in a few words, with a link where it is written out. */
function kind(schema) {
  if (!schema) return '';
  if (schema.$ref?.startsWith('#')) return el('a', last(schema.$ref), { href: '#shape-' + last(schema.$ref) });
  if (schema.$ref) return el('a', schema.$ref.includes('#') ? last(schema.$ref) : 'campaign document', { href: '/api/schemas/campaign.json' });
  if (schema.type === 'array') return el('span', ['list of ', kind(schema.items)]);
  if (schema.enum) return schema.enum.join(', ');
  if (schema.anyOf) return el('span', schema.anyOf.flatMap((one, i) => (i ? [', ', kind(one)] : [kind(one)])));
  if (schema.properties) return el('span', ['object with ', Object.keys(schema.properties).join(', ')]);
  return [schema.format ?? schema.type ?? '', schema.unit ? `in ${schema.unit}` : ''].filter(Boolean).join(' ');
}

function table(caption, heads, rows) {
  return el('div', el('table', [
    el('caption', caption),
    el('thead', el('tr', heads.map((head) => el('th', head, { scope: 'col' })))),
    el('tbody', rows.map(([first, ...others]) => el('tr', [el('th', first, { scope: 'row' }), ...others.map((cell) => el('td', cell))]))),
  ]), { class: 'table', tabindex: '0', role: 'region', 'aria-label': caption });
}

function call(path, method, operation) {
  const parts = [
    el('h3', [el('code', `${method.toUpperCase()} ${path}`)]),
    el('p', [operation.summary, '. ', operation.description ?? '']),
  ];
  if (operation.parameters) {
    parts.push(table('Sent with it', ['Name', 'Where', 'What', 'Kind'], operation.parameters.map((parameter) =>
      [parameter.name, parameter.in + (parameter.required ? ', needed' : ''), parameter.description, kind(parameter.schema)])));
  }
  if (operation.requestBody) {
    parts.push(el('p', ['Body: ', operation.requestBody.description, ' ', kind(operation.requestBody.content['application/json'].schema)]));
  }
  parts.push(table('Answers', ['Status', 'What', 'Body'], Object.entries(operation.responses).map(([status, answer]) =>
    [status, [answer.description, answer.headers ? ` Headers: ${Object.keys(answer.headers).join(', ')}.` : ''].join(''),
      kind(Object.values(answer.content ?? {})[0]?.schema)])));
  return el('section', parts, { class: 'panel', id: operation.operationId });
}

function shape(name, schema) {
  const parts = [el('h3', el('code', name), { id: 'shape-' + name }), el('p', schema.description ?? '')];
  parts.push(schema.properties
    ? table('Fields of ' + name, ['Field', 'Kind', 'What'], Object.entries(schema.properties).map(([field, of]) =>
      [field + (schema.required?.includes(field) ? '' : ' (may be absent)'), kind(of), of.description ?? '']))
    : el('p', kind(schema)));
  return el('section', parts, { class: 'panel' });
}

const calls = document.querySelector('#calls');
try {
  const answer = await fetch('/api/openapi.json');
  if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
  const api = await answer.json();
  document.querySelector('#about').textContent = api.info.summary + ' ' + api.info.description;
  document.querySelector('#example').textContent = `curl -s ${location.origin}/api/campaigns/1/document -o plan.json
curl -s ${location.origin}/api/forecast -H 'Content-Type: application/json' --data-binary @plan.json`;
  calls.replaceChildren(el('h2', 'Calls'), ...Object.entries(api.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => call(path, method, operation))));
  document.querySelector('#schemas').append(...Object.entries(api.components.schemas).map(([name, schema]) => shape(name, schema)));
} catch (trouble) {
  calls.replaceChildren(el('p', `The description could not be loaded: ${trouble.message}. Load the page again.`, { role: 'alert' }));
}
calls.removeAttribute('aria-busy');
