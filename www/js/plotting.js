/**
 * What charts are drawn with: scales and shapes of D3, of which the site takes no more than is named here.
 */
export { scaleLinear, scaleLog } from "d3-scale";
export { area, line, stack } from "d3-shape";
