import { html, raw } from 'hono/html';

type Operation = {
  tags?: string[];
  summary?: string;
  requestBody?: unknown;
  parameters?: unknown;
  responses?: Record<string, { description?: string }>;
};
type Spec = { paths?: Record<string, Record<string, unknown> | undefined>; info?: { description?: string } };

/** A page that needs no script and no other host: each route with what it takes and how it may refuse. */
export function docsPage(spec: Spec) {
  const operations = Object.entries(spec.paths ?? {}).flatMap(([path, methods]) =>
    Object.entries(methods ?? {}).map(([method, operation]) => ({
      path,
      method: method.toUpperCase(),
      ...(operation as Operation),
    })),
  );
  const tags = [...new Set(operations.map((operation) => operation.tags?.[0] ?? 'Other'))];
  return html`<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Sheafbook API</title>
    <meta name="viewport" content="width=device-width"><link rel="stylesheet" href="/api/docs.css"></head><body>
    <h1>Sheafbook API</h1><p>${spec.info?.description ?? ''} <a href="/api/openapi.json">OpenAPI 3.1 document</a></p>
    ${tags.map((tag) => section(tag, operations))}</body></html>`;
}

function section(tag: string, operations: readonly (Operation & { path: string; method: string })[]) {
  const own = operations.filter((operation) => (operation.tags?.[0] ?? 'Other') === tag);
  return html`<h2>${tag}</h2>${own.map(
    ({ path, method, summary, requestBody, parameters, responses }) => html`<details><summary>
      <code>${method} ${path}</code> — ${summary ?? ''}</summary><p>${responses?.default?.description ?? ''}</p>
      ${requestBody ? preformatted('Body', requestBody) : ''}${parameters ? preformatted('Parameters', parameters) : ''}
    </details>`,
  )}`;
}

const preformatted = (title: string, value: unknown) =>
  html`<h3>${title}</h3><pre>${JSON.stringify(value, null, 2)}</pre>${raw('')}`;

/** Quiet and readable in light and dark, on paper tones of our own. */
export const DOCS_STYLE = `:root { color-scheme: light dark }
body { max-width: 60rem; margin: 2rem auto; padding: 0 20px; font: 16px/1.5 system-ui, sans-serif;
  background: light-dark(#faf6ee, #191c17); color: light-dark(#23271f, #ece7da) }
h1, h2 { font-family: ui-serif, Georgia, serif } h2 { margin-top: 2rem; border-bottom: 1px solid light-dark(#8d877a, #7c766a) }
summary { padding: 12px 0; cursor: pointer } a { color: light-dark(#8a4b14, #e7a55e) }
button { min-height: 48px; padding: 8px 20px; font: inherit }
code, pre { font: 14px/1.4 ui-monospace, monospace } pre { overflow-x: auto; padding: 12px; background: light-dark(#fffdf8, #22261f) }`;
