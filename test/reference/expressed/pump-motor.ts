/** Topics 2 and 3 of the published checks: pumps, motors, their losses. */
import {
  motorHydromechanicalEfficiency,
  motorIntake,
  motorSpeed,
  motorTorque,
  motorVolumetricEfficiency,
} from '../../../src/formulas/motor.ts'
import {
  hydraulicPower,
  pumpFlow,
  pumpHydromechanicalEfficiency,
  pumpVolumetricEfficiency,
  shaftPower,
  slipFromEfficiency,
  theoreticalTorque,
} from '../../../src/formulas/pump.ts'
import {
  cm3FromCubicMetresPerRev,
  cubicMetresPerRevFromCm3,
  cubicMetresPerRevFromIn3,
  cubicMetresPerSecondFromGpm,
  gpmFromCubicMetresPerSecond,
  hpFromWatts,
  kwFromWatts,
  lpmFromCubicMetresPerSecond,
  newtonMetresFromPoundFeet,
  pascalsFromBar,
  pascalsFromPsi,
  poundFeetFromNewtonMetres,
  revsPerSecondFromRpm,
  rpmFromRevsPerSecond,
} from '../../../src/units/shop-units.ts'
import type { Expression, Expressions } from '../entry.ts'

const ANY_PRESSURE = 1e7
const ANY_MU = 0.027

/** Flow of a pump of a stated volumetric efficiency, by way of its slip. */
const flowAt = (displacement: number, speed: number, volumetric: number): number => {
  const slip = slipFromEfficiency(displacement, speed, volumetric, ANY_PRESSURE, ANY_MU)
  return pumpFlow(displacement, speed, 0, slip, 1, ANY_PRESSURE, ANY_MU)
}

/** Slip in gal/min per psi, published at the viscosity of the test. */
const cundiff: Expression = (given) => {
  const displacement = cubicMetresPerRevFromIn3(given('V'))
  const speed = revsPerSecondFromRpm(given('n'))
  const slip = (cubicMetresPerSecondFromGpm(given('k')) / pascalsFromPsi(1)) * ANY_MU
  const flow = pumpFlow(displacement, speed, given('eps'), slip, 1, pascalsFromPsi(given('p')), ANY_MU)
  return { eta_v: pumpVolumetricEfficiency(flow, displacement, speed) }
}

