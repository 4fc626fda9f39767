import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export interface ReadEntity {
  readonly type: string;
  readonly layer: string;
  readonly closed?: boolean;
  readonly points?: readonly (readonly [number, number, number])[];
  readonly centre?: readonly [number, number];
  readonly radius?: number;
  readonly text?: string;
  readonly at?: readonly [number, number];
  readonly height?: number;
  readonly turned?: number;
  readonly centred?: boolean;
}

export interface ReadDrawing {
  readonly version: string;
  readonly units: number;
  readonly errors: readonly string[];
  readonly fixes: readonly string[];
  readonly layers: readonly string[];
  readonly paper: number;
  readonly entities: readonly ReadEntity[];
}

// Debian's own interpreter: a version manager's python3 does not see Debian's packages.
const PYTHON = '/usr/bin/python3';
const SCRIPT = fileURLToPath(new URL('dxf-audit.py', import.meta.url));

export const MISSING_READER = 'skipped: python3-ezdxf missing';

const canRead = (() => {
  try {
    execFileSync(PYTHON, ['-c', 'import ezdxf'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
})();

export const hasReader = (): boolean => canRead;

/** The drawings as Debian's python3-ezdxf sees them, each read strictly and with recovery. */
export const readDrawings = (texts: readonly string[]): readonly ReadDrawing[] => {
  const folder = mkdtempSync(join(tmpdir(), 'pan-dxf-'));
  try {
    const paths = texts.map((text, i) => {
      const path = join(folder, `${i}.dxf`);
      writeFileSync(path, text, 'latin1');
      return path;
    });
    const out = execFileSync(PYTHON, [SCRIPT, ...paths], { encoding: 'utf8', maxBuffer: 1 << 28 });
    return JSON.parse(out) as ReadDrawing[];
  } finally {
    rmSync(folder, { recursive: true });
  }
};
