import { Problem } from '../../lib/problem.ts';
import type { CommandIo, PartlyDone } from './commandIo.ts';
import { evaluate } from './evaluate.ts';
import { lecture } from './lecture.ts';
import { map } from './map.ts';
import { measure } from './measure.ts';
import { rationale, setUpSheet } from './papers.ts';
import { plan } from './plan.ts';
import { profile } from './profile.ts';
import { listQuantities } from './quantities.ts';
import { influence, vary } from './vary.ts';

type Done = string | PartlyDone;
/** A command returns what goes to the output; one that packs files promises it. */
type Command = (args: readonly string[], io: CommandIo) => Done | Promise<Done>;

const commands: Readonly<Record<string, Command>> = {
  quantities: listQuantities,
  evaluate,
  profile,
  map,
  measure,
  plan,
  vary,
  influence,
  rationale,
  'set-up-sheet': setUpSheet,
  lecture,
};

const usage = `stepwell quantities [DESIGN]
stepwell evaluate [DESIGN] --get ID[,ID…]
stepwell evaluate DESIGN --requirements   (CSV; ends with 2 where one is not met or not known)
stepwell profile [DESIGN] --z LENGTH[,LENGTH…] --radii "START:STOP:COUNT UNIT" [--layout rows|columns]
stepwell map [DESIGN] --z "START:STOP UNIT" --radii "START:STOP UNIT" [--size RADIIxPLANES] [--scale linear|log] [--out FILE.csv|FILE.png]
stepwell measure beam FILE --pixel LENGTH [--pixel-uncertainty LENGTH]
stepwell vary [DESIGN] --over "ID=FROM:TO:COUNT UNIT"|"ID=VALUE;VALUE;…" [--over …] --get ID[,ID…] [--by steps|factors]
stepwell influence [DESIGN] --of ID
stepwell plan coupon|ladder [DESIGN] [--out FILE.csv]
stepwell rationale [DESIGN] --to FILE.html|FILE.md.zip|FILE.docx|FILE.bib [--date YYYY-MM-DD]
stepwell set-up-sheet [DESIGN] --to FILE.html|FILE.md.zip|FILE.docx [--date YYYY-MM-DD]
stepwell lecture [DESIGN] ID --to FILE.html|FILE.md.zip|FILE.docx [--notes] [--date YYYY-MM-DD]   (half-a-wave comes with the program)
stepwell measure mark FILE --pixel LENGTH [--region LEFT,TOP,WIDTH,HEIGHT] [--level SHARE]
stepwell measure ripples FILE [--pixel LENGTH] [--region LEFT,TOP,WIDTH,HEIGHT] [--smoothing PIXELS]
stepwell measure spots FILE [DESIGN]
stepwell measure caustic FILE [--wavelength LENGTH]   (1030 nm where none is given)
DESIGN: [FILE.json] [--set ID=VALUE]… [--beam FILE --pixel LENGTH] [--caustic FILE] [--measured-profile FILE [--measured-z LENGTH]]… [--measured-focus FILE] [--mark-picture FILE] [--micrograph FILE] [--other-micrograph FILE] [--spots FILE [--leave-out ROW=REASON]…] [--ladder FILE] [--periods FILE] [--section FILE]
`;

/**
 * Runs one command. Returns the exit code, or promises it where the command takes its time: 0, or 2 after one line on the
 * error stream that says what is wrong and what to do. Then nothing has been written to the output, but for `evaluate`,
 * which writes the values that there are.
 */
export function main(argv: readonly string[], io: CommandIo): number | Promise<number> {
  const [name, ...args] = argv;
  if (name === undefined || name === 'help' || name === '--help') {
    io.out(usage);
    return 0;
  }
  try {
    const done = commandOf(name)(args, io);
    if (!(done instanceof Promise)) return finish(done, io);
    return done.then((late) => finish(late, io)).catch((error: unknown) => fail(error, io));
  } catch (error) {
    return fail(error, io);
  }
}

function commandOf(name: string): Command {
  const command = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (command) return command;
  throw new Problem(
    'unreadable',
    `There is no command '${name}'; use one of: ${Object.keys(commands).join(', ')}.`,
  );
}

function finish(done: Done, io: CommandIo): number {
  if (typeof done === 'string') {
    io.out(done);
    return 0;
  }
  io.out(done.out);
  throw done.problem;
}

function fail(error: unknown, io: CommandIo): number {
  const message = error instanceof Problem ? error.message : `This should not happen: ${String(error)}`;
  io.err(`${message.replace(/\s+/g, ' ').trim()}\n`);
  return 2;
}
