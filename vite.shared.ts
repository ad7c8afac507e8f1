import { fileURLToPath } from 'node:url'

const stub = fileURLToPath(new URL('./src/documents/pdf/unused-by-us.ts', import.meta.url))

/** Libraries that jsPDF would load for HTML and SVG, which no sheet uses: 105 kB that need not travel. */
export const unusedLibraries = { html2canvas: stub, canvg: stub, dompurify: stub }
