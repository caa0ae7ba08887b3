// The table below a figure, which is only written while it is open.

/**
 * Has the table of a figure written whenever it is opened; at once where it was opened while the data
 * were still on their way.
 *
 * @param figure the figure element
 * @param write takes the details element that holds the table
 */
export function whenOpened(figure, write) {
  const table = figure.querySelector("details.table");
  table?.addEventListener("toggle", () => {
    if (table.open) write(table);
  });
  if (table?.open) write(table);
}

/** Has an open table of a figure written anew. */
export function whileOpen(figure, write) {
  const table = openTable(figure);
  if (table) write(table);
}

/** The details element of a figure's table, if it is open. */
export function openTable(figure) {
  return figure.querySelector("details.table[open]");
}
