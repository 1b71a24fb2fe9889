import { escapeHtml } from './letter.ts';
import { wordsOf } from './words/index.ts';

/** A page of three sentences and one button, without script: whoever opens it came from a letter. */
export function stopPage({
  kind,
  language,
  isStopped,
}: {
  kind: string;
  language: string;
  isStopped: boolean;
}): string {
  const words = wordsOf(language);
  if (isStopped) return page(language, words.stoppedTitle, `<p>${escapeHtml(words.stoppedWords)}</p>`);
  const what = escapeHtml(words.stopWords(words.names[kind] ?? kind));
  const form = `<form method="post"><button>${escapeHtml(words.stopButton)}</button></form>`;
  return page(language, words.stopTitle, `<p>${what}</p>${form}`);
}

/** For an address that leads to nothing, in the language that its reader's browser asks for. */
export function lostPage(language: string): string {
  const words = wordsOf(language);
  return page(language, words.lostTitle, `<p>${escapeHtml(words.lostWords)}</p>`);
}

const page = (language: string, title: string, body: string): string =>
  `<!doctype html><html lang="${language === 'es' ? 'es' : 'en'}"><head><meta charset="utf-8">` +
  `<meta name="viewport" content="width=device-width, initial-scale=1"><meta name="robots" content="noindex">` +
  `<title>${escapeHtml(title)}</title><link rel="stylesheet" href="/api/docs.css"></head>` +
  `<body><main><h1>${escapeHtml(title)}</h1>${body}</main></body></html>`;
