/**
 * Pages of a PDF as pictures. Drawn by the PDF library on a canvas of its own, letters as outlines, so that neither the
 * browser's nor the system's way to draw a letter shows in them: the same PDF gives the same picture everywhere.
 */
import { PNG } from 'pngjs'
import { openPdf } from './read-print.ts'

export interface Picture {
  readonly width: number
  readonly height: number
  /** Red, green, blue, opacity of each pixel, row by row. */
  readonly data: Buffer
}

/** Text can just be read, a line of a drawing is a pixel wide: enough to see what moved, a page in about 28 kB. */
const DPI = 60

/** Levels of each colour in a stored picture. */
const LEVELS = 8

interface Drawing {
  readonly canvas: { readonly width: number; readonly height: number }
  readonly context: CanvasRenderingContext & {
    readonly getImageData: (x: number, y: number, width: number, height: number) => { readonly data: Uint8ClampedArray }
  }
}
type CanvasRenderingContext = NonNullable<RenderInput['canvasContext']>
type RenderInput = Parameters<Awaited<ReturnType<Awaited<ReturnType<typeof openPdf>>['getPage']>>['render']>[0]

/** The first pages of a PDF, at most so many. */
export const renderPages = async (bytes: Uint8Array, most: number): Promise<readonly Picture[]> => {
  const document = await openPdf(bytes)
  try {
    const pictures: Picture[] = []
    for (let i = 1; i <= Math.min(most, document.numPages); i++) {
      const page = await document.getPage(i)
      const viewport = page.getViewport({ scale: DPI / 72 })
      const [width, height] = [Math.round(viewport.width), Math.round(viewport.height)]
      const factory = document.canvasFactory as { readonly create: (width: number, height: number) => Drawing }
      const { canvas, context } = factory.create(width, height)
      await page.render({ canvasContext: context, viewport, canvas: canvas as RenderInput['canvas'] }).promise
      pictures.push({ width, height, data: Buffer.from(context.getImageData(0, 0, width, height).data) })
    }
    return pictures
  } finally {
    await document.loadingTask.destroy()
  }
}

const stepped = (value: number): number => Math.round((Math.round((value / 255) * (LEVELS - 1)) * 255) / (LEVELS - 1))

/** As a PNG of few colours. */
export const packed = ({ width, height, data }: Picture): Buffer => {
  const png = new PNG({ width, height })
  data.forEach((value, i) => {
    png.data[i] = stepped(value)
  })
  return PNG.sync.write(png, { colorType: 2, filterType: 0, deflateLevel: 9, deflateStrategy: 0 })
}

export const unpacked = (png: Buffer): Picture => PNG.sync.read(png)
