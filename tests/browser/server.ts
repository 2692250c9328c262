/**
 * A static host for the tests: folders under paths, with the headers that README asks for. A folder can be exchanged
 * while it runs (a deploy), and the whole can be killed (the network is gone).
 */
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import sirv from 'sirv';
import { cacheControl, SECURITY_HEADERS } from '../../service-worker/headers';

export interface Server {
  /** "http://localhost:40123", without a slash at the end. */
  readonly origin: string;
  /** Serves `folder` under `path` ("/studio/arpeggiary/") from now on, in place of what was there. */
  mount(path: string, folder: string): void;
  /** Ends it and cuts all open connections. */
  kill(): Promise<void>;
}

/** With a body: a browser makes an error of its own out of an empty one. */
function notFound(_request: IncomingMessage, response: ServerResponse): void {
  const headers = { 'Content-Type': 'text/plain', 'Cache-Control': 'no-store' };
  response.writeHead(404, headers).end('Not found');
}

/** Starts a host on a free port of localhost, which browsers treat as secure. */
export async function startServer(folders: Readonly<Record<string, string>>): Promise<Server> {
  const mounted = new Map<string, ReturnType<typeof sirv>>();
  const mount = (path: string, folder: string): void => {
    // `dev`: the files are read at each request, as the tests change them.
    mounted.set(path, sirv(folder, { dev: true, etag: true, onNoMatch: notFound }));
  };
  for (const [path, folder] of Object.entries(folders)) mount(path, folder);

  const server = createServer((request, response) => {
    const { pathname, search } = new URL(request.url ?? '/', 'http://localhost');
    const longestFirst = [...mounted].toSorted(([a], [b]) => b.length - a.length);
    const found = longestFirst.find(([path]) => pathname.startsWith(path));
    if (found === undefined) return notFound(request, response);
    const [path, serve] = found;
    for (const [name, value] of Object.entries(SECURITY_HEADERS)) response.setHeader(name, value);
    response.setHeader('Cache-Control', cacheControl(pathname));
    request.url = pathname.slice(path.length - 1) + search;
    serve(request, response);
  });
  await new Promise<void>((resolve) => server.listen(0, 'localhost', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    origin: `http://localhost:${port}`,
    mount,
    kill: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
