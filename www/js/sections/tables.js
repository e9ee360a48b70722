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
