/** Topics 6, 7 and 8 of the published checks: orifices, valves, heat, suction. */
import { standardAtmosphere, suctionHead } from '../../../src/formulas/atmosphere.ts'
import { hydraulicPower } from '../../../src/formulas/pump.ts'
import { counterbalancePilot, orificeFlow, quadraticFlow } from '../../../src/formulas/restriction.ts'
import {
  coolerCapacity,
  coolerEffectiveness,
  crossFlowEffectiveness,
  lumpedTemperature,
  settledTemperature,
  surfaceHeat,
  throttlingRise,
  timeConstant,
  timeToTemperature,
} from '../../../src/formulas/thermal.ts'
import {
  BTU,
  barFromPascals,
  cubicMetresFromGallons,
  cubicMetresPerSecondFromGpm,
  cubicMetresPerSecondFromLpm,
  FOOT,
  fahrenheitDegreesFromKelvins,
  feetFromMetres,
  gpmFromCubicMetresPerSecond,
  HORSEPOWER,
  INCH,
  kelvinsFromFahrenheitDegrees,
  kwFromWatts,
  kwPerKelvinFromWatts,
  metresFromFeet,
  metresFromInches,
  POUND,
  pascalsFromBar,
  pascalsFromPsi,
  secondsFromHours,
  squareFeetFromSquareMetres,
  squareMetresFromSquareFeet,
  wattsFromKw,
  wattsPerSquareMetreKelvinFromBtu,
} from '../../../src/units/shop-units.ts'
import type { Expression, Expressions } from '../entry.ts'

const WATER = 1000
/** Reference density of quadraticFlow. */
const REFERENCE = 850

const btuPerPoundDegree = (c: number): number => (c * BTU) / (POUND / 1.8)
const btuAnHour = (watts: number): number => (watts * 3600) / BTU
/** Coefficient of the book's tank examples: 0.001 hp/(ft2.°F). */
const bookCoefficient = (u: number): number => (u * HORSEPOWER * 1.8) / FOOT ** 2

const effectiveness: Expression = (given) => ({ eff: crossFlowEffectiveness(given('NTU'), given('Cr')) })
const atmosphere: Expression = (given) => ({ p: standardAtmosphere(given('h')) / 1000 })

export const valvesHeat: Expressions = {
  'or-esp-8-4': (given) => {
    const area = (Math.PI / 4) * metresFromInches(given('D')) ** 2
    const flow = orificeFlow(given('Cd'), area, pascalsFromPsi(given('dp')), given('SG') * WATER)
    return { Q: gpmFromCubicMetresPerSecond(flow) }
  },
  // Cv is the flow of water at 1 psi: the read point gives the reference, water the density.
  'or-esp-8-5': (given) => {
    const dropAtReference = (pascalsFromPsi(given('dp')) * REFERENCE) / (given('SG') * WATER)
    const flow = cubicMetresPerSecondFromGpm(given('Q'))
    return { Cv: gpmFromCubicMetresPerSecond(quadraticFlow(pascalsFromPsi(1), flow, dropAtReference, WATER)) }
  },
  'or-sul-5-4': (given) => {
    const without = orificeFlow(1, given('A') * INCH ** 2, pascalsFromPsi(given('dp')), given('SG') * WATER)
    return { Cd: cubicMetresPerSecondFromGpm(given('Q')) / without }
  },
  'th-esp-11-2': (given) => {
    const rho = (given('w') * POUND) / cubicMetresFromGallons(1)
    const rise = throttlingRise(pascalsFromPsi(given('p')), rho, btuPerPoundDegree(given('c')))
    return { dT: fahrenheitDegreesFromKelvins(rise) }
  },
  'th-sul-12-2': (given) => {
    const rise = throttlingRise(pascalsFromPsi(given('p')), given('SG') * WATER, btuPerPoundDegree(given('c')))
    return { dT: fahrenheitDegreesFromKelvins(rise) }
  },
  'cb-pilot': (given) => ({
    p_pilot: barFromPascals(
      counterbalancePilot(pascalsFromBar(given('p_set')), pascalsFromBar(given('p_load')), given('R')),
    ),
  }),
  'hx-esp-11-4': (given) => {
    const hydraulic = hydraulicPower(cubicMetresPerSecondFromGpm(given('Q')), pascalsFromPsi(given('p')))
    const pump = hydraulic / given('eta_o') - hydraulic
    return { P: btuAnHour(pump + given('prv_duty') * hydraulic * (1 + given('line'))) }
  },
  'tank-sul-14-5': (given) => {
    const hydraulic = hydraulicPower(cubicMetresPerSecondFromGpm(given('Q')), pascalsFromPsi(given('p')))
    const ofOneSquareMetre = surfaceHeat(bookCoefficient(given('U')), 1, kelvinsFromFahrenheitDegrees(given('dT')))
    return { A: squareFeetFromSquareMetres((given('loss') * hydraulic) / ofOneSquareMetre) }
  },
  'tank-sul-14-7': (given) => {
    const area = squareMetresFromSquareFeet(given('A'))
    return { P: btuAnHour(surfaceHeat(bookCoefficient(0.001), area, kelvinsFromFahrenheitDegrees(given('dT')))) }
  },
  'tank-2.0': (given) => ({ U_SI: wattsPerSquareMetreKelvinFromBtu(given('U')) }),
  'tank-u12': (given) => ({ P: kwFromWatts(surfaceHeat(given('h'), given('A'), given('Toil') - given('Ta'))) }),
  'lump-incropera-5-1': (given) => ({
    t: timeToTemperature(given('T0'), given('Ta'), given('tau'), given('T')) ?? Number.NaN,
  }),
  'ntu-incropera-11-3': effectiveness,
  'ntu-incropera-11-4': effectiveness,
  'cooler-kWK': (given) => {
    const capacity = coolerCapacity(wattsFromKw(given('P')), given('Toil'), given('Ta'))
    // Only the product of density and heat capacity is stated.
    const eff = coolerEffectiveness(capacity, 1, given('rhoc') * 1e6, cubicMetresPerSecondFromLpm(given('Q')))
    return { G: kwPerKelvinFromWatts(capacity), eff }
  },
  // No loss to the air, as nearly as a lump with a conductance can have none.
  'heat-1W-gal': (given) => {
    const conductance = 1e-4
    const capacity = given('rhoc') * 1e6 * cubicMetresFromGallons(given('V'))
    const end = settledTemperature(0, given('P'), conductance)
    const tau = timeConstant(capacity, conductance)
    return { dT: fahrenheitDegreesFromKelvins(Number(lumpedTemperature(0, end, tau, secondsFromHours(given('dt'))))) }
  },
  'npsh-crane-7-32': (given) => {
    const rho = (given('w') * POUND) / FOOT ** 3
    const head = suctionHead(
      pascalsFromPsi(given('p_tank') + given('p_atm')),
      pascalsFromPsi(given('p_vap')),
      rho,
      -metresFromFeet(given('lift')),
      metresFromFeet(given('h_loss')),
    )
    return { NPSHa: feetFromMetres(head) }
  },
  'atm-0': atmosphere,
  'atm-500': atmosphere,
  'atm-3000': atmosphere,
}
