/**
 * What is said of newer editions of the page.
 */

export const OFFLINE_WORDS = {
  newer: "A newer version of this page is ready: it comes with the next reload, and your design stays.",
};
