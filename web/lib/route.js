// Addresses: #/campaigns, #/new, #/c/1/standing, #/c/1/areas/pool-edge, #/c/1/edit/areas/pool-edge, #/c/1/add/areas?area=x
export function parse(hash) {
  const [path, query = ''] = hash.replace(/^#\/?/, '').split('?');
  const parts = path.split('/').filter(Boolean).map(decoded);
  const search = new URLSearchParams(query);
  if (parts[0] !== 'c') return { page: parts[0] ?? 'campaigns', id: null, rest: parts.slice(1), search };
  return { page: parts[2] ?? 'standing', id: parts[1] ?? '', rest: parts.slice(3), search };
}

export function link(id, ...parts) {
  return `#/c/${[id, ...parts].map(encodeURIComponent).join('/')}`;
}

export function withQuery(address, values) {
  const search = new URLSearchParams(Object.entries(values).filter(([, value]) => value !== undefined && value !== null));
  return `${address}?${search}`;
}

function decoded(part) {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