export const pumpMotor: Expressions = {
  'pm-esp-5-1': (given) => ({
    eta_v: pumpVolumetricEfficiency(
      cubicMetresPerSecondFromGpm(given('Q')),
      cubicMetresPerRevFromIn3(given('V')),
      revsPerSecondFromRpm(given('n')),
    ),
  }),
  'pm-esp-5-2': (given) => ({
    Q: lpmFromCubicMetresPerSecond(
      flowAt(cubicMetresPerRevFromCm3(given('V')), revsPerSecondFromRpm(given('n')), given('eta_v')),
    ),
  }),
  'pm-esp-5-9': (given) => {
    const displacement = cubicMetresPerRevFromCm3(given('V'))
    const pressure = pascalsFromBar(given('p'))
    const speed = revsPerSecondFromRpm(given('n'))
    return {
      eta_v: pumpVolumetricEfficiency(given('Q'), displacement, speed),
      eta_m: pumpHydromechanicalEfficiency(displacement, pressure, given('T')),
      eta_o: hydraulicPower(given('Q'), pressure) / shaftPower(given('T'), speed),
      T_th: theoreticalTorque(displacement, pressure),
    }
  },
  'pm-esp-7-2': (given) => {
    const displacement = cubicMetresPerRevFromIn3(given('V'))
    const pressure = pascalsFromPsi(given('p'))
    const speed = motorSpeed(cubicMetresPerSecondFromGpm(given('Q')), displacement, 0, 0, pressure, 1, 1)
    const torque = motorTorque(displacement, pressure, 1)
    return {
      n: rpmFromRevsPerSecond(speed),
      T: poundFeetFromNewtonMetres(torque) * 12,
      P: hpFromWatts(shaftPower(torque, speed)),
    }
  },
  'pm-esp-7-3': (given) => {
    const displacement = cubicMetresPerRevFromIn3(given('V'))
    const pressure = pascalsFromPsi(given('p'))
    const speed = revsPerSecondFromRpm(given('n'))
    const flow = cubicMetresPerSecondFromGpm(given('Q'))
    const torque = newtonMetresFromPoundFeet(given('T') / 12)
    return {
      eta_v: motorVolumetricEfficiency(displacement, speed, flow),
      eta_m: motorHydromechanicalEfficiency(displacement, pressure, torque),
      eta_o: shaftPower(torque, speed) / hydraulicPower(flow, pressure),
      P: hpFromWatts(shaftPower(torque, speed)),
    }
  },
  'pm-esp-7-5': (given) => {
    const displacement = cubicMetresPerRevFromCm3(given('V'))
    const pressure = pascalsFromBar(given('p'))
    const speed = motorSpeed(given('Q'), displacement, 0, 0, pressure, 1, 1)
    const torque = motorTorque(displacement, pressure, 1)
    return { n: rpmFromRevsPerSecond(speed), T: torque, P: kwFromWatts(shaftPower(torque, speed)) }
  },
  'pm-esp-7-7': (given) => {
    const flow = flowAt(cubicMetresPerRevFromCm3(given('Vp')), revsPerSecondFromRpm(given('np')), given('evp'))
    // Intake is proportional to the displacement: a motor of 1 m3/rev gives the scale.
    const intakePerVolume = motorIntake(1, revsPerSecondFromRpm(given('nm')), 1 / given('evm') - 1, 0, 0, 1, 1)
    const displacement = flow / intakePerVolume
    return {
      Vm: cm3FromCubicMetresPerRev(displacement),
      T: motorTorque(displacement, pascalsFromBar(given('p')), given('emm')),
    }
  },
  'pm-sul-2-7': (given) => ({
    P: hpFromWatts(hydraulicPower(cubicMetresPerSecondFromGpm(given('Q')), pascalsFromPsi(given('p')))),
  }),
  'pm-sul-2-10': (given) => {
    const displacement = cubicMetresPerSecondFromGpm(given('Q')) / revsPerSecondFromRpm(given('n'))
    return { T: poundFeetFromNewtonMetres(theoreticalTorque(displacement, pascalsFromPsi(given('p')))) }
  },
  'pm-sul-7-2': (given) => ({
    eta_v: pumpVolumetricEfficiency(
      cubicMetresPerSecondFromGpm(given('Q')),
      cubicMetresPerRevFromIn3(given('V')),
      revsPerSecondFromRpm(given('n')),
    ),
  }),
  'pm-sul-9-5': (given) => {
    const displacement = cubicMetresPerRevFromIn3(given('V'))
    const speed = revsPerSecondFromRpm(given('n'))
    const flow = cubicMetresPerSecondFromGpm(given('Q'))
    return {
      eta_v: motorVolumetricEfficiency(displacement, speed, flow),
      loss: gpmFromCubicMetresPerSecond(flow - motorIntake(displacement, speed, 0, 0, 0, 1, 1)),
    }
  },
  'ls-cundiff-1200-500': cundiff,
  'ls-cundiff-1800-500': cundiff,
  'ls-cundiff-1800-2500': cundiff,
  'ls-wilson-gear': (given) => {
    const displacement = cubicMetresPerRevFromCm3(10)
    const slip = (given('Cs') * displacement) / (2 * Math.PI)
    const flow = pumpFlow(displacement, given('n'), 0, slip, 1, given('dp'), given('mu'))
    return { eta_v: pumpVolumetricEfficiency(flow, displacement, given('n')) }
  },
}
