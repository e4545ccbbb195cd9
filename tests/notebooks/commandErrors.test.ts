import { describe, expect, it } from 'vitest';
import { run } from './runCommand.ts';

const radii = ['--radii', '0:20:11 um'];
const setting = (text: string) => ['evaluate', '--set', text, '--get', 'spot.width'];
const around = ['--radii', '0:20 um'];
const measuredWidth = ['--get', 'spot.measuredWidth'];
const mapped = ['map', '--z', '-0.1:0.1 mm'];
const refused: readonly [argv: readonly string[], says: RegExp][] = [
  [['draw'], /no command 'draw'/],
  [['toString'], /no command/],
  [['quantities', '--all'], /no option --all/],
  [['evaluate'], /--get is missing/],
  [['evaluate', '--get'], /--get needs a value/],
  [['evaluate', '--get', 'spot.width', '--get', 'spot.dip'], /only once/],
  [['evaluate', '--get', 'spot.girth'], /no quantity 'spot\.girth'/],
  [['evaluate', 'a.json', 'b.json', '--get', 'spot.width'], /at most one design file/],
  [['evaluate', 'missing.json', '--get', 'spot.width'], /'missing\.json' cannot be read/],
  [['evaluate', 'broken.json', '--get', 'spot.width'], /'broken\.json' is not a design file/],
  [setting('laser.wavelength'), /not of the form ID=VALUE/],
  [setting('laser.colour=red'), /no quantity 'laser\.colour'/],
  [setting('laser.wavelength=red'), /red/],
  [setting('laser.wavelength=1 J'), /J/],
  [setting('laser.wavelength=10 nm'), /allowed is from 250\snm to 2300\snm/],
  [
    setting('laser.beamDiameter=5'),
    /^Raw beam diameter of 5000\smm is .*50\smm\. A bare number is SI \(m\); write 5\smm for a value in mm\.$/,
  ],
  [setting('laser.beamDiameter=5000'), /A bare number is SI \(m\); write the unit too, as in 5\smm\.$/],
  [setting('laser.beamDiameter=5 m'), /50\smm\.$/],
  [setting('laser.beamPropagationRatio=9'), /from 1 to 4\.$/],
  [setting('laser.wavelength=1,030 nm'), /2300\snm\. The comma was read as a decimal mark; leave it out/],
  [setting('laser.wavelength=red'), /a length such as 1030\snm or 1\.03\sµm belongs here/],
  [setting('plate.stop=square'), /round, open/],
  [setting('spot.width=10 um'), /cannot be set/],
  [setting('laser.beamImage=beam.png'), /--beam FILE/],
  [setting('plate.stepDiameter=20 mm'), /spot\.width: .*outside the stop/],
  [setting('workpiece.z=50 mm'), /spot\.width: .*Rayleigh lengths/],
  [['evaluate', '--set', 'plate.stop=open', '--get', 'match.stopRatio'], /no stop ratio/],
  [['evaluate', '--beam', 'x.png', '--get', 'spot.width'], /--pixel is missing/],
  [
    ['evaluate', '--beam', 'broken.json', '--pixel', '5 um', '--get', 'spot.width'],
    /^"broken\.json" is neither a PNG, a TIFF nor a table of numbers: it begins with/,
  ],
  [['evaluate', '--caustic', 'missing.csv', '--get', 'spot.width'], /'missing\.csv' cannot be read/],
  [
    ['evaluate', '--caustic', 'broken.json', '--get', 'spot.width'],
    /^"broken\.json" is no table of a caustic: Row 1 holds/,
  ],
  [
    ['evaluate', '--caustic', 'data/measured/clipped-beam.png', '--get', 'spot.width'],
    /^"data\/measured\/clipped-beam\.png" is no text/,
  ],
  [
    ['evaluate', '--caustic', 'kilograms.csv', '--get', 'spot.width'],
    /^"kilograms\.csv" .* unit 'kg', which is no unit of length/,
  ],
  [
    ['measure', 'beam', 'short.csv', '--pixel', '5 um'],
    /^"short\.csv" is no camera image but the table of a caustic/,
  ],
  [['profile', '--caustic', 'short.csv', ...radii], /at least 5/],
  [setting('laser.ratioSource=measured'), /^spot\.width: No table of a caustic has been given/],
  [setting('laser.causticTable=a.csv'), /--caustic FILE/],
  [setting('spot.measuredProfile=a.csv'), /--measured-profile FILE/],
  [setting('focus.measuredCaustic=a.csv'), /--measured-focus FILE/],
  [setting('threshold.spotTable=a.csv'), /--spots FILE/],
  [setting('markPicture.picture=a.png'), /--mark-picture FILE/],
  [setting('micrograph.picture=a.png'), /--micrograph FILE/],
  [setting('otherMicrograph.picture=a.png'), /--other-micrograph FILE/],
  [setting('ripples.series=a.csv'), /--periods FILE/],
  [setting('threshold.leftOut=3'), /--leave-out ROW=REASON/],
  [setting('spot.otherProfiles=a.csv'), /--measured-profile FILE --measured-z LENGTH, several times/],
  [
    [
      'evaluate',
      '--measured-profile',
      'line.csv',
      '--measured-profile',
      'line.csv',
      '--measured-z',
      '1 mm',
      ...measuredWidth,
    ],
    /number of --measured-z is 1, and that of --measured-profile is 2; give a plane for each/,
  ],
  [
    ['evaluate', '--measured-profile', 'line.csv', '--measured-z', '7 m', ...measuredWidth],
    /z of the measured profile of 7000\smm is not possible/i,
  ],
  [
    ['evaluate', '--get', 'spot.measuredWidth'],
    /^spot\.measuredWidth: No measured profile of the spot has been given/,
  ],
  [
    ['evaluate', '--measured-profile', 'short.csv', ...measuredWidth],
    /^"short\.csv" is no profile of the spot but the table of a caustic/,
  ],
  [
    ['evaluate', '--measured-profile', 'broken.json', ...measuredWidth],
    /^"broken\.json" is no profile of the spot: Row 1 holds/,
  ],
  [
    [
      'evaluate',
      '--measured-profile',
      'line.csv',
      '--set',
      'spot.measuredScaling=measured',
      '--get',
      'spot.measuredDeviation',
    ],
    /gives no fluence with its unit/,
  ],
  [
    ['evaluate', '--measured-focus', 'line.csv', ...measuredWidth],
    /^"line\.csv" is no table of a caustic but a profile of the spot/,
  ],
  [['evaluate', '--measured-focus', 'kilograms.csv', ...measuredWidth], /^"kilograms\.csv" .* unit 'kg'/],
  [['profile'], /--radii is missing/],
  [['profile', '--radii', '0-20'], /no list of radii/],
  [['profile', '--radii', '20:0:5 um'], /STOP must be above START/],
  [['profile', '--radii', '0:20:0 um'], /count must be/],
  [['profile', '--z', 'near', ...radii], /near/],
  [['profile', '--z', '1 m', ...radii], /\.$/],
  [['profile', '--z', '0,50um,100um', ...radii], /'0,50um,100um' can part lengths .* semicolons/],
  [['profile', '--z', '0,1mm,0,2mm', ...radii], /semicolons/],
  [['profile', '--z', '0; 1 J', ...radii], /a length/],
  [['profile', '--z', '1.2.3 mm', ...radii], /1\.2\.3/],
  [['profile', '--layout', 'wide', ...radii], /--layout cannot be 'wide'; choose one of: rows, columns/],
  [['map'], /--z is missing; give for example --z "-0\.4:0\.4 mm"/],
  [['map', '--z', '-1:1 mm'], /--radii is missing/],
  [['map', '--z', '0.1 mm', ...around], /'0\.1 mm' is no range of z; write START:STOP UNIT/],
  [['map', '--z', '0:1:2 mm', ...around], /no range of z/],
  [['map', '--z', '1:1 mm', ...around], /range of z '1:1 mm' cannot be: STOP must be above START/],
  [['map', '--z', '0:1 kg', ...around], /kg/],
  [['map', '--z', '-90:90 mm', ...around], /\.$/],
  [[...mapped, '--radii', '20:0 um'], /range of radii '20:0 um' cannot be/],
  [[...mapped, ...around, '--size', '512'], /size '512' cannot be; write RADIIxPLANES, each from 2 to 4096/],
  [[...mapped, ...around, '--size', '1x5'], /size '1x5'/],
  [[...mapped, ...around, '--size', '9999x5'], /2 to 4096/],
  [[...mapped, ...around, '--scale', 'cubic'], /--scale cannot be 'cubic'; choose one of: linear, log/],
  [[...mapped, ...around, '--scale', 'log'], /A CSV holds the fluence itself; .* ends in \.png/],
  [[...mapped, ...around, '--out', 'map.jpg'], /'map\.jpg' does not say what to write/],
  [[...mapped, ...around, '--out', 'map'], /end in \.csv for numbers or \.png/],
  [[...mapped, ...around, '--out', 'nowhere/map.csv'], /'nowhere\/map\.csv' cannot be written/],
  [['measure'], /is not known/],
  [['measure', 'power', 'x'], /'measure power' is not known/],
  [['measure', 'beam', 'x.png'], /--pixel is missing/],
  [['measure', 'beam', '--pixel', '5 um'], /exactly one image file/],
  [
    ['measure', 'caustic', 'data/measured/rain-gauge-caustic.csv', '--wavelength', '1030'],
    /^Wavelength of 1\.03\skm is .*2300\snm\. A bare number is SI \(m\); write 1030\snm for a value in nm\.$/,
  ],
  [
    ['measure', 'caustic', 'data/measured/rain-gauge-caustic.csv', '--wavelength', '10.3 µm'],
    /^Wavelength of .* is not possible; allowed is from 250\snm to 2300\snm\.$/,
  ],
  [
    ['measure', 'beam', 'data/measured/rain-gauge-beam.png', '--pixel', '5.5'],
    /write 5\.5\sµm for a value in µm/,
  ],
  [['measure', 'caustic', 'broken.json'], /^"broken\.json" is no table of a caustic/],
];

describe('what goes wrong', () => {
  const files = {
    'broken.json': '{"format": "stepwell-des',
    'kilograms.csv': 'z (mm),d (kg)\n1,2\n',
    'line.csv': 'x (µm);counts\n-2;1\n-1;4\n0;5\n1;4\n2;1\n',
    'short.csv': 'z (mm),d (µm)\n1,200\n2,210\n',
  };
  for (const [argv, says] of refused) {
    it(`${argv.join(' ')}: code 2, one line on the error stream, no output`, () => {
      const { code, out, err } = run(argv, files);
      expect([code, out]).toEqual([2, '']);
      expect(err).toMatch(/^[^\n]{15,}\n$/);
      expect(err.trimEnd()).toMatch(says);
      expect(err).not.toMatch(/should not happen|undefined|NaN|\bat .*\.ts/);
    });
  }
});
