/** Topic 1 of the published checks: units and handbook constants. */
import { meanVelocity } from '../../../src/formulas/line.ts'
import { hydraulicPower } from '../../../src/formulas/pump.ts'
import {
  celsiusFromFahrenheit,
  cubicMetresFromGallons,
  cubicMetresPerSecondFromGpm,
  cubicMetresPerSecondFromLpm,
  feetFromMetres,
  hpFromWatts,
  kmhFromMetresPerSecond,
  kwFromWatts,
  lpmFromCubicMetresPerSecond,
  metresFromInches,
  metresPerSecondFromMph,
  pascalsFromBar,
  pascalsFromPsi,
  squareMetresPerSecondFromCst,
  wattsFromHp,
  wattsPerSquareMetreKelvinFromBtu,
} from '../../../src/units/shop-units.ts'
import type { Expressions } from '../entry.ts'

export const units: Expressions = {
  'u-gal': (given) => ({ y: cubicMetresFromGallons(given('x')) }),
  'u-gpm': (given) => ({ y: lpmFromCubicMetresPerSecond(cubicMetresPerSecondFromGpm(given('x'))) }),
  'u-psi': (given) => ({ y: pascalsFromPsi(given('x')) }),
  'u-hp': (given) => ({ y: wattsFromHp(given('x')) }),
  'u-cst': (given) => ({ y: squareMetresPerSecondFromCst(given('x')) }),
  'u-mph': (given) => ({ y: kmhFromMetresPerSecond(metresPerSecondFromMph(given('x'))) }),
  'u-btuh': (given) => ({ y: wattsPerSquareMetreKelvinFromBtu(given('x')) }),
  'u-degF': (given) => ({ y: celsiusFromFahrenheit(given('x')) }),
  'u-k1714': (given) => ({
    P: hpFromWatts(hydraulicPower(cubicMetresPerSecondFromGpm(given('Q')), pascalsFromPsi(given('p')))),
  }),
  'u-k0.3208': (given) => {
    const bore = metresFromInches(Math.sqrt((4 * given('A')) / Math.PI))
    return { v: feetFromMetres(Number(meanVelocity(cubicMetresPerSecondFromGpm(given('Q')), bore))) }
  },
  'u-600': (given) => ({
    P: kwFromWatts(hydraulicPower(cubicMetresPerSecondFromLpm(given('Q')), pascalsFromBar(given('p')))),
  }),
}
