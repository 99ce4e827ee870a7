/** Figures as a file may write them, for messages and editors. */
import type { Dimension } from '../units/dimensions.ts'

/** One figure of each dimension as it may stand in a file; the sizes are those of a small machine. */
export const EXAMPLES: { readonly [D in Dimension]: string } = {
  flow: '24.5 L/min',
  pressure: '155 bar',
  displacement: '8 cm3/rev',
  length: '0.6 m',
  mass: '980 kg',
  power: '8.6 kW',
  torque: '40 N·m',
  speed: '3000 rpm',
  'travel speed': '2.4 km/h',
  temperature: '50 °C',
  'temperature difference': '5 K',
  viscosity: '46 cSt',
  share: '15 %',
  grade: '20 %',
  volume: '13 L',
  area: '0.5 m2',
  'heat capacity rate': '0.09 kW/K',
  'heat transfer': '12 W/m2K',
  time: '30 s',
  'time per day': '40 min/day',
  current: '9 A',
}
