// Reads [[path, text], …] as JSON and writes the texts, minified one by one, in the same order. No syntax is translated:
// the files are what the sources are, without comments, blanks and long local names. One that takes something from a package
// gets that into itself, since a browser finds no packages; the page's own files stay files of their own.
import { text } from "node:stream/consumers";
import { build, transform } from "esbuild";

const ofThePage = {
  name: "of-the-page",
  setup: ({ onResolve }) =>
    onResolve({ filter: /^[.#]/ }, ({ path, importer }) => (importer.includes("node_modules") ? undefined : { path, external: true })),
};

async function withPackages(path, source) {
  const stdin = { contents: source, sourcefile: path, resolveDir: "." };
  const options = { stdin, bundle: true, format: "esm", minify: true, write: false, plugins: [ofThePage] };
  return (await build(options)).outputFiles[0].text;
}

async function minified([path, source]) {
  const css = path.endsWith(".css");
  if (!css && /\bfrom "[^.#]/.test(source)) {
    return withPackages(path, source);
  }
  const options = { loader: css ? "css" : "js", format: css ? undefined : "esm", minify: true, sourcefile: path };
  return (await transform(source, options)).code;
}

process.stdout.write(JSON.stringify(await Promise.all(JSON.parse(await text(process.stdin)).map(minified))));
