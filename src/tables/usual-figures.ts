/**
 * What figures of small machines usually are. What lies outside can be, and is worked with; it is asked about, because it is
 * more often a slip of the pen, a unit or a finger. Wide on purpose: whoever asks about everything is not listened to.
 * All bounds: common practice, no source.
 */

export interface UsualFigure {
  /** Path in the file; `*` stands for any name or number. */
  readonly path: string
  readonly label: string
  /** As a file would write them; plain numbers where the file has no unit. */
  readonly least: string
  readonly most: string
}

export const USUAL_SOURCE = 'common practice, no source'

const row = (path: string, label: string, least: string, most: string): UsualFigure => ({ path, label, least, most })

const PUMP = 'circuits.*.pump'

export const USUAL_OF_A_MACHINE: readonly UsualFigure[] = [
  row('machine.mass', 'mass of the machine', '150 kg', '6000 kg'),
  row('machine.design-travel-speed', 'travel speed by the maker', '0.5 km/h', '20 km/h'),
  row('engine.net-power', 'power of the engine', '2 kW', '75 kW'),
  row('engine.rated-speed', 'rated speed of the engine', '1500 rpm', '4000 rpm'),
  row('engine.governor-droop', 'droop of the governor', '1 %', '15 %'),
  row('engine.torque-rise', 'torque rise of the engine', '0 %', '50 %'),
  row('engine.cylinders', 'number of cylinders', '1', '6'),
  row('engine.spare-current', 'spare current', '0 A', '120 A'),
  row('fluid.viscosity-at-40C', 'viscosity at 40 °C', '10 cSt', '150 cSt'),
  row('fluid.viscosity-at-100C', 'viscosity at 100 °C', '2.5 cSt', '20 cSt'),
  row('reservoir.volume', 'oil in the reservoir', '3 L', '150 L'),
  row('reservoir.cooling-surface', 'surface of the reservoir', '0.1 m2', '4 m2'),
  row('reservoir.heat-transfer', 'heat transfer of the reservoir', '3 W/m2K', '50 W/m2K'),
  row('reservoir.steel-mass', 'steel that warms with the oil', '2 kg', '600 kg'),
  row('other-cooling-surface', 'other cooling surface', '0 m2', '10 m2'),
  row('cylinder-area-ratio', 'area ratio of the cylinders', '1', '2.5'),
  row(`${PUMP}.displacement`, 'displacement of the pump', '1 cm3/rev', '100 cm3/rev'),
  row(`${PUMP}.max-pressure`, 'highest pressure of the pump', '80 bar', '420 bar'),
  row(`${PUMP}.max-speed`, 'highest speed of the pump', '1500 rpm', '6000 rpm'),
  row(`${PUMP}.min-inlet-pressure`, 'least inlet pressure of the pump (absolute)', '0.3 bar', '1.2 bar'),
  row(`${PUMP}.efficiency.*`, 'efficiency of the pump', '60 %', '99 %'),
  row('circuits.*.relief.setting', 'relief setting', '40 bar', '350 bar'),
  row('circuits.*.relief.rated-flow', 'rated flow of the relief', '5 L/min', '400 L/min'),
  row('circuits.*.valve.rated-flow', 'rated flow of the valve', '5 L/min', '300 L/min'),
  row('circuits.*.valve.drop-at-rated-flow', 'pressure drop of the valve', '0.5 bar', '40 bar'),
  row('circuits.*.lines.*.length', 'length of a hose', '0.05 m', '12 m'),
  row('circuits.*.auxiliary.lines.*.length', 'length of a hose', '0.05 m', '20 m'),
  row('travel.motor.displacement', 'displacement of the travel motor', '20 cm3/rev', '1500 cm3/rev'),
  row('travel.motor.second-displacement', 'second displacement of the motor', '10 cm3/rev', '1000 cm3/rev'),
  row('travel.motor.max-pressure', 'highest pressure of the motor', '60 bar', '420 bar'),
  row('travel.motor.efficiency.*', 'efficiency of the motor', '50 %', '99 %'),
  row('travel.final-drive-ratio', 'final drive ratio', '1', '100'),
  row('travel.sprocket.pitch-diameter', 'pitch diameter of the sprocket', '80 mm', '700 mm'),
  row('travel.sprocket.pitch', 'pitch of the track', '25 mm', '200 mm'),
  row('travel.sprocket.teeth', 'teeth of the sprocket', '5', '40'),
  row('travel.track.gauge', 'gauge of the tracks', '0.35 m', '2.2 m'),
  row('travel.track.ground-contact-length', 'length of track on the ground', '0.35 m', '2.6 m'),
  row('travel.wheel.rolling-radius', 'rolling radius of the wheel', '100 mm', '600 mm'),
  row('travel.swivel.bore', 'drilling of the swivel', '3 mm', '25 mm'),
  row('travel.lines.*.length', 'length of a travel hose', '0.05 m', '12 m'),
  row('cooler.capacity', 'capacity of the cooler', '0.005 kW/K', '1 kW/K'),
  row('filter.fineness', 'fineness of the filter', '1 µm', '150 µm'),
  row('strainer.rated-flow', 'rated flow of the strainer', '5 L/min', '400 L/min'),
]

export const USUAL_OF_A_SCENARIO: readonly UsualFigure[] = [
  row('site.ambient', 'air temperature', '-25 °C', '50 °C'),
  row('site.coldest-start', 'coldest start', '-40 °C', '40 °C'),
  row('site.altitude', 'altitude', '-100 m', '4000 m'),
  row('site.steepest-grade', 'steepest grade', '0 %', '60 %'),
  row('site.trip', 'length of a trip', '2 m', '3000 m'),
  row('site.trips-per-day', 'trips a day', '0', '400'),
  row('measured.travel.distance', 'measured course', '3 m', '300 m'),
  row('measured.travel.time', 'time of the run', '3 s', '600 s'),
  row('measured.travel.oil', 'oil during the run', '5 °C', '100 °C'),
  row('measured.engine-speed', 'engine speed that was read', '700 rpm', '4300 rpm'),
  row('measured.relief-pressure', 'relief pressure that was read', '20 bar', '380 bar'),
  row('measured.relief-pressure.*.pressure', 'relief pressure that was read', '20 bar', '380 bar'),
  row('measured.flows.*.flow', 'pump flow that was read', '1 L/min', '300 L/min'),
  row('measured.flows.*.pressure', 'pressure at which the flow was read', '0 bar', '350 bar'),
  row('measured.inlet-pressure', 'pressure at the pump inlet', '-0.8 bar', '1 bar'),
  row('measured.inlet-pressure.*.pressure', 'pressure at the pump inlet', '-0.8 bar', '1 bar'),
  row('measured.oil-temperature.reading', 'oil temperature in the tank', '20 °C', '115 °C'),
  row('measured.oil-temperature.after', 'time before the tank was read', '10 min', '600 min'),
  row('after.oil-temperature.reading', 'oil temperature in the tank after the work', '20 °C', '115 °C'),
  row('after.runs.*.distance', 'measured course after the work', '3 m', '300 m'),
  row('after.runs.*.time', 'time of a run after the work', '3 s', '600 s'),
  row('attachment.flow', 'flow of the attachment', '5 L/min', '200 L/min'),
  row('attachment.pressure', 'pressure of the attachment', '20 bar', '350 bar'),
  row('wants.travel-speed', 'travel speed that is wanted', '0.5 km/h', '16 km/h'),
  row('wants.oil-below', 'oil temperature that is wanted', '40 °C', '95 °C'),
]
