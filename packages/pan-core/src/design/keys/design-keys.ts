import { assumedText } from '../default.js';
import { choice, optional, orUnknown, type Reading, section, text, type ValueOf } from '../field/index.js';
import { NEWEST_FORMAT } from '../format.js';
import { baffleField } from './baffle-keys.js';
import { chassisField } from './chassis-keys.js';
import { bungField, dipstickField, drainField, pickupField } from './fitting-keys.js';
import { itemField, named, roundField } from './items.js';
import { type Kit, kitFor } from './kit.js';
import { limitsField } from './limit-keys.js';
import { manoeuvresField } from './manoeuvre-keys.js';
import { oilField } from './oil-keys.js';
import { panField } from './pan-keys.js';
import { railHolesField } from './rail-hole-keys.js';
import { crankField, railField } from './rail-keys.js';
import { pricesField, shopField } from './shop-keys.js';

const engineField = (k: Kit) =>
  section('the engine', {
    rail: railField(k),
    rail_holes: optional(railHolesField(k)),
    crankcase_top: k.size('closed height above the rail that oil can climb into'),
    crankcase_displaced: optional(
      k.share('share of that space taken up by crank and rods'),
      assumedText('crankcase displaced'),
    ),
    crank: orUnknown(crankField(k)),
    inside: optional(
      named(
        'things inside the crankcase or hanging into the pan',
        itemField(k, 'a thing inside', 'main cap'),
      ),
    ),
    tilt: orUnknown(
      section('how the engine sits in the level car', {
        nose_up: orUnknown(k.angle('front higher than the rear')),
        lean_left: orUnknown(k.angle('leaning to the left')),
      }),
    ),
    top_above_rail: optional(k.size('height of the engine above the rail')),
    pump_inlet: optional(k.point3('where the pickup tube ends at the pump')),
    carries: optional(named('things that ride on the engine', itemField(k, 'a thing it carries', 'intake'))),
    plus_minus: optional(
      k.length('how well crank, holes and what is in and on the engine were measured', {
        from: '0 mm',
        to: '100 mm',
      }),
      assumedText('engine plus or minus'),
    ),
    studs: optional(
      k.length('how far studs stand down from the rail, where it has studs and not bolts', {
        from: '0 mm',
        to: '200 mm',
      }),
    ),
    mounts: optional(
      section('where the engine hangs, for getting the pan out', {
        left: k.point3('middle of the left engine mounting'),
        right: k.point3('middle of the right engine mounting'),
        gearbox: k.point3('middle of the gearbox mounting'),
      }),
    ),
    flywheel: optional(roundField(k, 'the flywheel with its ring gear, about the crank')),
    bell_housing: optional(roundField(k, 'the bell housing, round about the crank')),
  });

/** Every key of a design file, with the units of its bare numbers. */
export const designField = (reading: Reading) => {
  const k = kitFor(reading);
  return section('a design', {
    format: choice('version of this format', [NEWEST_FORMAT]),
    title: text('what the pan is for', 200, 'Long straight six, rear sump'),
    units: choice('unit of lengths without one', ['mm', 'in']),
    engine: engineField(k),
    oil: oilField(k),
    pan: panField(k),
    pickup: pickupField(k),
    baffles: optional(named('lids and walls', baffleField(k), 40)),
    drain: optional(drainField(k)),
    bungs: optional(named('weld-in fittings', bungField(k), 40)),
    dipstick: optional(dipstickField(k)),
    chassis: optional(chassisField(k)),
    manoeuvres: optional(manoeuvresField(k), assumedText('manoeuvres')),
    shop: optional(shopField(k)),
    prices: optional(pricesField),
    limits: optional(limitsField(reading)),
  });
};

export type DesignKeys = ValueOf<ReturnType<typeof designField>>;
