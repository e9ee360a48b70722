// Reads [[path, text], …] as JSON and writes the texts, minified one by one, in the same order. Nothing is bundled and
// no syntax is translated: the files are what the sources are, without comments, blanks and long local names.
import { text } from "node:stream/consumers";
import { transform } from "esbuild";

const minified = JSON.parse(await text(process.stdin)).map(async ([path, source]) => {
  const css = path.endsWith(".css");
  const options = { loader: css ? "css" : "js", format: css ? undefined : "esm", minify: true, sourcefile: path };
  return (await transform(source, options)).code;
});
process.stdout.write(JSON.stringify(await Promise.all(minified)));
