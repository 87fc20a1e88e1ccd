/** Sources of the numbers of chassis, joints and brakes, and of measuring as such. */
import type { Source } from './source.ts';

export const CHASSIS_SOURCES = {
  'jcgm-100': {
    title:
      'JCGM 100:2008, Evaluation of measurement data: Guide to the expression of uncertainty in measurement (GUM); 4.3.7 rectangular limits, 5.1.2 combination, G.4.1 Welch-Satterthwaite, H.1 example (components as given in the documentation of the GTC package of the Measurement Standards Laboratory of New Zealand; clauses from memory)',
    seen: 'excerpt',
  },
  'jcgm-106': {
    title:
      'JCGM 106:2012, Evaluation of measurement data: The role of measurement uncertainty in conformity assessment; 7.3, 7.4 (example as quoted at metrologyrules.com, 2022/03), 8 guarded acceptance',
    seen: 'excerpt',
  },
  'ilac-g8': {
    title:
      'ILAC-G8:09/2019, Guidelines on decision rules and statements of conformity (as quoted at tla.sgs.com, Decision Rule)',
    seen: 'excerpt',
  },
  'stack-up': {
    title:
      'Worst case and root-sum-square of a dimensional chain: worked example at metricmech.com, tolerance stack-up',
    seen: 'read',
  },
  'as-26': {
    title:
      'M. Abramowitz, I. A. Stegun (ed.), Handbook of Mathematical Functions, NBS AMS 55, 1964; 26.2.11 series, 26.2.14 continued fraction',
    seen: 'memory',
  },
  'inch-1959': {
    title: 'International yard and pound agreement, 1959: 1 in = 25.4 mm exactly (NIST SP 811, 2008, Appendix B)',
    seen: 'memory',
  },
  'axle-stack': {
    title:
      'Sum of lengths along the rear axle, outer tyre edge to outer tyre edge; 55 in over the tyres for 5 3/4 in from bearing to hub is a garage rule of thumb',
    seen: 'common practice',
  },
  'hub-engagement': {
    title: 'At least 40 mm of axle inside a clamped hub, unless its maker says otherwise',
    seen: 'common practice',
  },
  'split-hub': {
    title:
      'Split hub on a round shaft, two-line contact and vector sum of torque and axial force: published design output at dsoftcon.be, ShaftHubLock; method of the text books named at schweizer-fn.de and tbksoft.com, chapter 19 (structure read, formulas there are images)',
    seen: 'read',
  },
  'nasa-5020': {
    title:
      'NASA-STD-5020B, Requirements for threaded fastening systems; TFSR 6 preload scatter of 35 % by torque wrench, TFSR 14 friction 0.20 clean and 0.10 coated or lubricated (as quoted in DOI 10.1007/s11668-019-00693-z and in public extracts)',
    seen: 'excerpt',
  },
  'dynamic-two': {
    title: 'A load put on suddenly doubles its static effect (elementary energy result)',
    seen: 'memory',
  },
  'key-strength': {
    title:
      'Strength of a square key: formulas at esierra.me, KeyDesign_pg; example 7-6 of a machine-design text, 9th edition, recalled',
    seen: 'memory',
  },
  'press-fit': {
    title: 'Elastic press fit after Lamé: worked example at aionlinecalculator.com, press-fit-calculator',
    seen: 'read',
  },
  'hub-loads': {
    title:
      'Loads on a kart hub: tyre grip 1.7, 57 % of weight at the rear, inner rear wheel in the air in a corner, margin 1.3 against slip',
    seen: 'common practice',
  },
  rodrigues: {
    title:
      'O. Rodrigues, 1840: turning a vector about an axis, a cos + (k × a) sin + k (k·a)(1 - cos); rows worked with matrices, quaternions and a search along the rim outside the project',
    seen: 'memory',
  },
  'axis-angles': {
    title:
      'ISO 8855 and SAE J670: caster and kingpin inclination as angles in the side and front view (caster as in SAE 850219, read in a public copy; the standards themselves from memory)',
    seen: 'excerpt',
  },
  ackermann: {
    title:
      'Cotangent rule of correct steering, cot outer - cot inner = kingpin spacing / wheelbase, as printed at examveda.com',
    seen: 'read',
  },
  'spring-statics': {
    title:
      'Sums of forces and moments on linear springs, worked from first principles; rows worked as linear systems outside the project',
    seen: 'memory',
  },
  'rollover-static': {
    title: 'Static stability factor, track over twice the height of the centre of mass, as printed at designnews.com',
    seen: 'read',
  },
  'gravity-1901': {
    title: 'Standard gravity 9.80665 m/s² exactly: 3rd General Conference on Weights and Measures, 1901',
    seen: 'memory',
  },
  'toe-geometry': {
    title:
      'Sine and tangent of a toe angle over the diameter it is read at; plane geometry, rows worked outside the project',
    seen: 'memory',
  },
  'half-turn': {
    title: 'Rolling half a wheel turn and reading at the same marks takes out what a rim is bent',
    seen: 'common practice',
  },
  'square-geometry': {
    title: 'Axle and kingpins as four points of a plane; coordinate geometry, rows worked outside the project',
    seen: 'memory',
  },
  'square-limits': {
    title: 'Kingpin to axle within 1 mm from side to side, diagonals within 2 mm; the frame maker may say otherwise',
    seen: 'common practice',
  },
  'iso-898-1': {
    title:
      'ISO 898-1, Mechanical properties of fasteners, property classes of bolts: proof and ultimate loads as reprinted at staging2.optimas.com, iso-metric-thread-proof-loads, and slsbearings.com, tensile-strength; clauses, profile and classes other than 8.8, 10.9 and 12.9 from memory',
    seen: 'excerpt',
  },
  'asme-b1-1': {
    title:
      'ASME B1.1, Unified inch screw threads, appendix B: stress area as given at engineersedge.com, thread_stress_area, and boltport.com, UNF table; the list of threads from memory',
    seen: 'excerpt',
  },
  'sae-j429': {
    title: 'SAE J429, Mechanical requirements for externally threaded fasteners: grades 2, 5 and 8',
    seen: 'memory',
  },
  'nut-factor': {
    title:
      'Nut factor: spread by surface at zipfastener.com, engineering data; a chart with 0.20 dry and 0.15 lubricated at mobiletechengineering.com, 2020/11/15',
    seen: 'read',
  },
  'vdi-2230': {
    title:
      'VDI 2230 part 1, Systematic calculation of highly stressed bolted joints: fine-thread tables as reprinted at mastik.pt, page 685; formulas from memory',
    seen: 'excerpt',
  },
  'preload-scatter': {
    title:
      'NASA-STD-5020, preload uncertainty of a torque wrench, 35 % dry and 25 % lubricated, as quoted in Journal of Failure Analysis and Prevention, doi 10.1007/s11668-019-00693-z; turn of nut and stretch from a student team page',
    seen: 'excerpt',
  },
  'ac-43-13-torque': {
    title:
      'FAA AC 43.13-1B, Acceptable methods, techniques and practices: paragraph 7-40, tables 7-1 and 7-2, as copied at landseaskyspace.com, ac4313',
    seen: 'read',
  },
  'army-locknut': {
    title:
      'US Army TM 10-5430-232-12&P table I-2 and TM 1-1500-204-23-6 table 2-8: least breakaway torque of used locknuts',
    seen: 'read',
  },
  'army-lubricated': {
    title: 'US Army TM 9-6115-604-34 table 1-2, notes: cut of dry torques for oiled and plated screws',
    seen: 'read',
  },
  'hex-head': {
    title: 'ISO 4014 bearing face of hexagon heads, ISO 273 medium clearance holes',
    seen: 'memory',
  },
  statics: {
    title: 'Sums of forces and moments of a rigid body at rest; first principles',
    seen: 'memory',
  },
  'corner-shares': {
    title:
      'Front, left and cross (front right with rear left) share of four wheel readings; the diagonal is always named',
    seen: 'common practice',
  },
  'raised-axle': {
    title:
      'Height of the centre of mass from one axle raised: derived for wheels of unequal size by moment balance of a turned rigid body; for equal wheels it is the result printed as eq. 3 at openbooks.link and in a note by Gray, 1997; that the usual formulas mishandle unequal radii is said in the abstract of SAE 2004-01-1076',
    seen: 'read',
  },
  'plane-fit': {
    title: 'A stiff plate on four equal springs, least energy: F = A (AᵀA)⁻¹ [m, m x, m y]; worked outside the project',
    seen: 'memory',
  },
  'ballast-lp': {
    title:
      'Least ballast as a linear programme over the moments of mass; linear equations, rows solved outside the project',
    seen: 'memory',
  },
  'ballast-fixing': {
    title:
      'Ballast rules of five bodies, which differ (two bolts of 6 mm a block; 8 mm through-bolted with 30 mm washers; class 8.8 and 5 kg a block; 1/4 in; 5/16 in pinned): their strictest merge. Read in public copies, the first as quoted by others; no international article text',
    seen: 'excerpt',
  },
  'fuel-density': {
    title: 'Petrol about 0.745 kg/l, 0.715 to 0.775 kg/l by season and blend; weigh a litre of your own',
    seen: 'common practice',
  },
  'share-start': {
    title: 'Starting shares 43 % front and 50 % left: published chassis set-up guide, 2005',
    seen: 'read',
  },
  'iso-1234': {
    title: 'ISO 1234, Split pins: dimension table as reprinted at tgrfast.com, ProductDetails/234',
    seen: 'read',
  },
  'pin-for-bolt': {
    title: 'ISO 1234, Split pins: the bolt sizes each pin is for',
    seen: 'memory',
  },
  'twist-per-inch': {
    title: 'NASM33540, General practices for safety wiring: twists an inch as quoted in a thread at wmrc.ca',
    seen: 'excerpt',
  },
  'lockwire-rules': {
    title:
      'FAA AC 43.13-1B, paragraphs 7-122 to 7-126, as quoted at vansairforce.net, thread 78913, and landseaskyspace.com, ac4313; US Army TM 10-3930-659-34, paragraph 2-22',
    seen: 'excerpt',
  },
  'strap-strength': {
    title: 'Loop strength of nylon 6/6 straps by width: trade table at cableties-online.co.uk',
    seen: 'read',
  },
  'strap-ageing': {
    title:
      'IEC 62275, Cable ties for electrical installations: type 1 keeps 50 % after conditioning, as quoted by NEMA',
    seen: 'excerpt',
  },
  'ac-43-13-locking': {
    title:
      'FAA AC 43.13-1B, paragraph 7-64: where self-locking nuts may not be used, as copied at globalmicroturbine.com',
    seen: 'read',
  },
  'clip-practice': {
    title:
      'Spring clips hold light side load and lock no thread; marks show and do not hold; a key holds nothing along its shaft',
    seen: 'common practice',
  },
  'brake-balance': {
    title:
      'Axle loads, ideal share and lock order of a two-axle vehicle by moment balance: formulas read at vipsolutions.in and novasolver.jp; values worked outside the project',
    seen: 'read',
  },
  'brake-ratio': {
    title: 'Pedal ratio and piston area: worked example at board.moparts.org, post 1235219',
    seen: 'read',
  },
  'brake-heat': { title: 'Heat of a disc in one stop: worked problem at solve.club, hot-wheels', seen: 'read' },
  'brake-stop': { title: 'Stopping distance v t + v²/(2 a): formula at engineeringniche.com', seen: 'read' },
  'brake-usual': {
    title:
      'Efficiency 95 %, pad friction 0.35 to 0.5, rotating share 0.03 to 0.05, specific heat 460 J/(kg·K), effect of which axle locks first',
    seen: 'memory',
  },
  'pad-limit': {
    title: 'At least 2 mm of friction material, unless the maker says otherwise',
    seen: 'common practice',
  },
} as const satisfies Readonly<Record<string, Source>>;
