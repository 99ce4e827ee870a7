/** Components in plain words, for chains, change lists and quotes. */
import type { Circuit, Line, Machine, Motor } from '../machine.ts'
import type { Shop } from '../shop.ts'
import {
  barFromPascals,
  cm3FromCubicMetresPerRev,
  litresFromCubicMetres,
  lpmFromCubicMetresPerSecond,
  mmFromMetres,
} from '../units/shop-units.ts'

/** A number as people say it: three figures at most, no trailing noughts. */
export const short = (value: number): string => String(Number(value.toPrecision(3)))

const WORDS: { readonly [key: string]: string } = {
  'travel.motor': 'travel motors',
  'travel.swivel': 'swivel',
  'travel.sprocket': 'sprockets',
  'travel.final-drive-ratio': 'final drives',
  'travel.lines.shift': 'shift lines',
  fluid: 'oil',
  strainer: 'tank strainer',
  'cooler-bypass': 'cooler bypass',
  'lamp-set': 'lamps',
}

/**
 * A component id in plain words: "pressure line (left)", "work line valve to swivel". The circuit is named only where the
 * machine has more than one.
 */
export const inWords = (component: string, machine: Machine): string => {
  const known = WORDS[component]
  if (known !== undefined) return known
  if (component.startsWith('travel.lines.'))
    return `work line ${component.slice('travel.lines.'.length).replaceAll('-', ' ')}`
  if (!component.startsWith('circuits.')) return component.replaceAll('-', ' ')
  const circuit = machine.circuits.find(({ name }) => component.startsWith(`circuits.${name}`))
  const name = circuit?.name ?? component.split('.')[1] ?? ''
  const rest = component.slice(`circuits.${name}`.length).replace(/^\./u, '')
  const words: { readonly [key: string]: string } = {
    '': 'circuit',
    'lines.suction': 'suction line',
    'lines.pressure': 'pressure line',
    'lines.return': 'return line',
    'auxiliary.lines.out': 'auxiliary line out',
    'auxiliary.lines.back': 'auxiliary line back',
    'pump.mount': 'pump mount',
  }
  const which = machine.circuits.length > 1 || rest === '' ? ` (${name})` : ''
  return `${words[rest] ?? rest.replaceAll('.', ' ')}${which}`
}

/** Name of a part on the list, else what the figures say. */
export const partOr = (part: string | null, shop: Shop, figures: string): string =>
  shop.parts.find(({ id }) => id === part)?.name ?? figures

const orUnread = (value: number | null, unit: string, scale: (value: number) => number): string =>
  value === null ? 'not read' : `${short(scale(value))} ${unit}`

export const pumpWords = ({ pump }: Circuit, shop: Shop): string => {
  const figures = `${short(cm3FromCubicMetresPerRev(pump.displacement))} cm3/rev`
  const section = pump.section === null ? '' : `, section ${pump.section}`
  return `${partOr(pump.part, shop, figures)}${section}`
}

export const lineWords = (line: Line | null, shop: Shop): string => {
  if (line === null) return 'none'
  const size = line.dash === null ? `${short(mmFromMetres(line.bore))} mm bore` : `-${line.dash}`
  return partOr(line.part, shop, `${line.kind ?? 'hose'} ${size}`)
}

export const motorWords = (motor: Motor, shop: Shop): string => {
  const sizes = [motor.displacement, motor.secondDisplacement].filter((size) => size !== null)
  return partOr(motor.part, shop, `${sizes.map((size) => short(cm3FromCubicMetresPerRev(size))).join('/')} cm3/rev`)
}

export const flowWords = (flow: number | null): string => orUnread(flow, 'L/min', lpmFromCubicMetresPerSecond)
export const pressureWords = (pressure: number | null): string => orUnread(pressure, 'bar', barFromPascals)
export const litreWords = (volume: number | null): string => orUnread(volume, 'L', litresFromCubicMetres)
export const boreWords = (bore: number | null): string => orUnread(bore, 'mm bore', mmFromMetres)
