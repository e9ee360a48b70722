/**
 * Figures with their names, as a list of terms.
 * @param {HTMLElement} list
 * @param {readonly [string, string, string?][]} lines term, figure, and where or what of it
 */
export function showFigures(list, lines) {
  list.replaceChildren(
    ...lines.flatMap(([term, text, note]) => {
      const name = document.createElement("dt");
      name.textContent = term;
      const figure = document.createElement("dd");
      figure.textContent = text;
      if (note !== undefined) {
        const small = document.createElement("small");
        small.textContent = note;
        figure.append(small);
      }
      return [name, figure];
    }),
  );
}
