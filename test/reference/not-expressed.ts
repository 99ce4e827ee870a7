/** Published check values that nothing of ours answers for, each with the reason. */
export const notExpressed: { readonly [id: string]: string } = {
  'ls-sul-9-6': 'a division of two stated efficiencies; no function of ours takes part',
  'vi-table':
    'a row of the table of ASTM D2270; we use the equations that stand for it, held to its rows within 0.1 % in formulas/fluid.test.ts',
  'iso3448-32': 'the width of a viscosity grade; the tool takes its middle and never judges a grade by its limits',
  'iso3448-46': 'the width of a viscosity grade; the tool takes its middle and never judges a grade by its limits',
  'rho-54D': 'the exponential form of density; the tool uses the linear one, 0.13 % above it at 60 °C',
  'ff-colebrook': 'rough pipe; the tool uses the smooth max rule for hose assemblies, not Colebrook',
  'ff-haaland': 'rough pipe; the tool uses the smooth max rule for hose assemblies, not Haaland',
  'ff-swamee-jain': 'rough pipe; the tool uses the smooth max rule for hose assemblies, not Swamee-Jain',
  'ff-churchill': 'rough pipe; the tool uses the smooth max rule for hose assemblies, not Churchill',
  'ff-smooth-1e4': 'Colebrook to 0.2 %; the Blasius law of the max rule lies 2.4 % above it at Re 10 000',
  'ff-rough': 'relative roughness of 0.01; hoses and drawn tube are smooth',
  'ln-cengel-8-3': 'water at Re 134 000 in tube of stated roughness, beyond the range of the max rule',
  'ln-crane-7-13': 'commercial steel pipe of stated roughness; no such pipe on these machines',
  'rv-esp-8-1': 'a relief valve from its spring; the tool takes setting and override as the shop reads them',
  'th-210': 'a rule factor turned into another unit; no function of ours takes part',
  'tr-manual-ratio': 'a ratio of two read forces; no function of ours takes part',
  'en-j1349-si': 'test-bench correction of petrol engines; the tool uses the site derate rule',
  'en-ci-fm': 'test-bench correction of diesel engines; the tool uses the site derate rule',
  'en-ci-fa': 'test-bench correction of diesel engines; the tool uses the site derate rule',
  'en-iso3046': 'site rating of stationary diesel engines, 9 % below the rule that the tool uses at 1500 m and 35 °C',
}
