/**
 * Tables whose rows have names.
 */

/**
 * @param {readonly string[]} columns headings
 * @returns {HTMLTableElement} with an empty body
 */
export function tableOf(columns) {
  const table = document.createElement("table");
  const headings = table.createTHead().insertRow();
  for (const text of columns) {
    const heading = document.createElement("th");
    heading.scope = "col";
    heading.textContent = text;
    headings.append(heading);
  }
  table.createTBody();
  return table;
}

/**
 * @param {HTMLTableSectionElement} body
 * @param {string} name
 * @returns {HTMLTableRowElement} with its heading, at the end
 */
export function namedRow(body, name) {
  const row = body.insertRow();
  const heading = document.createElement("th");
  heading.scope = "row";
  heading.textContent = name;
  row.append(heading);
  return row;
}

/**
 * @param {string} title
 * @param {readonly string[]} columns the last over the bars
 */
export function barsOf(title, columns) {
  const made = tableOf(columns);
  made.className = "bars";
  made.createCaption().textContent = title;
  return made;
}

/**
 * @param {HTMLTableElement} into
 * @param {readonly { name: string, share: number, figures: readonly string[] }[]} rows
 */
export function fillBars(into, rows) {
  const body = into.tBodies[0];
  body.replaceChildren();
  for (const { name, share, figures } of rows) {
    const row = namedRow(body, name);
    for (const text of figures) {
      row.insertCell().textContent = text;
    }
    row.cells[1].style.setProperty("--share", share.toFixed(4));
  }
}
