import { cpSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const built = fileURLToPath(new URL('../../dist/page', import.meta.url));
const types: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.webmanifest': 'application/manifest+json',
};

/** A server of its own for a copy of the built page, which can change and go away. */
export interface OwnServer {
  readonly address: string;
  /** Serves another version from now on: its title begins with that mark. */
  renew(mark: string): void;
  stop(): Promise<void>;
}

/** Serves a copy of the built page on a free port. */
export async function startServer(): Promise<OwnServer> {
  const folder = mkdtempSync(join(tmpdir(), 'stepwell-served-'));
  cpSync(built, folder, { recursive: true });
  const server = createServer(({ url = '/' }, response) => {
    const { pathname } = new URL(url, 'http://localhost');
    const path = join(folder, pathname === '/' ? 'index.html' : pathname);
    if (!statSync(path, { throwIfNoEntry: false })?.isFile()) return response.writeHead(404).end();
    const type = types[extname(path)] ?? 'application/octet-stream';
    response.writeHead(200, { 'content-type': type, 'cache-control': 'no-cache' }).end(readFileSync(path));
  });
  await new Promise<void>((resolve) => {
    server.listen(0, 'localhost', resolve);
  });
  let open = true;
  return {
    address: `http://localhost:${(server.address() as AddressInfo).port}/`,
    renew(mark) {
      const change = (name: string, from: RegExp, to: string) => {
        const path = join(folder, name);
        const text = readFileSync(path, 'utf8');
        if (!from.test(text)) throw new Error(`${name} has no ${from}.`);
        writeFileSync(path, text.replace(from, to));
      };
      change('index.html', /<title>/, `<title>${mark} `);
      // What a build would write of a changed page.
      change(
        'sw.js',
        /(url:"index\.html",revision:")[^"]*|(revision:")[^"]*(?=",url:"index\.html")/,
        `$1$2${mark}`,
      );
    },
    async stop() {
      if (!open) return;
      open = false;
      server.closeAllConnections();
      await new Promise((resolve) => {
        server.close(resolve);
      });
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
