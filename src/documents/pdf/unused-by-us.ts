/** Stands in for libraries that jsPDF would load for HTML and SVG: no sheet is made from either. */
export default function unusedByUs(): never {
  throw new Error('a sheet asked jsPDF to draw HTML or SVG, which this program leaves out')
}
