/** A tracked machine from the side with the numbered places of the survey. Drawn by hand, of no make. */
import { at, escapeText, label, picture, rule } from './charts/svg.ts'
import { survey as words } from './wording-survey.ts'

const WIDTH = 700
const HEIGHT = 300

const shape = (path: string, kind: string): string => `<path class="${kind}" d="${path}"/>`

const wheel = (x: number, y: number, radius: number, kind: string): string =>
  `<circle class="${kind}" cx="${at(x)}" cy="${at(y)}" r="${at(radius)}"/>`

/** Undercarriage, house, engine bay with its parts, boom. */
const machine = (): string =>
  [
    // track, sprocket at the rear, idler in front, rollers
    shape('M170 262 H440 A32 32 0 0 0 440 198 H170 A32 32 0 0 0 170 262 Z', 'sv-body'),
    wheel(170, 230, 21, 'sv-part'),
    wheel(170, 230, 9, 'sv-line'),
    wheel(440, 230, 21, 'sv-line'),
    ...[225, 270, 315, 360].map((x) => wheel(x, 248, 8, 'sv-line')),
    // swivel under the house
    shape('M288 176 H326 V198 H288 Z', 'sv-part'),
    // house: engine bay behind, seat and canopy in front
    shape('M120 96 H280 V176 H120 Z', 'sv-body'),
    shape('M280 120 H410 V176 H280 Z', 'sv-body'),
    shape('M300 120 V36 H404 V120', 'sv-line'),
    shape('M288 32 H416 V40 H288 Z', 'sv-part'),
    // engine, coupling and pump, reservoir, cooler, valve
    shape('M134 124 H186 V166 H134 Z', 'sv-part'),
    shape('M186 136 H194 V156 H186 Z', 'sv-line'),
    shape('M194 130 H222 V162 H194 Z', 'sv-part'),
    shape('M236 104 H274 V166 H236 Z', 'sv-part'),
    shape('M126 102 H180 V116 H126 Z', 'sv-line'),
    shape('M330 140 H372 V166 H330 Z', 'sv-part'),
    // hoses: suction, pressure, return; travel
    shape('M236 150 H222', 'sv-hose'),
    shape('M208 130 V120 H226 V172 H350 V166', 'sv-hose'),
    shape('M362 140 V132 H268 V104', 'sv-hose'),
    shape('M340 166 V184 H326', 'sv-hose'),
    shape('M288 190 C250 196 220 206 186 222', 'sv-hose'),
    // boom, arm, bucket
    shape('M400 158 L470 70 L560 56 L566 68 L480 88 L414 176 Z', 'sv-body'),
    shape('M556 58 L598 160 L584 166 L546 66 Z', 'sv-body'),
    shape('M580 160 L612 158 L622 204 C600 214 580 206 572 190 Z', 'sv-body'),
    shape('M414 150 L474 78 L552 66', 'sv-hose'),
    rule(60, 264, 660, 264, 'sv-ground'),
    // length on the ground
    rule(225, 280, 440, 280, 'sv-measure'),
    rule(225, 270, 225, 286, 'sv-measure'),
    rule(440, 270, 440, 286, 'sv-measure'),
    label(words.ground, 332.5, 294, 'middle', 'sv-text'),
  ].join('')

/** Where each number stands, and the point it means. */
const PLACES: readonly (readonly [x: number, y: number, toX: number, toY: number])[] = [
  [430, 104, 396, 130],
  [60, 150, 134, 146],
  [208, 76, 208, 130],
  [440, 190, 372, 156],
  [160, 76, 224, 148],
  [60, 214, 161, 230],
  [96, 286, 158, 248],
  [256, 68, 256, 104],
  [92, 108, 126, 109],
  [500, 40, 512, 72],
  [470, 214, 326, 186],
  [60, 182, 236, 201],
]

const marks = (): string =>
  PLACES.map(
    ([x, y, toX, toY], i) =>
      `${rule(x, y, toX, toY, 'sv-leader')}${wheel(toX, toY, 2, 'sv-dot')}${wheel(x, y, 9, 'sv-mark')}${label(String(i + 1), x, y + 3.6, 'middle', 'sv-number')}`,
  ).join('')

/** The drawing as SVG. */
export const surveyDrawing = (): string =>
  picture({
    id: 'survey-places',
    width: WIDTH,
    height: HEIGHT,
    title: words.drawingTitle,
    description: words.places.map((place, i) => `${i + 1}: ${escapeText(place)}`).join('. '),
    body: machine() + marks(),
  })
